"""One question looked ahead: asked now, after a fix that failed, or not at all.

What a state of knowledge is worth in minutes is bounded from two sides: fixing in the best order
and asking no more, and fixing as one who knows all plus the bits still missing at the price of the
cheapest question on offer. The lower of the two is taken, so that a question is not thrown away
because one answer alone does not yet change the first fix.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from diagnose.reasoning.assembly import Floats
from diagnose.reasoning.fixes import LAST_RESORT, FixTable

FIRST_FIXES = 3  # fixes that may be tried before the question, in any order
ATTENTION = 1.0  # minutes a question costs besides its own


@dataclass(frozen=True)
class Ahead:
    """Expected minutes to the cure: asking this question now, or trying a fix first.

    `fix` is the fix to try first (its place in the table), None when no fix has a chance.
    """

    ask: float
    fix_first: float
    fix: int | None


def look_ahead(
    now: Floats,
    answers: Sequence[tuple[float, Floats]],
    minutes: float,
    fixes: FixTable,
    bit_price: float,
) -> Ahead:
    """Weigh one question against the fixes.

    `now` (classes,) are the shares of who would cure; `answers` the chance of each answer with
    the shares then; `minutes` the question costs, attention included; `bit_price` minutes a bit
    of doubt is worth. Exact over every set of the first fixes that may have failed (the way of
    the three-way test, Jensen et al., AIEDAM 15:321-333, 2001), for the states it looks at.
    """
    states = np.stack([now, *(chance * shares for chance, shares in answers)])
    first = fixes.order(now)[:FIRST_FIXES]
    values: dict[int, Floats] = {}
    best, after_fix = np.inf, None
    for failed in sorted(range(2 ** len(first)), key=lambda f: -f.bit_count()):
        done = [f for b, f in enumerate(first) if failed >> b & 1]
        weights = np.ones(now.size)
        weights[done] = 1.0 - fixes.cures[done]
        left = states * weights
        mass = left.sum(axis=1)
        value = mass * _worth(left / np.maximum(mass, 1e-300)[:, None], _without(fixes, done),
                              bit_price)  # fmt: skip
        for b, f in enumerate(first):
            if not failed >> b & 1:
                cost = mass * fixes.minutes[f] + values[failed | 1 << b]
                value = np.minimum(value, cost)
                if not failed and cost[0] < best:
                    best, after_fix = float(cost[0]), f
        asked = float(mass[0] * minutes + value[1:].sum())
        value[0] = min(value[0], asked)
        values[failed] = value
    return Ahead(asked, best, after_fix)


def _without(fixes: FixTable, done: Sequence[int]) -> FixTable:
    cures = fixes.cures.copy()
    cures[list(done)] = 0.0
    return replace(fixes, cures=cures)


def _worth(shares: Floats, fixes: FixTable, bit_price: float) -> Floats:
    """Minutes from each state on; shares (states, classes)."""
    count = len(fixes.ids)
    knowing = np.minimum(LAST_RESORT, fixes.minutes + (1.0 - fixes.cures) * LAST_RESORT)
    least = shares[:, :count] @ knowing + shares[:, count:].sum(axis=1) * LAST_RESORT
    logs = np.log2(np.where(shares > 0.0, shares, 1.0))
    doubt = -(shares * logs).sum(axis=1)
    return np.asarray(np.minimum(fixes.expected(shares), least + bit_price * doubt))
