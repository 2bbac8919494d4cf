"""The ranking: which causes act on this complaint, and what a fix of each would cure.

A condition can be present, even measured, and have nothing to do with this complaint, so causes
are ranked by `acts` (present and its link to the complaint fired). `cures_alone` is the chance
that the cause is the only thing making the complaint; with the background and what the book does
not list ("none of these") and "several together" it makes a partition that sums to one.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from diagnose.reasoning.assembly import Floats, Row, width
from diagnose.reasoning.explained import Summed, sum_out
from diagnose.reasoning.ground import Vector
from diagnose.reasoning.network import Network, hard

WIDEST = 2**16


class Impossible(ValueError):
    """The entries cannot all be true together under the knowledge."""


@dataclass(frozen=True)
class Ranked:
    """One cause: chance that it acts on the complaint, cures it alone, is there at all."""

    cause: str
    acts: float
    cures_alone: float
    present: float


@dataclass(frozen=True)
class Belief:
    """What to believe now; `ranked` has the most likely to act first, ties by id."""

    ranked: tuple[Ranked, ...]
    several: float
    none: float
    log_evidence: float
    set_aside: tuple[str, ...] = ()

    def of(self, cause: str) -> Ranked | None:
        """The figures of one cause; None when it is ruled out."""
        return next((r for r in self.ranked if r.cause == cause), None)


@dataclass(frozen=True)
class Shares:
    """For many rows: chance of the row's evidence, and who would cure the complaint.

    `weight` (rows,) is P(row's evidence) unnormalised; `alone` (rows, causes), `several` and
    `none` (rows,) are the partition given the row.
    """

    weight: Floats
    alone: Floats
    several: Floats
    none: Floats


def believe(network: Network) -> Belief:
    """Exact posterior of one case.

    Raises Impossible when the evidence has no chance at all under the knowledge.
    """
    network = within_width(network)
    row = Row(network.evidence)
    quiet, fires = _without_complaint(network, [row])
    summed = sum_out(network, [row, *quiet], fired=True)
    total = float(summed.total[0])
    if not total > 0.0:
        raise Impossible("these answers cannot all be true together as the knowledge stands")
    alone = Summed(summed.total[1:], summed.unlisted[1:], summed.present[1:])
    shares = _shares(network, fires, summed.total[:1], alone)
    assert summed.fired is not None
    ranked = [
        Ranked(
            node.id,
            _unit(summed.fired[0, i] / total),
            _unit(shares.alone[0, i]),
            _unit(summed.present[0, i] / total),
        )
        for i, node in enumerate(network.nodes)
    ]
    ranked.sort(key=lambda r: (-r.acts, -r.cures_alone, -r.present, r.cause))
    return Belief(
        tuple(ranked),
        _unit(shares.several[0]),
        _unit(shares.none[0]),
        float(np.log(total)),
        network.set_aside,
    )


def partition(network: Network, rows: Sequence[Row], total: Floats) -> Shares:
    """Who alone would cure the complaint, for each row, given the rows' totals.

    cures_alone(c) = P(rest of the evidence, complaint made by nothing else, c there) x odds that
    c's link fires / P(all the evidence); likewise the background and the unlisted.
    """
    quiet, fires = _without_complaint(network, rows)
    return _shares(network, fires, total, sum_out(network, quiet))


def _shares(network: Network, fires: Mapping[str, int], total: Floats, summed: Summed) -> Shares:
    """`summed`: the sums with the complaint made by nothing but the cause in hand."""
    odds = np.array([_odds(node.links, fires) for node in network.nodes])
    with np.errstate(divide="ignore", invalid="ignore"):
        alone = np.where(total[:, None] > 0, summed.present * odds / total[:, None], 0.0)
        by_chance = _odds(network.background, fires) * summed.total
        by_unlisted = _odds(network.unlisted, fires) * summed.unlisted
        none = np.where(total > 0, (by_chance + by_unlisted) / total, 0.0)
    several = np.clip(1.0 - alone.sum(axis=1) - none, 0.0, 1.0)
    return Shares(total, alone, several, none)


def within_width(network: Network) -> Network:
    """The network with the least informative evidence set aside until the sum is bounded."""
    aside = list(network.set_aside)
    while width(network, network.evidence, WIDEST) > WIDEST:
        loose = [s for s in network.evidence if s not in network.complaint]
        if not loose:
            break
        least = min(loose, key=lambda s: (_informs(network, s), s))
        aside.append(least)
        kept = {s: v for s, v in network.evidence.items() if s != least}
        network = replace(network, evidence=kept)
    if len(aside) == len(network.set_aside):
        return network
    return replace(network, set_aside=tuple(aside))


def _informs(network: Network, sign: str) -> float:
    """How far a sign can move any cause: its largest log ratio, weighed by the prior."""
    likelihood = np.array(network.evidence[sign])
    plain = float(likelihood @ np.array(network.background[sign]))
    most = 0.0
    for node in network.nodes:
        link = node.links.get(sign)
        if link is not None:
            shown = _most_striking(np.array(network.background[sign]), np.array(link))
            ratio = float(likelihood @ shown) / max(plain, 1e-12)
            most = max(most, node.prior * abs(float(np.log(max(ratio, 1e-12)))))
    return most


def _most_striking(state: Floats, step: Floats) -> Floats:
    upto = np.cumsum(state) * np.cumsum(step)
    return np.diff(upto, prepend=0.0)


def _without_complaint(
    network: Network, rows: Sequence[Row]
) -> tuple[list[Row], Mapping[str, int]]:
    """Rows with the complaint made by nothing but the cause in hand; the value each sign shows."""
    fires: dict[str, int] = {}
    quiet: dict[str, Vector] = {}
    for sign in network.complaint:
        vector = network.evidence.get(sign)
        value = hard(vector) if vector is not None else None
        if vector is None or not value:
            continue
        fires[sign] = value
        quiet[sign] = tuple(1.0 if k < value else 0.0 for k in range(len(vector)))
    return [replace(r, evidence={**r.evidence, **quiet}) for r in rows], fires


def _odds(links: Mapping[str, Vector], fires: Mapping[str, int]) -> float:
    """Odds that the links fire just so against staying less striking; 0 without a link."""
    result = 1.0 if fires else 0.0
    for sign, value in fires.items():
        link = links.get(sign)
        if link is None:
            return 0.0
        below = sum(link[:value])
        result *= link[value] / below if below > 0 else 0.0
    return result


def _unit(value: float) -> float:
    return float(min(1.0, max(0.0, value)))
