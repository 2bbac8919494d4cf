"""What people say finds its complaint, or is among the first few offered."""

from __future__ import annotations

import pytest

from diagnose.book.complaints import likeliest, symptoms_said
from diagnose.book.kept import load_kept
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book

# Made for this test; what a person might say of each.
SAID = {
    "it has a washboard on it, right across": "even-bars-across-travel",
    "brown stripes after six passes": "burnt-patches",
    "the thin plate curls up like a saucer when I let it go": "thin-plate-dished",
    "one end of the block is thicker than the other": "part-tapered",
    "little comma scratches everywhere": "comma-marks",
    "the wheel is full of aluminium after one part": "wheel-loads-up",
    "a line at each step of the crossfeed": "steps-at-each-crossfeed",
    "the ends come out low": "ends-low",
    "it screams in the cut": "wheel-squeals",
    "sides not square to each other": "out-of-square",
    "rust next morning": "rust-after-grinding",
    "motor slows down in the cut": "motor-labours",
}


@pytest.fixture(scope="module")
def book() -> Book:
    return load_kept(knowledge_folder())


@pytest.mark.parametrize(("words", "symptom"), SAID.items())
def test_what_a_person_says_is_among_the_first_three(book: Book, words: str, symptom: str) -> None:
    assert symptom in likeliest(words, book)[:3]


def test_every_name_and_every_word_of_the_shop_finds_its_own_complaint(book: Book) -> None:
    for symptom in book.symptoms.values():
        assert symptoms_said(symptom.id, book) == (symptom.id,)
        for words in (symptom.name, *symptom.in_words):
            assert symptom.id in (symptoms_said(words, book) or likeliest(words, book)), words


def test_words_that_say_nothing_of_the_trade_offer_nothing(book: Book) -> None:
    assert likeliest("zzz qqq", book) == ()
    assert symptoms_said("zzz qqq", book) == ()
