"""Looks that tell most together: each is worth what it adds to those chosen before it.

Looks that each tell much alone may all tell the same. So a list grows look by look, over lots of
imagined answers to those on it: a greedy choice, which tells at least 1 - 1/e of what the best list
of that length would (Krause & Guestrin 2005, Near-optimal nonmyopic value of information in
graphical models; abstract read).
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from diagnose.reasoning.assembly import Floats
from diagnose.reasoning.next_check import Candidate

LOTS = 128  # imagined sets of answers; with 1,024 at most one look of twelve is another
LEAST_SHARE = 1e-4  # a fix less likely than this chooses no look
LEAST = 1e-9  # keeps an answer that was never seen with a fix from ruling it out
ROOTS = np.sqrt([2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71])


def most_together(
    candidates: Sequence[Candidate], now: Floats, most: int, least: float
) -> tuple[str, ...]:
    """The `most` checks whose answers together tell most of the fix, in the order of the choice.

    `now`: the chance of each fix (then several, then none), summing to one. A check that adds
    less than `least` bits is left out. The answers of two checks are taken as independent once
    the fix is known; only the choice rests on that, no belief. The imagined answers are spread
    evenly (Richtmyer's sequence), so the same case has the same list every time.
    """
    shares = now / now.sum()
    alive = np.flatnonzero(shares > LEAST_SHARE)
    shares = shares[alive] / shares[alive].sum()
    tables = {c.check: _answers_by_fix(c, alive) for c in candidates}
    doubts = {name: _bits(table).sum(axis=0) for name, table in tables.items()}
    lots = np.tile(shares, (LOTS, 1))
    chosen: list[str] = []
    while len(chosen) < min(most, len(candidates)):
        adds = {
            name: float((_bits(lots @ table.T).sum(axis=1) - lots @ doubts[name]).mean())
            for name, table in tables.items()
            if name not in chosen
        }
        best = max(adds, key=lambda name: (adds[name], name))
        if adds[best] < least:
            break
        lots = _answered(lots, tables[best], float(ROOTS[len(chosen) % len(ROOTS)]))
        chosen.append(best)
    return tuple(chosen)


def _answers_by_fix(candidate: Candidate, alive: np.ndarray) -> Floats:
    """The chance of each answer (rows) when the fix (columns) is the one needed."""
    chances = np.array([o.chance for o in candidate.outcomes])
    shares = np.stack([o.shares for o in candidate.outcomes])[:, alive]
    joint = np.maximum(chances[:, None] * shares, LEAST)
    table: Floats = joint / joint.sum(axis=0)
    return table


def _answered(lots: Floats, table: Floats, root: float) -> Floats:
    """Each lot with one answer to the look, drawn by its chance in that lot."""
    drawn = np.modf(np.arange(1, len(lots) + 1) * root)[0]
    upto = (lots @ table.T).cumsum(axis=1)
    answer = (upto / upto[:, -1:] <= drawn[:, None]).sum(axis=1).clip(max=len(table) - 1)
    after = lots * table[answer]
    lots_after: Floats = after / after.sum(axis=1, keepdims=True)
    return lots_after


def _bits(chances: Floats) -> Floats:
    told: Floats = -chances * np.log2(np.maximum(chances, 1e-300))
    return told
