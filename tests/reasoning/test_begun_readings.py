"""A reading that takes several numbers is completed while the person is there."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from diagnose.book.loader import load_book
from diagnose.book.model import Book
from diagnose.case.entries import Case, Entry
from diagnose.reasoning.facts import gather
from diagnose.reasoning.gates import askable, begun
from diagnose.reasoning.reason import questions_asked

SMALL = Path(__file__).parents[1] / "small_knowledge"


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book(SMALL)


def _answered(*answers: tuple[str, str]) -> Case:
    entries = tuple(Entry("answer", name, value) for name, value in answers)
    return Case("bars", ("even-bars-across-travel",), entries)


def test_counted_bars_ask_for_the_table_speed_and_then_the_spindle(book: Book) -> None:
    first = gather(_answered(("bar-spacing", "6 mm")), book)
    assert begun(book, first) == "table-speed"
    both = gather(_answered(("bar-spacing", "6 mm"), ("table-speed", "10 m/min")), book)
    assert begun(book, both) == "spindle-speed"


def test_a_complete_reading_asks_for_nothing(book: Book) -> None:
    whole = [("bar-spacing", "6 mm"), ("table-speed", "10 m/min"), ("spindle-speed", "2850 rpm")]
    assert begun(book, gather(_answered(*whole), book)) is None


def test_another_answer_in_between_ends_the_reading(book: Book) -> None:
    case = _answered(("bar-spacing", "6 mm"), ("wheel-changed", "no"))
    assert begun(book, gather(case, book)) is None


def test_a_reading_that_cannot_be_completed_is_neither_gone_on_with_nor_begun(book: Book) -> None:
    case = _answered(("bar-spacing", "6 mm"), ("table-speed", "don't know"))
    assert begun(book, gather(case, book)) is None
    unknown = gather(_answered(("table-speed", "don't know")), book)
    assert "bar-spacing" not in {c.id for c in askable(book, unknown, {})}
    assert "bar-spacing" in {c.id for c in askable(book, gather(_answered(), book), {})}


def test_a_reading_put_off_is_not_pressed_for(book: Book) -> None:
    case = _answered(("bar-spacing", "6 mm")).with_entry(Entry("later", "table-speed"))
    assert begun(book, gather(case, book)) is None


def test_what_completes_a_reading_begins_none_of_its_own(book: Book) -> None:
    speed = replace(book.checks["table-speed"], together_with=("wheel-changed",))
    book = replace(book, checks={**book.checks, "table-speed": speed})
    whole = [("bar-spacing", "6 mm"), ("spindle-speed", "2850 rpm"), ("table-speed", "10 m/min")]
    assert begun(book, gather(_answered(*whole), book)) is None
    assert begun(book, gather(_answered(whole[2]), book)) == "wheel-changed"


def test_what_is_asked_for_safety_takes_no_question_from_the_search(book: Book) -> None:
    stop = next(iter(book.stops.values()))
    case = _answered(("bar-spacing", "6 mm"), (stop.asked_by, "rang-clear"))
    assert questions_asked(book, case) == 1
