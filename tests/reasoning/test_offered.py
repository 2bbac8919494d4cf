"""What is offered: no dressing trial on a diamond wheel, a way round a tool that is missing."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.book.loader import load_book
from diagnose.book.model import Book
from diagnose.case.entries import UNKNOWN, Case, Entry
from diagnose.reasoning.gates import askable
from diagnose.reasoning.reason import Reasoned, reason
from diagnose.view.question import question_text

KNOWLEDGE = Path(__file__).parents[2] / "knowledge"
COMPLAINTS = ("rough-without-pattern", "even-bars-across-travel", "burnt-patches")
NOT_FOR_DIAMOND = "no-diamond-on-a-diamond-wheel"


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book(KNOWLEDGE)


def offered(book: Book, complaint: str, tools: tuple[str, ...] | None = None,
            **answers: str) -> tuple[Reasoned, set[str]]:  # fmt: skip
    entries = tuple(Entry("answer", n.replace("_", "-"), v) for n, v in answers.items())
    made = reason(book, Case("offered", (complaint,), entries, tools=tools))
    read = made.read
    return made, {c.id for c in askable(book, read.gathered, read.facts, tools)}


def dressing_trials(book: Book) -> set[str]:
    """Trials that leave the wheel dressed by the wheel's own diamond."""
    found = {c.id for c in book.checks.values() if "wheel-dressed" in c.changes}
    return found - {"other-wheel"}  # another wheel, with what its own dress asks for


def test_every_dressing_trial_warns_and_hangs_on_the_grain_of_the_wheel(book: Book) -> None:
    trials = dressing_trials(book)
    assert {"rough-re-dress", "slow-re-dress", "first-dress-touch"} <= trials
    for name in trials:
        check = book.checks[name]
        assert check.cautions[0] == NOT_FOR_DIAMOND, name
        assert "wheel-abrasive" in check.asked_when.facts, name


@pytest.mark.parametrize("complaint", COMPLAINTS)
@pytest.mark.parametrize("grain", ["boron-nitride-or-diamond", UNKNOWN])
def test_no_dressing_trial_on_a_diamond_wheel_nor_on_one_that_nobody_knows(
    book: Book, complaint: str, grain: str
) -> None:
    made, names = offered(book, complaint, wheel_abrasive=grain)
    assert not names & dressing_trials(book)
    assert not set(made.walk) & dressing_trials(book)


def test_on_an_alumina_wheel_the_re_dress_is_offered(book: Book) -> None:
    _, names = offered(book, "rough-without-pattern", wheel_abrasive="alumina")
    assert {"rough-re-dress", "slow-re-dress", "first-dress-touch"} <= names


@pytest.mark.parametrize("complaint", COMPLAINTS)
def test_the_grain_is_asked_before_a_dressing_trial(book: Book, complaint: str) -> None:
    made, _ = offered(book, complaint)
    for candidate in made.valued.candidates:
        if candidate.check in dressing_trials(book):
            assert "wheel-abrasive" in candidate.first_ask


def test_a_question_that_hangs_on_what_nobody_knows_is_not_asked_for_ever(book: Book) -> None:
    _, names = offered(book, "even-bars-across-travel", drive=UNKNOWN)
    assert "slower-wheel-speed" not in names
    _, names = offered(book, "even-bars-across-travel", drive="inverter-direct")
    assert "slower-wheel-speed" in names


def test_a_missing_tool_drops_a_check_only_where_nothing_else_will_do(book: Book) -> None:
    _, names = offered(book, "thin-plate-dished", tools=())
    bare = {n for n in names if book.checks[n].tools}
    assert "shape-off-the-magnet" in bare
    assert all(book.checks[n].no_instrument for n in bare)
    assert "flat-block-sweep" not in names
    _, with_it = offered(book, "thin-plate-dished", tools=("indicator", "known-flat-block"))
    assert "flat-block-sweep" in with_it


def test_the_question_says_which_tool_is_missing_and_what_to_do_instead(book: Book) -> None:
    made, _ = offered(book, "thin-plate-dished", tools=("rule",))
    check = book.checks["shape-off-the-magnet"]
    said = " ".join(question_text(made, check, {}).split())
    assert f"No straightedge here, so do this: {check.no_instrument}" in said
    made, _ = offered(book, "thin-plate-dished")
    said = " ".join(question_text(made, check, {}).split())
    assert f"Without the tool: {check.no_instrument}" in said


def test_every_number_can_be_had_without_an_instrument(book: Book) -> None:
    assert not [c.id for c in book.checks.values() if c.kind == "number" and not c.no_instrument]
