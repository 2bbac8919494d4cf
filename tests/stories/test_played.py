"""The stories played with the players' answers: the sheets fit the book, every hazard stops."""

from pathlib import Path

import pytest

from diagnose.book.complaints import likeliest
from diagnose.book.kept import load_kept
from diagnose.book.locate import knowledge_folder
from tests.stories.replaying import ANSWERS, judged, play, sheet

BOOK = load_kept(knowledge_folder())
NUMBERS = sorted(path.stem for path in ANSWERS.glob("*.yaml"))
DANGERS = [number for number in NUMBERS if judged()[number].get("stops")]


def test_every_story_has_its_sheet_of_answers_and_its_verdict() -> None:
    stories = sorted(path.name.split("-")[0] for path in Path(__file__).parent.glob("[0-9]*.yaml"))
    assert stories == NUMBERS == sorted(judged())


@pytest.mark.parametrize("number", NUMBERS)
def test_a_sheet_answers_questions_of_the_book_with_its_options(number: str) -> None:
    written = sheet(number)
    assert set(written["complaints"]) <= set(BOOK.symptoms)
    for name, value in written["answers"].items():
        check = BOOK.checks[name]
        if check.options:
            said = value if isinstance(value, list) else [value]
            assert {str(one).rstrip("? ") for one in said} <= set(check.by_option), name


@pytest.mark.parametrize("number", sorted(judged()))
def test_a_verdict_names_causes_and_stops_of_the_book(number: str) -> None:
    right = judged()[number]
    assert {c for names in right.get("causes", ()) for c in names} <= set(BOOK.causes)
    assert set(right.get("stops", ())) <= set(BOOK.stops)
    assert right.get("causes") or right["kind"] in ("hazard", "in no book")


@pytest.mark.parametrize("number", DANGERS)
def test_a_story_with_a_hazard_is_stopped(number: str) -> None:
    assert set(play(BOOK, number).stops) & set(judged()[number]["stops"])


def test_a_story_that_cannot_be_answered_ends_without_a_stop_or_a_likely_cause() -> None:
    """What the plays measure is the answers: with none of them nothing is found."""
    sheets = {n: sheet(n) for n in ("13", "38")}
    for number in sheets:
        told = play(BOOK, number, {"complaints": sheets[number]["complaints"], "answers": {}})
        assert told.told == 0
        assert told.unknown == told.questions - 1, "one list was shown, and left empty"
        assert max(p.share for p in told.places) < 0.5


def test_what_players_typed_offers_their_complaint_among_the_five_nearest() -> None:
    typed = {n: sheet(n) for n in NUMBERS if sheet(n).get("typed")}
    offered = {n: likeliest(w["typed"], BOOK) for n, w in typed.items()}
    found = [n for n, w in typed.items() if set(w["complaints"]) & set(offered[n])]
    first = [n for n, w in typed.items() if offered[n] and offered[n][0] in w["complaints"]]
    assert len(typed) > 100
    assert len(found) >= 0.85 * len(typed)
    assert len(first) >= 0.55 * len(typed)
