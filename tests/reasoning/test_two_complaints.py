"""Two complaints at once: who mends one of them has its share, and asking goes on."""

from __future__ import annotations

import pytest

from diagnose.book.kept import load_kept
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from diagnose.case.entries import Case
from diagnose.reasoning.reason import reason


@pytest.fixture(scope="module")
def book() -> Book:
    return load_kept(knowledge_folder())


PAIRS = [
    ("part-tapered", "thin-plate-dished"),
    ("marks-near-the-ends", "even-bars-across-travel"),
    ("burnt-patches", "random-scratches"),
    ("motor-labours", "rough-without-pattern"),
]


@pytest.mark.parametrize("pair", PAIRS)
def test_two_complaints_do_not_end_the_interview(book: Book, pair: tuple[str, str]) -> None:
    told = reason(book, Case("", pair))
    assert told.step.kind in ("ask", "safety")


@pytest.mark.parametrize("pair", PAIRS)
def test_what_the_fixes_are_weighed_by_is_a_partition(book: Book, pair: tuple[str, str]) -> None:
    told = reason(book, Case("", pair))
    shares = told.valued.now
    several, none = shares[-2], shares[-1]
    assert several == pytest.approx(0.0, abs=1e-9)
    assert none == pytest.approx(told.belief.none, abs=1e-9)
    assert shares.sum() == pytest.approx(1.0, abs=1e-9)
    assert (shares >= 0.0).all()


def test_one_complaint_keeps_several_together_apart(book: Book) -> None:
    told = reason(book, Case("", ("even-bars-across-travel",)))
    assert told.valued.now[-2] == pytest.approx(told.belief.several, abs=1e-9)
