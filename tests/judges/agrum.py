"""pyAgrum as a judge: the same network in an independent engine (lazy propagation)."""

from __future__ import annotations

from collections.abc import Mapping

import pyagrum as gum

from diagnose.reasoning.ground import Vector
from diagnose.reasoning.network import UNLISTED, Network

MOST_PARENTS = 14


def fits(network: Network) -> bool:
    """True when no observed sign has more parents than the judge can take."""
    return all(
        sum(s in n.links for n in network.nodes) + 1 <= MOST_PARENTS for s in network.evidence
    )


def posteriors(network: Network) -> dict[str, float]:
    """P(cause there | evidence) for every cause and what is unlisted, by pyAgrum.

    A sign with several values becomes a chain of hidden proposals, one deterministic maximum.
    """
    bn = gum.BayesNet()
    ids: dict[str, int] = {}
    soft: dict[str, list[float]] = {}
    priors = [(n.id, n.prior, n.there, n.absent) for n in network.nodes]
    priors.append((UNLISTED, network.unlisted_prior, 1.0, 1.0))
    for name, prior, there, absent in priors:
        ids[name] = bn.add(gum.LabelizedVariable(name, name, 2))
        bn.cpt(ids[name]).fillWith([1.0 - prior, prior])
        if (there, absent) != (1.0, 1.0):
            soft[name] = [absent, there]
    for sign, likelihood in network.evidence.items():
        size = len(likelihood)
        parents = [n.id for n in network.nodes if sign in n.links] + [UNLISTED]
        links: dict[str, Vector] = {n.id: n.links[sign] for n in network.nodes if sign in n.links}
        links[UNLISTED] = network.unlisted[sign]
        _sign(bn, ids, sign, size, parents, links, network.background[sign])
        soft[sign] = [float(x) for x in likelihood]
    engine = gum.LazyPropagation(bn)
    engine.setEvidence(soft)
    engine.makeInference()
    return {name: float(engine.posterior(ids[name])[1]) for name, *_ in priors}


def _sign(
    bn: gum.BayesNet,
    ids: Mapping[str, int],
    sign: str,
    size: int,
    parents: list[str],
    links: Mapping[str, Vector],
    background: Vector,
) -> None:
    """A running maximum: after the background and each parent in turn."""
    before = None
    steps: list[tuple[str | None, Vector]] = [(None, background)]
    steps += [(p, links[p]) for p in parents]
    for i, (parent, vector) in enumerate(steps):
        name = sign if i == len(steps) - 1 else f"{sign}#{i}"
        node = bn.add(gum.LabelizedVariable(name, name, size))
        if parent is not None:
            bn.addArc(ids[parent], node)
        if before is not None:
            bn.addArc(before, node)
        _fill(bn, node, parent, before, ids, vector, size)
        before = node


def _fill(
    bn: gum.BayesNet,
    node: int,
    parent: str | None,
    before: int | None,
    ids: Mapping[str, int],
    vector: Vector,
    size: int,
) -> None:
    nothing = (1.0, *([0.0] * (size - 1)))
    if parent is None:
        bn.cpt(node).fillWith(list(vector))
        return
    cause = bn.variable(ids[parent]).name()
    last = bn.variable(before).name() if before is not None else ""
    for on in (0, 1):
        step = vector if on else nothing
        for top in range(size):
            row = [0.0] * size
            for value, chance in enumerate(step):
                row[max(top, value)] += chance
            bn.cpt(node)[{cause: on, last: top}] = row
