"""The closed cases of a shop, read for what they teach."""

from __future__ import annotations

from pathlib import Path

from diagnose.book.model import Book
from diagnose.book.problems import BookError, Problem
from diagnose.lessons.learn import learn
from diagnose.lessons.model import Lessons
from diagnose.lessons.refuse import judged
from diagnose.lessons.taught import Taught, taught_by
from diagnose.shop.cards import Shop
from diagnose.shop.closed import closed_cases


def taught_in(
    folder: Path, shop: Shop, book: Book
) -> tuple[tuple[Taught, ...], tuple[Problem, ...]]:
    """What the shop's own closed cases teach, and the faults of files left out.

    A machine or wheel whose card is gone is taken as not known.
    """
    closed, problems = closed_cases(folder, book)
    found: list[Taught] = []
    for kept in closed:
        try:
            cards = shop.facts_for(kept.case)
        except BookError:
            cards = {}
        taught = taught_by(book, kept.case, cards)
        if taught is not None:
            found.append(taught)
    return tuple(found), problems


def learn_from(book: Book, cases: tuple[Taught, ...], date: str) -> Lessons:
    """Learn from the cases, and leave out what would rank them worse."""
    return judged(book, learn(book, cases, date), cases)
