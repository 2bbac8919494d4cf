"""The first question: words first; a long list of complaints only for the asking."""

from __future__ import annotations

import pytest

from diagnose.book.kept import load_kept
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from diagnose.cli.complaint import choose_complaint, in_families
from diagnose.view.complaints import list_text
from tests.small import small_book


@pytest.fixture(scope="module")
def book() -> Book:
    return load_kept(knowledge_folder(), (), ())


def asked(book: Book, *typed: str) -> tuple[tuple[str, ...], list[str]]:
    """What was chosen, and everything that was said."""
    lines, said = iter(typed), []
    return choose_complaint(book, lambda: next(lines), said.append), said


def test_a_long_list_is_shown_only_when_it_is_asked_for(book: Book) -> None:
    _, said = asked(book, "q")
    assert sum(len(text.splitlines()) for text in said) < 6
    assert "l shows the list" in " ".join(" ".join(said).split())
    found, said = asked(book, "l", "3")
    assert found == (in_families(book)[2].id,)
    screen = "\n".join(said)
    assert all(s.looks_like.split()[0] in screen for s in book.symptoms.values())
    assert screen.count(list_text(in_families(book))) == 1


def test_a_number_of_the_whole_list_holds_after_a_shorter_one(book: Book) -> None:
    found, _ = asked(book, "ladder rungs and burn", "l", "1")
    assert found == (in_families(book)[0].id,)


def test_a_short_list_is_shown_at_once() -> None:
    _, said = asked(small_book(), "q")
    assert list_text(in_families(small_book())) in "\n".join(said)
    assert "l shows the list" not in " ".join(said)


def test_a_heading_is_not_said_again_by_the_names_under_it(book: Book) -> None:
    lines = list_text(in_families(book)).splitlines()
    headings = [line.strip() for line in lines if line[1] != " "]
    assert len(headings) == len(set(headings)) == len({s.family for s in book.symptoms.values()})
    for line in lines:
        assert not any(line[4:].strip().startswith(f"{h} - ") for h in headings), line
