"""`python -m tests.bench.shops --shops N`: does learning from closed cases help a shop?

Each seeded shop has true rates of its own: every strength of the book moved at random by one unit
of log-odds, every prior by `--spread` of them, and its own mix of complaints. Its cases are drawn
from these (`world.py`, circumstances untold): complaint, answers to the FEWEST to MOST checks
that the book asks first about it, and what made it. The product learns from the first 200 and
from 1,000, and is judged on sealed cases of the same shop by the log loss of what made each: one
cause alone, several, or nothing listed. "best" is the loss with the shop's true book.
"""

from __future__ import annotations

import argparse
import json
import math
import random
import statistics
import sys
import time
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, replace

import numpy as np

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book, Check
from diagnose.lessons.learn import learn
from diagnose.lessons.model import Lessons
from diagnose.lessons.refuse import judged, losses
from diagnose.lessons.taught import Taught, signs_of
from diagnose.reasoning.forward import Deduced
from diagnose.reasoning.network import UNLISTED
from tests.bench.honesty import _moved_link, _shift
from tests.bench.states import States, chain, gathered, settled
from tests.bench.world import NOTHING, Drawer, World, reports_on, sign_of

SEED, FEWEST, MOST = 20260601, 6, 14
SPREAD, STRENGTHS, MIX = 1.5, 1.0, 1.0  # log-odds of priors, of strengths; log of complaints
SIZES, SEALED = (200, 1000), 200


@dataclass(frozen=True)
class Result:
    """One shop: mean log loss on sealed cases with the book, after each size, with the truth."""

    seed: int
    book: float
    after: tuple[float, ...]
    best: float
    refused: int
    seconds: float

    def gain(self, which: int) -> float:
        """The share of the book's loss that is gone; below zero when it grew."""
        return 1.0 - self.after[which] / self.book


def true_book(book: Book, seed: int, spread: float = SPREAD) -> Book:
    """The shop's true rates."""
    draw = random.Random(seed)
    causes = {}
    for name, cause in book.causes.items():
        links = [_moved_link(book, cause, link, STRENGTHS, draw) for link in cause.shows]
        prior = _shift(cause.prior, spread, draw)
        causes[name] = replace(cause, shows=tuple(links), prior=prior)
    return replace(book, causes=causes)


def asked_first(book: Book) -> dict[str, list[str]]:
    """For each complaint the checks of signs and reports, the one worth most a minute first."""
    states, found = States(book), {}
    for symptom in sorted(book.symptoms):
        ranked = sorted(states.valued((symptom, (), ())).candidates, key=lambda c: -c.rate)
        found[symptom] = [c.check for c in ranked if _tells(book, book.checks[c.check])][:MOST]
    return found


def _tells(book: Book, check: Check) -> bool:
    return sign_of(book, check) is not None or reports_on(book, check) is not None


class ShopDrawer(Drawer):
    """Cases of one shop with a few answers each and no circumstance told."""

    def __init__(self, book: Book, seed: int, asked: Mapping[str, Sequence[str]]) -> None:
        super().__init__(book, seed)
        self.asked = asked
        self.priors = {
            s: np.array([*(n.prior for n in net.nodes), net.unlisted_prior])
            for s, net in self.plain.items()
        }
        self.numbers = np.random.default_rng(seed)
        names = sorted(self.plain)
        often = [self._often(s) * math.exp(self.draw.gauss(0.0, MIX)) for s in names]
        self.mix = dict(zip(names, often, strict=True))

    def cases(self, number: int) -> list[World]:
        """Cases of the shop's own mix of complaints."""
        picked = self.draw.choices(list(self.mix), list(self.mix.values()), k=number)
        return [self._case(complaint) for complaint in picked]

    def _case(self, complaint: str) -> World:
        names = self.asked[complaint][: self.draw.randint(FEWEST, MOST)]
        self.checks = [self.book.checks[n] for n in names]
        return self.case(complaint)

    def _try(self, complaint: str) -> World | None:
        net = self.plain[complaint]
        there = np.flatnonzero(self.numbers.random(len(net.nodes) + 1) < self.priors[complaint])
        present = {net.nodes[i].id if i < len(net.nodes) else UNLISTED for i in there.tolist()}
        makers = {n for n in sorted(present) if self._fires(self._links(net, n), complaint)}
        if self._value(net.background[complaint]):
            makers.add(NOTHING)
        if not makers:
            return None
        answers = self._answers(net, present)
        return World(complaint, frozenset(makers), frozenset(present), answers, {})

    def _often(self, symptom: str) -> float:
        net = self.plain[symptom]
        links = [(n.prior, n.links.get(symptom)) for n in net.nodes]
        silent = math.prod(1.0 - p * (1.0 - v[0]) for p, v in links if v is not None)
        return 1.0 - net.background[symptom][0] * silent


