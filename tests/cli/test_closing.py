"""A cause said in one's own words is looked for in the book before it counts as new."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.book.causes_said import cause_named, causes_meant
from diagnose.book.kept import load_kept
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from tests.cli.terminal import Terminal
from tests.cli.test_shop import BARS


@pytest.fixture(scope="module")
def book() -> Book:
    return load_kept(knowledge_folder(), (), ())


@pytest.mark.parametrize(
    ("words", "cause"),
    [
        ("motor base loose", "motor-mount-hard-or-loose"),
        ("the belt had a lump", "belt-worn-or-set"),
        ("diamond was worn out", "diamond-blunt"),
        ("spindle bearing gone", "worn-spindle-bearings"),
        ("burrs stood on the part when I measured", "measured-warm-or-burred"),
    ],
)
def test_the_nearest_causes_hold_the_one_meant(book: Book, words: str, cause: str) -> None:
    assert cause in causes_meant(words, book)


def test_those_of_the_case_stand_first(book: Book) -> None:
    alone = causes_meant("motor base loose", book)
    moved = causes_meant("motor base loose", book, (alone[2],))
    assert moved[0] == alone[2]
    assert set(moved) == set(alone)


def test_words_that_no_cause_uses_mean_none(book: Book) -> None:
    assert causes_meant("qqqqq zzzz", book) == ()
    assert causes_meant("", book) == ()


def test_a_name_or_an_id_is_taken_at_once(book: Book) -> None:
    cause = next(iter(book.causes.values()))
    assert cause_named(cause.name.upper(), book) == cause.id
    assert cause_named(cause.id, book) == cause.id
    assert cause_named("no such thing", book) == ""


def _close(tmp_path: Path, *lines: str) -> str:
    path = tmp_path / "shop/cases/a.yaml"
    path.parent.mkdir(parents=True)
    path.write_text(BARS.replace("machine: north\nwheel: white\n", ""))
    terminal = Terminal(tmp_path, "close", "a")
    for line in ("something-new", *lines, "new one", "20", "clean", "", ""):
        terminal.type(line)
    code, screen = terminal.leave()
    assert code == 0, screen
    return (tmp_path / "shop/cases/closed/a.yaml").read_text()


def test_own_words_offer_the_nearest_and_a_number_takes_it(tmp_path: Path) -> None:
    assert "cured_by: [lumpy-belt]" in _close(tmp_path, "a set in the old belt", "1")


def test_enter_keeps_what_is_really_new(tmp_path: Path) -> None:
    text = _close(tmp_path, "a set in the old belt", "")
    assert "something_new: a set in the old belt" in text
    assert "cured_by" not in text
