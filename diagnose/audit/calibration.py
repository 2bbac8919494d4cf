"""Closed cases against the written rates: how often causes cured what the book gave them.

Every closed case is ranked as it was told. `expected` is the sum over the cases of the chance
the book gave a cause of acting; `cured` how often it did. A gap far beyond chance (three standard
deviations of a sum of independent draws) is drift.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import log, sqrt

from diagnose.audit.told import corrected
from diagnose.book.model import Book
from diagnose.case.entries import Case
from diagnose.reasoning.belief import Impossible, believe
from diagnose.reasoning.reason import read_case
from diagnose.reasoning.trials import network_of

FAR_OFF = 3.0  # standard deviations
BANDS = ((0.0, 0.1), (0.1, 0.3), (0.3, 0.5), (0.5, 0.7), (0.7, 0.9), (0.9, 1.01))


@dataclass(frozen=True)
class Rate:
    """One cause: cases it could have made, chance summed, cures named, deviations off."""

    cause: str
    cases: int
    expected: float
    cured: int
    off: float

    @property
    def drifts(self) -> bool:
        """True when chance alone does not explain the gap."""
        return abs(self.off) >= FAR_OFF


@dataclass(frozen=True)
class Band:
    """Of what was given a chance between `low` and `high`: how often it was so."""

    low: float
    high: float
    said: float
    was: float
    number: int


@dataclass(frozen=True)
class Calibration:
    """Closed cases used, how often the true cause was first and among three, rates and bands."""

    cases: int
    first: int
    among_three: int
    log_loss: float | None
    rates: tuple[Rate, ...]
    bands: tuple[Band, ...]


def calibrate(book: Book, closed: Iterable[Case]) -> Calibration:
    """Rank closed cases that name their cure; those that cannot be ranked are left out."""
    given: list[tuple[str, float, bool]] = []
    ranks: list[int] = []
    losses: list[float] = []
    for case in closed:
        cured = set(case.closed.cured_by) & set(book.causes) if case.closed else set()
        if not cured:
            continue
        ranking = rank_as_told(book, case)
        if not ranking:
            continue
        names = [name for name, _ in ranking]
        ranks.append(min((names.index(c) + 1 for c in cured if c in names), default=0))
        chances = dict(ranking)
        losses.append(-log(max(max(chances.get(c, 0.0) for c in cured), 1e-6)))
        given += [(name, chance, name in cured) for name, chance in ranking]
    first = sum(r == 1 for r in ranks)
    three = sum(1 <= r <= 3 for r in ranks)
    loss = sum(losses) / len(losses) if losses else None
    return Calibration(len(ranks), first, three, loss, _rates(given), _bands(given))


def rank_as_told(book: Book, case: Case) -> list[tuple[str, float]]:
    """The causes with their chance of acting, before anything was tried; [] when impossible."""
    entries = tuple(e for e in corrected(case.entries) if e.kind == "answer")
    bare = Case(case.title, case.complaint, entries)
    try:
        read = read_case(book, bare)
        network, _ = network_of(book, case.complaint, read.gathered, read.deduced)
        return [(r.cause, r.acts) for r in believe(network).ranked]
    except (Impossible, KeyError):
        return []


def _rates(given: Iterable[tuple[str, float, bool]]) -> tuple[Rate, ...]:
    by: dict[str, list[tuple[float, bool]]] = {}
    for name, chance, was in given:
        if chance > 1e-4 or was:
            by.setdefault(name, []).append((chance, was))
    found = []
    for name, rows in sorted(by.items()):
        expected = sum(c for c, _ in rows)
        spread = sqrt(sum(c * (1.0 - c) for c, _ in rows)) or 1e-9
        cured = sum(was for _, was in rows)
        found.append(Rate(name, len(rows), expected, cured, (cured - expected) / spread))
    return tuple(sorted(found, key=lambda r: (-abs(r.off), r.cause)))


def _bands(given: Iterable[tuple[str, float, bool]]) -> tuple[Band, ...]:
    rows = list(given)
    found = []
    for low, high in BANDS:
        inside = [(c, was) for _, c, was in rows if low <= c < high]
        if inside:
            said = sum(c for c, _ in inside) / len(inside)
            was = sum(w for _, w in inside) / len(inside)
            found.append(Band(low, min(high, 1.0), said, was, len(inside)))
    return tuple(found)
