"""The book with the shop's lessons over it, for one complaint on one machine."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from diagnose.book.model import Book, Cause, Link
from diagnose.book.strengths import NotAbove, TooMuch
from diagnose.lessons.model import Lessons, Strength
from diagnose.reasoning.ground import cause_links

LEAST_LINK = 0.02  # what a link keeps above the sign's background, of what is left to 1
SAME = 1e-6


def with_lessons(
    book: Book, lessons: Lessons, complaint: tuple[str, ...], machine: str = ""
) -> Book:
    """The book as this shop knows it: odds factors for the complaint, strengths of signs.

    The lessons of the machine stand in place of those of the shop where it has its own. The
    book itself comes back when there is nothing to change.
    """
    factors = odds_factors(lessons, complaint, machine)
    strengths = strengths_for(lessons, machine)
    causes: dict[str, Cause] = {}
    for name in sorted(factors.keys() | strengths.keys()):
        cause = book.causes.get(name)
        if cause is not None:
            moved = _moved(book, cause, strengths.get(name, {}), complaint)
            causes[name] = replace(moved, learned=factors.get(name, 1.0))
    return replace(book, causes={**book.causes, **causes}) if causes else book


def odds_factors(
    lessons: Lessons, complaint: tuple[str, ...], machine: str = ""
) -> dict[str, float]:
    """Cause -> odds factor. A complaint without lessons of its own takes, if it has several
    symptoms, the geometric mean of those of its symptoms, else what holds for any complaint.
    """
    key = tuple(sorted(complaint))
    own = _factors_of(lessons, key, machine)
    if not own and any(r.what == key and not r.machine for r in lessons.refused):
        return {}  # what its cases refused must not come in by another door
    parts = [p for s in complaint if (p := _factors_of(lessons, (s,), machine))]
    if own or not parts:
        return own or _factors_of(lessons, (), machine)
    names = sorted({name for p in parts for name in p})
    return {n: math.prod(p.get(n, 1.0) for p in parts) ** (1.0 / len(parts)) for n in names}


def _factors_of(lessons: Lessons, complaint: tuple[str, ...], machine: str) -> dict[str, float]:
    for place in dict.fromkeys((machine, "")):
        found = {
            s.cause: s.odds
            for s in lessons.shares
            if s.machine == place and s.complaint == complaint
        }
        if found:
            return found
    return {}


Table = Mapping[str, Mapping[tuple[str, str], Strength]]


def strengths_for(lessons: Lessons, machine: str = "") -> Table:
    """Cause -> (sign, value) -> its strength, the machine's own before the shop's."""
    found: dict[str, dict[tuple[str, str], Strength]] = {}
    for place in dict.fromkeys(("", machine)):
        for s in lessons.strengths:
            if s.machine == place:
                found.setdefault(s.cause, {})[s.finding, s.value] = s
    return found


def _moved(
    book: Book,
    cause: Cause,
    strengths: Mapping[tuple[str, str], Strength],
    complaint: tuple[str, ...],
) -> Cause:
    """The cause with its signs as often as learned; as it was where the numbers do not go."""
    mine = {k: s for k, s in strengths.items() if k[0] not in complaint}
    if not mine:
        return cause
    links = tuple(_link(book, link, mine.get((link.finding, link.value))) for link in cause.shows)
    new = replace(cause, shows=links)
    try:
        cause_links(book, new)
    except (NotAbove, TooMuch):
        return cause
    return new


def _link(book: Book, link: Link, strength: Strength | None) -> Link:
    if strength is None or not current(link, strength):
        return link
    values = book.findings[link.finding].values
    background = next(v.without_cause or 0.0 for v in values if v.id == link.value)
    least = background + LEAST_LINK * (1.0 - background)
    often = max(strength.after, min(least, link.how_often))
    word = f"{strength.seen} of {strength.cases} of your cases, the book says {link.word}"
    return replace(link, how_often=often, word=word)


def current(link: Link, strength: Strength) -> bool:
    """True when the book's number is still the one that was learned from."""
    return abs(link.how_often - strength.book) < SAME
