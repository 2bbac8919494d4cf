"""Earlier closed cases that are like one in hand."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from diagnose.book.model import Book
from diagnose.case.entries import UNKNOWN, Case, read_entries
from diagnose.shop.closed import Kept
from diagnose.shop.measured import apart

MOST = 3
# ours: what counts towards likeness, in answers
MACHINE, WHEEL, UNLIKE = 2.0, 1.0, 0.5


@dataclass(frozen=True)
class Earlier:
    """One earlier case and how far it is like the one in hand."""

    kept: Kept
    same_machine: bool
    same_wheel: bool
    same_answers: int
    other_answers: int

    @property
    def likeness(self) -> float:
        """The more the liker."""
        extra = MACHINE * self.same_machine + WHEEL * self.same_wheel
        return extra + self.same_answers - UNLIKE * self.other_answers


def similar(case: Case, book: Book, closed: Iterable[Kept], most: int = MOST) -> list[Earlier]:
    """Cured cases with a symptom in common, the likest first, of equals the latest."""
    told = _told(case)
    found = [
        _compared(case, told, kept, book)
        for kept in closed
        if kept.case.closed
        and kept.case.closed.cured
        and set(kept.case.complaint) & set(case.complaint)
        and not _itself(case, kept)
    ]
    found.sort(key=lambda e: (e.kept.date, e.kept.path.as_posix()), reverse=True)
    found.sort(key=lambda e: -e.likeness)
    return found[:most]


def _itself(case: Case, kept: Kept) -> bool:
    return bool(case.path) and case.path == kept.path.as_posix()


def _told(case: Case) -> dict[str, str]:
    told = {s.check: s.value for s in read_entries(case).answers}
    return {check: value for check, value in told.items() if value != UNKNOWN}


def _compared(case: Case, told: dict[str, str], kept: Kept, book: Book) -> Earlier:
    other = kept.case
    before = _told(other)
    both = [name for name in told.keys() & before.keys() if _tells(book, name)]
    same = sum(_alike(book, name, told[name], before[name]) for name in both)
    return Earlier(
        kept,
        bool(case.machine) and case.machine == other.machine,
        bool(case.wheel) and case.wheel == other.wheel,
        same,
        len(both) - same,
    )


def _tells(book: Book, name: str) -> bool:
    """True for a check of the fault; questions about hazards are answered alike every time."""
    check = book.checks.get(name)
    return check is not None and not any(o.raises or o.clears for o in check.options)


def _alike(book: Book, name: str, one: str, other: str) -> bool:
    check = book.checks[name]
    if check.kind == "number":
        return not apart(one, other, check.dimension, check.give_or_take)
    return one == other
