"""Guided cards: every step says what, why and how it is seen; their cares come before them."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from diagnose.book.guided import GuidedCard
from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from tests.small import change, copy_small, faults

CARD = """\
id: press-the-cheese
name: Press the cheese
use_when: [there is cheese]
not_when: [the dog is near]
minutes: {first_time: 10, practised: 5}
needs: [wheel-turning]
steps:
  - {do: lock the power out, why: hands go near, check_by: the lock is on, cautions: [lock-out-first], source: common-practice}
  - {do: press, why: it is the job, check_by: it is flat, source: common-practice}
proof: It is flat.
sources: [common-practice]
"""  # noqa: E501 - a file as people write it

WANTED = {
    "mount-a-wheel",
    "balance-a-wheel",
    "dress-by-hand",
    "grind-the-chuck-in",
    "square-a-block",
    "grind-thin-work",
    "hold-without-a-magnet",
    "keep-a-healthy-record",
    "read-the-wear",
}


@cache
def shipped() -> Book:
    return load_book(knowledge_folder())


def with_card(tmp_path: Path, text: str = CARD) -> Path:
    folder = copy_small(tmp_path)
    (folder / "cards").mkdir()
    (folder / "cards/press-the-cheese.yaml").write_text(text, encoding="utf-8")
    return folder


def test_a_card_is_read_whole(tmp_path: Path) -> None:
    card = load_book(with_card(tmp_path)).cards["press-the-cheese"]

    assert (card.minutes_first_time, card.minutes_practised) == (10.0, 5.0)
    assert [s.do for s in card.steps] == ["lock the power out", "press"]
    assert card.cautions == ("lock-out-first",)
    assert card.where is not None
    assert card.where.line == 1


@pytest.mark.parametrize(
    ("old", "new", "what"),
    [
        ("why: hands go near, ", "", "has no 'why:'"),
        ("check_by: it is flat, ", "", "has no 'check_by:'"),
        ("[lock-out-first]", "[lock-out-frist]", "there is no caution 'lock-out-frist'"),
        ("not_when: [the dog is near]\n", "", "has no 'not_when:'"),
        ("cautions: [lock-out-first], ", "", "turns the wheel and no step has a caution"),
        ("id: press-the-cheese", "id: press-the-chese", "the file is called press-the-cheese"),
        (CARD[CARD.index("  - {do: press") : CARD.index("proof")], "", "two steps at least"),
    ],
)
def test_a_faulty_card_is_refused_in_plain_words(
    tmp_path: Path, old: str, new: str, what: str
) -> None:
    assert old in CARD

    found = faults(with_card(tmp_path, CARD.replace(old, new, 1)))

    assert any(what in problem.what for problem in found), found


def test_a_fix_a_complaint_and_a_stop_may_name_a_card_and_no_other(tmp_path: Path) -> None:
    folder = with_card(tmp_path)
    cause, stop = "causes/wheel/unbalanced-wheel.yaml", "stops/cracked-wheel.yaml"
    change(folder, cause, "\nfix:\n", "\nfix:\n  cards: [press-the-cheese]\n")
    change(folder, stop, "\nasked_by:", "\ncards: [press-the-cheese]\nasked_by:")
    change(
        folder, "symptoms/burnt-patches.yaml", "\nfamily:", "\ncards: [press-the-cheese]\nfamily:"
    )

    book = load_book(folder)
    assert book.causes["unbalanced-wheel"].fix.cards == ("press-the-cheese",)
    assert book.stops["cracked-wheel"].cards == ("press-the-cheese",)
    assert book.symptoms["burnt-patches"].cards == ("press-the-cheese",)

    change(folder, cause, "cards: [press-the-cheese]", "cards: [press-the-chese]")
    assert any("there is no card 'press-the-chese'" in p.what for p in faults(folder))


def test_the_jobs_that_faults_come_from_have_their_cards() -> None:
    assert set(shipped().cards) >= WANTED


@pytest.mark.parametrize("name", sorted(WANTED))
def test_a_shipped_card_is_named_by_a_fix_or_a_complaint(name: str) -> None:
    book = shipped()
    named = {c for cause in book.causes.values() for c in cause.fix.cards}
    named |= {c for symptom in book.symptoms.values() for c in symptom.cards}
    assert name in named


def turning(card: GuidedCard) -> list[str]:
    """Steps that start or turn the wheel by their own words."""
    words = ("stand aside", "run it", "run and read", "touch", "pass", "start")
    return [s.do for s in card.steps if any(w in s.do.lower() for w in words)]


@pytest.mark.parametrize("card", sorted(shipped().cards))
def test_nobody_starts_a_wheel_on_a_card_without_standing_aside(card: str) -> None:
    told = shipped().cards[card]
    if "wheel-turning" in told.needs:
        first = next(n for n, s in enumerate(told.steps) if "stand-aside-at-start" in s.cautions)
        before = [s.do for s in told.steps[:first]]
        assert not set(before) & set(turning(told)), before


@pytest.mark.parametrize("card", sorted(shipped().cards))
def test_hands_go_to_the_wheel_on_a_card_only_after_the_power_is_locked_out(card: str) -> None:
    steps = shipped().cards[card].steps
    words = ("take the wheel off", "by hand past", "lock out", "locked out", "take the old wheel")
    for step in steps:
        if any(w in step.do.lower() for w in words):
            assert "lock-out-first" in step.cautions, step.do
