"""An answer is taken as it is meant, or explained; it is never guessed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.book.answers import UNKNOWN, AnswerError, read_answer
from diagnose.book.model import Check, Option
from tests.small import small_book

OPTIONS = (
    Option("none", "none of these"),
    Option("shiny", "shiny flats on the grains"),
    Option("shallow", "shallow scratches"),
    Option("loaded", "bright metal specks"),
)
ONE = Check("face", "face", "one", "How does it look?", "Look.", 1, OPTIONS)
ANY = Check("faces", "faces", "any", "What do you see?", "Look.", 1, OPTIONS)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("shiny", "shiny"),
        ("2", "shiny"),
        ("4", "loaded"),
        ("Shiny flats on the grains", "shiny"),
        ("shi", "shiny"),
        ("bright", "loaded"),
        ("  loaded ", "loaded"),
        ("don't know", UNKNOWN),
        ("dont know", UNKNOWN),
        ("?", UNKNOWN),
    ],
)
def test_an_option_by_number_id_words_or_start(typed: str, meant: str) -> None:
    assert read_answer(ONE, typed) == meant


@pytest.mark.parametrize(
    ("typed", "says", "near"),
    [
        ("sh", "could be shiny or shallow", ""),
        ("shinny", "is no answer to face", "shiny"),
        ("5", "there is no answer 5", ""),
        ("0", "there is no answer 0", ""),
        ("   ", "nothing was answered", ""),
        ("shiny, loaded", "is no answer to face", "loaded"),
    ],
)
def test_a_mistyped_option_is_explained(typed: str, says: str, near: str) -> None:
    with pytest.raises(AnswerError) as error:
        read_answer(ONE, typed)
    assert says in error.value.what
    assert error.value.near == near


def test_the_possible_answers_are_listed() -> None:
    with pytest.raises(AnswerError, match="none, shiny, shallow, loaded"):
        read_answer(ONE, "rough")


def test_a_number_is_no_option_in_a_file() -> None:
    with pytest.raises(AnswerError):
        read_answer(ONE, "2", numbered=False)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("loaded, shiny", "shiny, loaded"),
        ("2 4", "shiny, loaded"),
        ("2,4", "shiny, loaded"),
        ("shiny; shiny", "shiny"),
        ("none", "none"),
    ],
)
def test_several_options_come_in_the_order_of_the_list(typed: str, meant: str) -> None:
    assert read_answer(ANY, typed) == meant


def test_none_excludes_the_others() -> None:
    with pytest.raises(AnswerError, match="'none' cannot stand beside"):
        read_answer(ANY, "none, shiny")


@pytest.mark.parametrize("typed", ["6 mm", "0.25 in", "250 thou", "6 mm +- 0.5 mm", "5..7 mm"])
def test_a_number_is_kept_as_written(typed: str) -> None:
    assert read_answer(small_book().checks["bar-spacing"], typed) == typed


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("8", "has no unit: write the unit, for example 6 mm"),
        ("8 rpm", "rpm is a turning speed. Write it like 6 mm"),
        ("3 m", "too much to be possible"),
        ("1 µm", "too little to be possible"),
        ("about a thumb", "6 mm"),
    ],
)
def test_a_number_that_cannot_be_is_explained(typed: str, says: str) -> None:
    with pytest.raises(AnswerError) as error:
        read_answer(small_book().checks["bar-spacing"], typed)
    assert says in str(error.value)


@given(st.sampled_from([ONE, ANY, *small_book().checks.values()]), st.text(max_size=20))
def test_what_is_taken_once_is_taken_again_unchanged(check: Check, typed: str) -> None:
    try:
        taken = read_answer(check, typed)
    except AnswerError:
        return
    assert read_answer(check, taken, numbered=False) == taken
