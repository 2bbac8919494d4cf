"""The views of what the shop remembers: earlier cases like this one, what differs from good."""

from __future__ import annotations

import datetime
from collections.abc import Iterable

from diagnose.book.day import day_of
from diagnose.book.model import Book
from diagnose.case.entries import Closed
from diagnose.shop.healthy import Differs
from diagnose.shop.similar import Earlier
from diagnose.view.result import DiffersView, EarlierView, minutes

MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)
A_YEAR = 330  # days within which "last March" names one March only


def earlier_views(
    book: Book, earlier: Iterable[Earlier], today: datetime.date
) -> tuple[EarlierView, ...]:
    """Each earlier case as one sentence and its facts."""
    return tuple(_earlier(book, e, today) for e in earlier)


def _earlier(book: Book, earlier: Earlier, today: datetime.date) -> EarlierView:
    case = earlier.kept.case
    closed = case.closed
    assert closed is not None
    cured = cured_words(book, closed)
    where = "on this machine " if earlier.same_machine else ""
    said = f"{_when(closed.date, today)} the same fault {where}was: {cured}."
    return EarlierView(
        said=said,
        title=case.title,
        date=closed.date,
        machine=case.machine,
        wheel=case.wheel,
        cured=cured,
        alike=_alike(earlier),
        took=minutes(closed.minutes) if closed.minutes else "",
        done=closed.done,
        case=earlier.kept.path.stem,
    )


def cured_words(book: Book, closed: Closed) -> str:
    """What cured a case, in words."""
    names = [book.causes[c].name for c in closed.cured_by if c in book.causes]
    if closed.something_new:
        names.append(f"something new, {closed.something_new}")
    return " together with ".join(names) or "not cured"


def _when(date: str, today: datetime.date) -> str:
    day = day_of(date)
    if day is None:
        return "Earlier"
    month = MONTHS[day.month - 1]
    days = (today - day).days
    if days < 0 or days > A_YEAR:
        return f"In {month} {day.year}"
    this = (day.year, day.month) == (today.year, today.month)
    return "This month" if this else f"Last {month}"


def _alike(earlier: Earlier) -> str:
    parts = [f"answers the same: {earlier.same_answers}"]
    if earlier.other_answers:
        parts.append(f"answers not the same: {earlier.other_answers}")
    if earlier.same_wheel:
        parts.append("the same wheel")
    return ", ".join(parts)


def differs_views(differs: Iterable[Differs]) -> tuple[DiffersView, ...]:
    """Each thing that is not as it was when the machine ground well."""
    return tuple(DiffersView(d.name, d.now, d.good, d.times, d.date, d.machine) for d in differs)
