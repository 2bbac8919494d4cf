"""Fixes as decisions: causes that end in the same fix are one, with its minutes and reliability."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from diagnose.book.model import Book, Fix
from diagnose.reasoning.assembly import Floats
from diagnose.reasoning.network import Network

LAST_RESORT = 180.0  # minutes when nothing listed cures: call for help, look further


@dataclass(frozen=True)
class FixTable:
    """The fixes open in a case. `member` (causes, fixes) says which fix cures which cause."""

    ids: tuple[str, ...]
    minutes: Floats
    cures: Floats
    member: Floats

    def group(self, alone: Floats, several: float, none: float) -> Floats:
        """Shares of causes as shares of fixes, then several, then none."""
        return np.concatenate([alone @ self.member, [several, none]])

    def order(self, shares: Floats) -> list[int]:
        """Fixes by chance of curing a minute, best first; those without a chance left out."""
        rate = self.rate(shares)
        return [int(i) for i in np.lexsort((np.arange(len(rate)), -rate)) if rate[i] > 0.0]

    def rate(self, shares: Floats) -> Floats:
        """Chance of curing a minute, for each fix."""
        return np.asarray(shares[: len(self.ids)] * self.cures / self.minutes)

    def expected_minutes(self, shares: Floats) -> float:
        """Minutes until cured when the fixes are done in that order without asking more.

        p/C order is optimal for independent actions of a single fault (Kadane & Simon 1977).
        What no fix cures costs the last resort.
        """
        left, spent = 1.0, 0.0
        for i in self.order(shares):
            gain = float(shares[i] * self.cures[i])
            if left <= 1e-9 or gain / self.minutes[i] <= left / LAST_RESORT * 0.05:
                break
            spent += left * float(self.minutes[i])
            left -= gain
        return spent + max(0.0, left) * LAST_RESORT


def fix_table(book: Book, network: Network, done: Mapping[str, float], practised: bool) -> FixTable:
    """The fixes of the causes still possible; `done` lowers the cures of those already tried."""
    ids = sorted({book.causes[n.id].fix.id for n in network.nodes})
    place = {f: i for i, f in enumerate(ids)}
    member = np.zeros((len(network.nodes), len(ids)))
    fixes: dict[str, Fix] = {}
    for row, node in enumerate(network.nodes):
        fix = book.causes[node.id].fix
        member[row, place[fix.id]] = 1.0
        if fix.id == node.id or fix.id not in fixes:
            fixes[fix.id] = fix
    minutes = [max(1.0, minutes_of(fixes[f], practised)) for f in ids]
    cures = [fixes[f].cures * done.get(f, 1.0) for f in ids]
    return FixTable(tuple(ids), np.array(minutes), np.array(cures), member)


def minutes_of(fix: Fix, practised: bool) -> float:
    """Minutes for this person."""
    return fix.minutes_practised if practised else fix.minutes_first_time