def taught(book: Book, world: World) -> Taught:
    """A drawn case as the product sees it once closed."""
    complaint = (world.complaint,)
    answers = world.answers
    facts = chain(book, world.complaint, answers)
    words = {n: {str(v): 1.0} for n, v in facts.items() if n in book.findings}
    words.pop(world.complaint, None)
    seen: Mapping[str, str] = {**{n: max(v) for n, v in words.items()}, **settled(book, answers)}
    named = tuple(sorted(world.makers - {UNLISTED, NOTHING}))
    return Taught(
        "drawn", "2026-01-01", complaint, "", named, len(named) < len(world.makers),
        signs_of(book, complaint, seen), (), gathered(book, answers),
        Deduced(words, {}, {}, (), (), ()),
    )  # fmt: skip


def shop(
    book: Book,
    seed: int,
    asked: Mapping[str, Sequence[str]],
    sizes: Sequence[int] = SIZES,
    sealed: int = SEALED,
    refuse: bool = False,
    spread: float = SPREAD,
) -> Result:
    """One shop from its first case to its last."""
    start = time.perf_counter()
    truth = true_book(book, seed, spread)
    drawer = ShopDrawer(truth, seed, asked)
    closed = [taught(book, w) for w in drawer.cases(max(sizes))]
    kept = [taught(book, w) for w in drawer.cases(sealed)]
    after, refused = [], 0
    for size in sizes:
        lessons = learn(book, closed[:size])
        if refuse:
            lessons = judged(book, lessons, closed[:size])
            refused += len(lessons.refused)
        after.append(mean_loss(book, lessons, kept))
    return Result(
        seed,
        mean_loss(book, Lessons(), kept),
        tuple(after),
        mean_loss(truth, Lessons(), kept),
        refused,
        time.perf_counter() - start,
    )


def mean_loss(book: Book, lessons: Lessons, cases: Sequence[Taught]) -> float:
    """The mean log loss of the cases."""
    groups: dict[tuple[str, ...], list[Taught]] = {}
    for case in cases:
        groups.setdefault(case.complaint, []).append(case)
    return statistics.fmean(x for group in groups.values() for x in losses(book, lessons, group))


def summary(results: Sequence[Result], sizes: Sequence[int] = SIZES) -> dict[str, object]:
    """The figures over all shops."""
    out: dict[str, object] = {"shops": len(results), "seed": SEED}
    out["loss_book"] = statistics.median(r.book for r in results)
    out["loss_best"] = statistics.median(r.best for r in results)
    out["gain_best"] = statistics.median(1.0 - r.best / r.book for r in results)
    for k, size in enumerate(sizes):
        gains = [r.gain(k) for r in results]
        out[f"after_{size}"] = {
            "loss": statistics.median(r.after[k] for r in results),
            "gain_median": statistics.median(gains),
            "gain_least": min(gains),
            "not_worse": sum(g >= 0.0 for g in gains),
            "within_1_percent": sum(g >= -0.01 for g in gains),
        }
    return out


def main() -> int:
    """Measure and print."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench.shops", description=__doc__)
    parser.add_argument("--shops", type=int, default=100)
    parser.add_argument("--first", type=int, default=0, help="number of the first shop")
    parser.add_argument("--sealed", type=int, default=SEALED)
    parser.add_argument("--spread", type=float, default=SPREAD, help="log-odds of the priors")
    parser.add_argument("--refuse", action="store_true", help="with the judging of every change")
    parser.add_argument("--lines", action="store_true", help="a line of JSON for each shop")
    told = parser.parse_args()
    book = load_book(knowledge_folder())
    asked, results = asked_first(book), []
    for number in range(told.first, told.first + told.shops):
        seed = SEED + number
        results.append(shop(book, seed, asked, SIZES, told.sealed, told.refuse, told.spread))
        if told.lines:
            print(json.dumps(asdict(results[-1])), flush=True)
        print(f"shop {number}: {results[-1].seconds:.0f} s", file=sys.stderr, flush=True)
    print(json.dumps(summary(results), indent=1))
    return 0


if __name__ == "__main__":
    sys.exit(main())
