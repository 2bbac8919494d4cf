"""What a shop has learned: adjusted numbers, each with what it was and from how many cases."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Share:
    """In what share of the cases of one complaint a cause acts.

    `machine` is "" for the whole shop. `before` is what the book says (for a machine: the book
    with the shop's other cases), `after` what is taken now; `acted` of `cases` closed cases named
    it. `odds` is the factor on the book's odds of the cause that brings `after` out.
    """

    complaint: tuple[str, ...]
    cause: str
    acted: int
    cases: int
    before: float
    after: float
    odds: float
    machine: str = ""


@dataclass(frozen=True)
class Strength:
    """How often a sign shows when a cause is there, a total: P(sign has `value` | cause).

    `seen` of `cases` closed cases of this one cause showed it. `book` is the book's number,
    `before` the same, or for a machine what the shop's other cases make of it.
    """

    cause: str
    finding: str
    value: str
    seen: int
    cases: int
    book: float
    before: float
    after: float
    machine: str = ""


@dataclass(frozen=True)
class NoLink:
    """A cause named as the cure of a complaint that the book does not let it show."""

    complaint: tuple[str, ...]
    cause: str
    cases: int


@dataclass(frozen=True)
class Refused:
    """A change not made, because it would rank earlier closed cases worse.

    `what` is the complaint (`kind` "complaint") or the cause whose signs would change ("signs");
    `before` and `after` are the typical chance (geometric mean) that `cases` earlier cases gave
    what cured them, without the change and with it.
    """

    kind: str
    what: tuple[str, ...]
    cases: int
    before: float
    after: float
    machine: str = ""


@dataclass(frozen=True)
class Lessons:
    """All that was learned at one time from `cases` closed cases; `date` is year-month-day.

    `typical_before` and `typical_after`: the typical chance those cases give what cured them.
    """

    date: str = ""
    cases: int = 0
    shares: tuple[Share, ...] = ()
    strengths: tuple[Strength, ...] = ()
    no_links: tuple[NoLink, ...] = ()
    refused: tuple[Refused, ...] = ()
    typical_before: float = 0.0
    typical_after: float = 0.0
