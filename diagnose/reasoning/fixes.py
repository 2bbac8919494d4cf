"""Fixes as decisions: what each costs, what it cures, in which order least minutes are expected.

Causes that end in the same fix are one decision. The shares are a partition of what would cure
the complaint, so a fix that fails leaves the shares it could not cure.
"""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from diagnose.book.model import Book, Fix
from diagnose.reasoning.assembly import Floats
from diagnose.reasoning.network import Network

LAST_RESORT = 180.0  # minutes when no listed fix cures: call for help, look further
EXACT_ORDER = 8  # fixes up to which the best order is found exactly


@dataclass(frozen=True)
class FixTable:
    """The fixes open in a case.

    `minutes` (fixes,), `cures` (fixes,) reliability, `fix_of` (causes,) the place of the fix that
    is the cure of each cause.
    """

    ids: tuple[str, ...]
    minutes: Floats
    cures: Floats
    fix_of: npt.NDArray[np.intp]

    def group(self, alone: Floats, several: float, none: float) -> Floats:
        """Shares of causes as shares of fixes, then several, then none."""
        fixed = np.bincount(self.fix_of, weights=alone, minlength=len(self.ids))
        return np.concatenate([fixed, [several, none]])

    def at_work(self, acts: Sequence[float]) -> dict[str, float]:
        """For each fix the chance that something it mends acts; `acts` (causes,).

        The likeliest of its causes is taken, which is the least the chance can be.
        """
        found = np.zeros(len(self.ids))
        np.maximum.at(found, self.fix_of, np.asarray(acts))
        return dict(zip(self.ids, found.tolist(), strict=True))

    def rate(self, shares: Floats) -> Floats:
        """Chance of curing a minute, for each fix; shares (..., fixes + 2)."""
        return np.asarray(shares[..., : len(self.ids)] * self.cures / self.minutes)

    def order(self, shares: Floats) -> list[int]:
        """Fixes by chance of curing a minute, best first; those without a chance left out.

        p/C order is optimal for independent actions against a single fault (Kadane & Simon 1977).
        """
        rate = self.rate(shares)
        return [int(i) for i in np.lexsort((np.arange(len(rate)), -rate)) if rate[i] > 0.0]

    def expected(self, shares: Floats) -> Floats:
        """Minutes until cured, fixing in that order and asking no more; shares (..., fixes + 2).

        What no fix cures costs the last resort; a fix that cures less a minute is not tried first.
        """
        rate = self.rate(shares)
        gain = shares[..., : len(self.ids)] * self.cures
        order = np.argsort(-rate, axis=-1, kind="stable")
        rate = np.take_along_axis(rate, order, axis=-1)
        gain = np.take_along_axis(gain, order, axis=-1)
        minutes = self.minutes[order]
        left = 1.0 - np.cumsum(gain, axis=-1) + gain  # not yet cured when the fix begins
        tried = rate > np.maximum(left, 0.0) / LAST_RESORT
        spent = np.where(tried, np.maximum(left, 0.0) * minutes, 0.0).sum(axis=-1)
        cured = np.where(tried, gain, 0.0).sum(axis=-1)
        return np.asarray(spent + np.maximum(0.0, 1.0 - cured) * LAST_RESORT)

    def expected_minutes(self, shares: Floats) -> float:
        """`expected` for one partition."""
        return float(self.expected(shares))


@dataclass(frozen=True)
class Cures:
    """What each action cures of a list of exclusive faults: chance (actions, faults)."""

    costs: tuple[float, ...]
    chance: tuple[tuple[float, ...], ...]


def cost_of_order(
    order: Sequence[int], cures: Cures, faults: Sequence[float], last_resort: float
) -> float:
    """Expected cost of doing the actions in this order until the fault is gone.

    `faults` are the chances of the exclusive faults; what none cures costs `last_resort`.
    """
    left = list(faults)
    spent = 0.0
    for action in order:
        spent += sum(left) * cures.costs[action]
        left = [p * (1.0 - c) for p, c in zip(left, cures.chance[action], strict=True)]
    return spent + sum(left) * last_resort


