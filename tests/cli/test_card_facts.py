"""What the words of a card say already is not asked again."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.book.kept import load_kept
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from diagnose.case.entries import Case
from diagnose.cli.asking import Asker
from diagnose.cli.card_facts import facts_in_words, told_already
from diagnose.cli.cards import _asked
from diagnose.cli.room import open_room
from diagnose.cli.settings import Settings
from diagnose.reasoning.reason import reason

MARKED = {
    "wheel-abrasive": "alumina",
    "wheel-grit": "middle-46-to-60",
    "wheel-grade": "h-to-j",
    "wheel-structure": "six-to-eight",
}


@pytest.fixture(scope="module")
def book() -> Book:
    return load_kept(knowledge_folder(), (), ())


@pytest.mark.parametrize(
    ("words", "more"),
    [
        ({"marking": "38A46-H8VBE 7 x 1/2"},
         {"wheel-diameter": "7 in", "wheel-width": "1/2 in"}),
        ({"marking": "38A46-H8VBE 7 x 1/2 x 1 1/4", "limit": "3,600 rpm"},
         {"wheel-diameter": "7 in", "wheel-width": "1/2 in",
          "marked-turning-speed": "3600 rpm", "wheel-mark": "can-be-read"}),
        ({"marking": "A 46 H 8 V, 178 x 13 x 31.75, 35 m/s"},
         {"wheel-diameter": "178 mm", "wheel-width": "13 mm",
          "marked-rim-speed": "35 m/s", "wheel-mark": "can-be-read"}),
        ({"marking": "A 46 H 8 V", "size": '8" x 3/4" x 1-1/4"', "limit": "6500 sfpm"},
         {"wheel-diameter": "8 in", "wheel-width": "3/4 in",
          "marked-rim-speed": "6500 ft/min", "wheel-mark": "can-be-read"}),
        ({"marking": "A 46 H 8 V", "size": "200 x 20 mm", "limit": "3600"},
         {"wheel-diameter": "200 mm", "wheel-width": "20 mm"}),
    ],
)  # fmt: skip
def test_a_marking_a_size_and_a_limit_answer_what_they_say(
    book: Book, words: dict[str, str], more: dict[str, str]
) -> None:
    assert facts_in_words("wheel", words, book) == MARKED | more


@pytest.mark.parametrize("marking", ["white one", "46 H", "D 126 C 75", "blue, from the drawer"])
def test_what_cannot_be_read_says_nothing(book: Book, marking: str) -> None:
    assert facts_in_words("wheel", {"marking": marking}, book) == {}


def test_one_limit_is_enough() -> None:
    assert {"marked-rim-speed", "marked-turning-speed"} <= told_already(
        {"marked-turning-speed": "3600 rpm"}
    )
    assert told_already({"wheel-grit": "x"}) == {"wheel-grit"}


@pytest.mark.parametrize("said", ["dry", "Dry.", "none", "always dry", "no coolant"])
def test_a_machine_without_coolant_is_dry(book: Book, said: str) -> None:
    assert facts_in_words("machine", {"coolant": said}, book) == {"wet-or-dry": "dry"}


@pytest.mark.parametrize("said", ["", "emulsion 5 %, or dry", "dry film", "not dry", "no idea"])
def test_a_machine_that_may_have_coolant_is_not_taken_for_dry(book: Book, said: str) -> None:
    assert facts_in_words("machine", {"coolant": said}, book) == {}


def test_on_a_dry_machine_the_causes_that_need_coolant_are_out(book: Book) -> None:
    facts = facts_in_words("machine", {"coolant": "dry"}, book)
    shown = {link.finding for link in book.causes["coolant-old-or-sour"].shows}
    case = Case("x", (next(s for s in book.symptoms if s in shown),))
    wet = {r.cause for r in reason(book, case).belief.ranked}
    dry = {r.cause for r in reason(book, case, facts).belief.ranked}
    needs_coolant = {"coolant-old-or-sour", "coolant-mix-wrong", "oil-or-dirt-in-the-coolant"}
    assert needs_coolant & wet
    assert not needs_coolant & dry


def test_the_questions_of_a_wheel_card_leave_out_what_was_written(tmp_path: Path) -> None:
    room = open_room(Settings(tmp_path / "shop", "mm"))
    typed = iter(["white one", "38A46-H8VBE 7 x 1/2", "3600 rpm", *[""] * 30])
    said: list[str] = []
    _asked(Asker(lambda: next(typed), said.append), room, "wheel", "white", None)
    asked = "\n".join(said)
    for check in (*MARKED, "wheel-diameter", "wheel-width", "marked-turning-speed", "wheel-mark"):
        assert room.book.checks[check].ask not in asked, check
    assert room.book.checks["speed-against-mark"].ask[:40] in " ".join(asked.split())
    assert "Size: diameter x width" not in asked
    assert "Speed limit as marked" in asked
    text = (tmp_path / "shop/wheels/white.yaml").read_text(encoding="utf-8")
    assert "marked-turning-speed: 3600 rpm" in text
    assert "wheel-grade: h-to-j" in text
