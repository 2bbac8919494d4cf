"""Closed cases on the small knowledge, made for the tests of learning."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from diagnose.book.model import Book
from diagnose.case.entries import Case, Closed, Entry
from diagnose.lessons.taught import Taught, taught_by
from diagnose.shop.closed import close_case
from tests.small import small_book

BARS, BURN = "even-bars-across-travel", "burnt-patches"
WHEEL, BELT, FLOOR = "unbalanced-wheel", "lumpy-belt", "shaking-floor"
COOLANT, UNDRESSED = "coolant-misses-the-cut", "wheel-left-undressed"


def closed_case(
    causes: tuple[str, ...],
    complaint: tuple[str, ...] = (BARS,),
    answers: Mapping[str, str] | None = None,
    machine: str = "",
    new: str = "",
) -> Case:
    """A case closed on one day with these causes."""
    entries = tuple(Entry("answer", n, v) for n, v in (answers or {}).items())
    ended = Closed("2026-03-14", causes, new)
    return Case("plate", complaint, entries, machine=machine, closed=ended)


def teaches(case: Case, book: Book | None = None) -> Taught:
    """What the case teaches."""
    taught = taught_by(book or small_book(), case)
    assert taught is not None
    return taught


def many(number: int, *causes: str, **more: object) -> list[Taught]:
    """The same closed case a number of times."""
    return [teaches(closed_case(causes, **more))] * number  # type: ignore[arg-type]  # passed on


def put_closed(shop: Path, case: Case, title: str) -> Path:
    """The closed case in the shop folder, under a title of its own."""
    assert case.closed is not None
    return close_case(shop, replace(case, title=title, closed=None), None, case.closed)
