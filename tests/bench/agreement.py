"""Agreement with the judges on the shipped knowledge: pyAgrum, and enumeration in fractions."""

from __future__ import annotations

import random
from dataclasses import replace

from diagnose.book.model import Book
from diagnose.reasoning.belief import believe
from diagnose.reasoning.network import UNLISTED, Network
from tests.bench.speed import evidenced
from tests.judges.enumeration import judge

SEED, CAUSES, POSITIVES = 20260305, 4, 3


def agreement(book: Book, cases: int) -> dict[str, object]:
    """Largest difference from each judge; enumeration on networks cut to a few causes."""
    draw = random.Random(SEED)
    exact = max(_enumerated(_few(evidenced(book, POSITIVES, draw), draw)) for _ in range(cases))
    found: dict[str, object] = {"cases": cases, "seed": SEED, "enumeration": exact}
    try:
        from tests.bench.agrum_engine import Engine

        nets = [evidenced(book, draw.randint(1, 8), draw) for _ in range(cases)]
        found["pyagrum"] = max(Engine(n).gap() for n in nets)
    except ImportError:
        found["pyagrum"] = "not installed"
    return found


def _few(net: Network, draw: random.Random) -> Network:
    linked = [n for n in net.nodes if any(s in n.links for s in net.evidence)]
    return replace(net, nodes=tuple(draw.sample(linked, min(CAUSES, len(linked)))))


def _enumerated(net: Network) -> float:
    priors = {n.id: n.prior for n in net.nodes} | {UNLISTED: net.unlisted_prior}
    links = {n.id: n.links for n in net.nodes} | {UNLISTED: net.unlisted}
    verdict = judge(priors, links, net.background, net.evidence, net.complaint)
    gaps = [
        abs(r_value - judged[r.cause])
        for r in believe(net).ranked
        for r_value, judged in (
            (r.acts, verdict.acts),
            (r.cures_alone, verdict.cures_alone),
            (r.present, verdict.present),
        )
    ]
    return max(gaps)
