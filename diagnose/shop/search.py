"""Finding cases by symptom, cause, machine, wheel, day and words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from diagnose.book.model import Book
from diagnose.shop.closed import Kept


@dataclass(frozen=True)
class Wanted:
    """What is looked for; an empty field does not matter. Days are year-month-day, inclusive."""

    symptoms: tuple[str, ...] = ()
    causes: tuple[str, ...] = ()
    machine: str = ""
    wheel: str = ""
    since: str = ""
    until: str = ""
    words: tuple[str, ...] = ()


def found(cases: Iterable[Kept], wanted: Wanted, book: Book) -> list[Kept]:
    """The cases that fit all of what is wanted, in the order given."""
    return [kept for kept in cases if _fits(kept, wanted, book)]


def _fits(kept: Kept, wanted: Wanted, book: Book) -> bool:
    case, cured = kept.case, kept.case.closed.cured_by if kept.case.closed else ()
    if wanted.symptoms and not set(wanted.symptoms) & set(case.complaint):
        return False
    if wanted.causes and not set(wanted.causes) & set(cured):
        return False
    if (wanted.machine or case.machine) != case.machine:
        return False
    if (wanted.wheel or case.wheel) != case.wheel:
        return False
    if (wanted.since and kept.date < wanted.since) or (wanted.until and kept.date > wanted.until):
        return False
    text = _text(kept, book)
    return all(word.lower() in text for word in wanted.words)


def _text(kept: Kept, book: Book) -> str:
    case, closed = kept.case, kept.case.closed
    parts = [case.title, case.part, case.note, case.machine, case.wheel, kept.path.stem]
    parts += [book.symptoms[s].name for s in case.complaint]
    if closed is not None:
        parts += [closed.something_new, closed.done, closed.proved, closed.note]
        parts += [book.causes[c].name for c in closed.cured_by]
    return " ".join(parts).lower()
