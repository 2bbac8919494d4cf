"""Answers that contradict each other: the pair to look at again.

Two answers are at odds when together they are far less likely, given the complaint, than each
is by itself: no listed combination of causes makes both.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass

from diagnose.reasoning.assembly import Row
from diagnose.reasoning.explained import sum_out
from diagnose.reasoning.ground import Vector
from diagnose.reasoning.network import Network

AT_ODDS = 10.0  # times less likely together than apart from which a pair is pointed out


@dataclass(frozen=True)
class Odds:
    """Two signs, and how many times less likely together than if they had nothing to do."""

    one: str
    other: str
    times: float


def at_odds(network: Network) -> tuple[Odds, ...]:
    """Pairs of signs at odds, worst first.

    With c the complaint: P(a, b | c) against P(a | c) P(b | c), all exact.
    """
    signs = sorted(s for s in network.evidence if s not in network.complaint)
    # a complaint that came back after a fix says nothing any more and has left the evidence
    base: dict[str, Vector] = {
        s: network.evidence[s] for s in network.complaint if s in network.evidence
    }
    pairs = list(itertools.combinations(signs, 2))
    if not pairs:
        return ()
    rows = [Row(base)] + [Row({**base, s: network.evidence[s]}) for s in signs]
    rows += [Row({**base, a: network.evidence[a], b: network.evidence[b]}) for a, b in pairs]
    total = [float(sum_out(network, [row], posteriors=False).total[0]) for row in rows]
    alone = dict(zip(signs, total[1:], strict=False))
    found = []
    for (a, b), both in zip(pairs, total[1 + len(signs) :], strict=True):
        times = alone[a] * alone[b] / (total[0] * both) if both > 0.0 else math.inf
        if times >= AT_ODDS:
            found.append(Odds(a, b, times))
    return tuple(sorted(found, key=lambda o: (-o.times, o.one, o.other)))
