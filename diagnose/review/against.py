"""What differs from the last job that came out well on this machine and this metal."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from diagnose.book.model import Book, Check
from diagnose.case.entries import UNKNOWN, read_entries
from diagnose.review.metals import MATERIAL
from diagnose.shop.cards import Shop
from diagnose.shop.closed import Kept
from diagnose.shop.healthy import Differs, Healthy, differences


@dataclass(frozen=True)
class LastGood:
    """The job compared with, and what differs. `not_said` are settings of then, not told now."""

    case: str
    title: str
    date: str
    differs: tuple[Differs, ...]
    same: int
    not_said: tuple[tuple[str, str], ...]  # (check, answer then)


def last_good(
    book: Book, shop: Shop, machine: str, told: Mapping[str, str], closed: Iterable[Kept]
) -> LastGood | None:
    """The last cured case of the machine and the metal against `told` (check -> answer).

    `closed` runs from the latest to the earliest. Without such a case the healthy record of the
    machine stands in; None when the shop has neither.
    """
    for kept in closed:
        case = kept.case
        if case.machine != machine or not machine or case.closed is None or not case.closed.cured:
            continue
        then = settings_of(book, shop, kept)
        if then.get(MATERIAL) == told.get(MATERIAL):
            return _compared(book, kept.path.stem, case.title, kept.date, machine, then, told)
    good = shop.healthy.get(machine)
    if good is None:
        return None
    then = {n: a for n, a in good.answers.items() if n in book.checks and is_setting(book, n)}
    return _compared(book, "", "healthy record", good.date, machine, then, told)


def settings_of(book: Book, shop: Shop, kept: Kept) -> dict[str, str]:
    """The settings of a closed case as they stood at its end: cards, facts, answers."""
    case = kept.case
    then: dict[str, str] = {}
    for name, cards in ((case.machine, shop.machines), (case.wheel, shop.wheels)):
        if name in cards:
            then |= cards[name].facts
    then |= {s.check: s.value for s in read_entries(case).answers}
    return {n: v for n, v in then.items() if v != UNKNOWN and is_setting(book, n)}


def is_setting(book: Book, name: str) -> bool:
    """True for what a person sets or has: no sign, no hazard, no trial."""
    check = book.checks.get(name)
    if check is None or check.trial or check.kind not in ("one", "number") or check.reports:
        return False
    if any(o.raises or o.clears for o in check.options) and name != MATERIAL:
        return False
    return not _settles_a_sign(book, check)


def _settles_a_sign(book: Book, check: Check) -> bool:
    named = {*check.settles, *(f for o in check.options for f in o.means)}
    return any(book.findings[f].kind == "sign" for f in named if f in book.findings)


def _compared(
    book: Book,
    case: str,
    title: str,
    date: str,
    machine: str,
    then: Mapping[str, str],
    told: Mapping[str, str],
) -> LastGood:
    differs = differences(Healthy(machine, date, answers=then), told, {}, book)
    both = then.keys() & told.keys()
    missing = tuple((n, then[n]) for n in sorted(then.keys() - told.keys()))
    return LastGood(case, title, date, differs, len(both) - len(differs), missing)