def greedy_order(cures: Cures, faults: Sequence[float]) -> tuple[int, ...]:
    """Actions by chance of curing what is left per unit of cost, brought up to date after each."""
    left = list(faults)
    todo = list(range(len(cures.costs)))
    order: list[int] = []
    while todo and sum(left) > 1e-12:
        best = max(todo, key=lambda a: (_cured(cures, a, left) / cures.costs[a], -a))
        if _cured(cures, best, left) <= 0.0:
            break
        order.append(best)
        todo.remove(best)
        left = [p * (1.0 - c) for p, c in zip(left, cures.chance[best], strict=True)]
    return tuple(order)


def best_order(cures: Cures, faults: Sequence[float], last_resort: float) -> tuple[int, ...]:
    """The order, over any set of the actions, with least expected cost.

    Exact by dynamic programming over sets of actions done (what is left depends on the set
    alone) up to EXACT_ORDER actions; greedy beyond.
    """
    count = len(cures.costs)
    if count > EXACT_ORDER:
        return greedy_order(cures, faults)
    full = range(count)
    best: dict[frozenset[int], tuple[float, tuple[int, ...]]] = {}
    for size in range(count, -1, -1):
        for done in map(frozenset, itertools.combinations(full, size)):
            left = _left(cures, done, faults)
            choice: tuple[float, tuple[int, ...]] = (left * last_resort, ())
            for action in full:
                if action not in done:
                    cost, rest = best[done | {action}]
                    tried = (left * cures.costs[action] + cost, (action, *rest))
                    choice = min(choice, tried, key=lambda c: (c[0], len(c[1]), c[1]))
            best[done] = choice
    return best[frozenset()][1]


def ask_cost(cost: float, branches: Sequence[tuple[float, float]]) -> float:
    """Expected cost of asking first: its own cost, then each answer's (chance, cost after)."""
    return cost + sum(p * after for p, after in branches)


def minutes_range(
    order: Sequence[int], cures: Cures, faults: Sequence[float], last_resort: float
) -> tuple[float, float]:
    """Minutes by which one case in ten, and nine in ten, are cured in this order."""
    left, spent, low = list(faults), 0.0, -1.0
    whole = sum(left) or 1.0
    for action in order:
        spent += cures.costs[action]
        left = [p * (1.0 - c) for p, c in zip(left, cures.chance[action], strict=True)]
        done = 1.0 - sum(left) / whole
        if low < 0.0 and done >= 0.1:
            low = spent
        if done >= 0.9:
            return low, spent
    return (low if low >= 0.0 else spent + last_resort), spent + last_resort


def _cured(cures: Cures, action: int, left: Sequence[float]) -> float:
    return sum(p * c for p, c in zip(left, cures.chance[action], strict=True))


def _left(cures: Cures, done: frozenset[int], faults: Sequence[float]) -> float:
    total = 0.0
    for fault, p in enumerate(faults):
        for action in done:
            p *= 1.0 - cures.chance[action][fault]
        total += p
    return total


def fix_table(book: Book, network: Network, done: Mapping[str, float], practised: bool) -> FixTable:
    """The fixes of the causes still possible; `done` lowers the cures of those already tried."""
    ids = sorted({book.causes[n.id].fix.id for n in network.nodes})
    place = {f: i for i, f in enumerate(ids)}
    fix_of = np.zeros(len(network.nodes), dtype=np.intp)
    fixes: dict[str, Fix] = {}
    for row, node in enumerate(network.nodes):
        fix = book.causes[node.id].fix
        fix_of[row] = place[fix.id]
        if fix.id == node.id or fix.id not in fixes:
            fixes[fix.id] = fix
    minutes = [max(1.0, minutes_of(fixes[f], practised)) for f in ids]
    cures = [fixes[f].cures * done.get(f, 1.0) for f in ids]
    return FixTable(tuple(ids), np.array(minutes), np.array(cures), fix_of)


def minutes_of(fix: Fix, practised: bool) -> float:
    """Minutes for this person."""
    return fix.minutes_practised if practised else fix.minutes_first_time
