"""What a question is worth: two complaints, circumstances, and what nobody could answer."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from diagnose.book.locate import shared_folder
from diagnose.case.entries import UNKNOWN, Case, Entry
from diagnose.case.files import load_case
from diagnose.reasoning.ahead import ATTENTION
from diagnose.reasoning.next_check import Candidate, Valued, value_all
from diagnose.reasoning.policy import ENOUGH, Step, _firmer
from diagnose.reasoning.reason import looks_made, reason
from diagnose.shop.cards import load_shop
from tests.bench.world import sign_of
from tests.reasoning.test_shipped import BOOK, case


def mixed(candidate: Candidate) -> np.ndarray:
    """What is believed over all answers, each with its chance."""
    chances = np.array([o.chance for o in candidate.outcomes])
    return chances @ np.stack([o.shares for o in candidate.outcomes])


def valued(*complaint: str) -> Valued:
    return reason(BOOK, Case("a case", complaint)).valued


def test_two_complaints_leave_as_many_questions_worth_asking_as_one() -> None:
    one, two = valued("rails-along-travel"), valued("rails-along-travel", "slanted-lines")
    assert len(two.candidates) >= 0.8 * len(one.candidates) > 10


@pytest.mark.parametrize("complaint", ["thin-plate-dished", "even-bars-across-travel"])
def test_the_answers_on_a_sign_mix_to_what_is_believed_now(complaint: str) -> None:
    known = valued(complaint)
    signs = [c for c in known.candidates if sign_of(BOOK, BOOK.checks[c.check])]
    assert len(signs) >= 5
    for candidate in signs:
        assert mixed(candidate) == pytest.approx(known.now, abs=1e-9)


def test_how_a_bowed_plate_was_held_is_worth_asking() -> None:
    """In a vice, on the magnet, taped: each has causes of its own."""
    told = reason(BOOK, Case("a case", ("thin-plate-dished",)))
    asked = [BOOK.checks["how-held"]]
    (found,) = value_all(BOOK, told.network, asked, told.read.facts, told.fixes).candidates
    assert found.gain > 0.03


def test_dont_know_is_a_question_asked_and_none_answered() -> None:
    told = case("thin-plate-dished", sides_ground="one-side-only")
    unsure = told.with_entry(Entry("answer", "stock-state", UNKNOWN))
    assert (looks_made(BOOK, unsure), looks_made(BOOK, unsure, known=True)) == (2, 1)


def test_a_faint_fix_of_minutes_waits_only_for_a_look_of_half_its_minutes() -> None:
    """Wiping and setting the part down again takes six minutes; the attention is one of three."""
    answers = {"wiped_and_stoned": "neither", "what_changed": "nothing", "measured_when": "cold"}
    told = reason(BOOK, case("part-tapered", **answers))
    fix = Step("fix", "debris-under-part", "")
    minutes = told.fixes.minutes[told.fixes.ids.index(fix.name)]
    faint = replace(told.valued, now=0.3 * told.valued.now)
    looks = [replace(c, gain=0.6) for c in told.valued.candidates]
    long = [c for c in looks if c.minutes + ATTENTION > minutes / 2]
    assert 0 < len(long) < len(looks)
    assert _firmer(fix, faint, told.fixes, long, ENOUGH, tried=False) is None
    chosen = _firmer(fix, faint, told.fixes, looks, ENOUGH, tried=False)
    assert chosen is not None
    assert chosen.minutes + ATTENTION <= minutes / 2
    assert _firmer(fix, faint, told.fixes, looks, ENOUGH, tried=True) is None


@pytest.mark.parametrize("complaint", sorted(BOOK.symptoms))
def test_every_complaint_is_first_asked_what_changed_and_what_was_tried(complaint: str) -> None:
    asked = Case("a case", (complaint,))
    first = reason(BOOK, asked).step
    second = reason(BOOK, asked.with_entry(Entry("answer", first.name, "nothing"))).step
    assert (first.name, second.name) == ("what-changed", "what-you-tried")


def test_a_wheel_that_was_tried_is_not_tried_again() -> None:
    """The trial is among what is worth asking until the list says what came of it."""
    told = reason(BOOK, case("even-bars-across-travel", what_changed="nothing"))
    trial = [BOOK.checks["other-wheel"]]
    assert value_all(BOOK, told.network, trial, told.read.facts, told.fixes).candidates
    tried = case("even-bars-across-travel", what_changed="nothing", what_you_tried="wheel-same")
    known = reason(BOOK, tried)
    assert not value_all(BOOK, known.network, trial, known.read.facts, known.fixes).candidates


def test_a_case_that_is_told_already_gets_its_fix_and_no_opening_question() -> None:
    """Ten answers name the wheel; nobody said what was tried."""
    told = load_case(shared_folder() / "cases" / "spacer-plate-ripples.yaml", BOOK)
    assert "what-you-tried" not in {e.name for e in told.entries}
    shop = load_shop(shared_folder(), BOOK)
    step = reason(BOOK, told, shop.facts_for(told)).step
    assert (step.kind, step.name) == ("fix", "unbalanced-wheel")
