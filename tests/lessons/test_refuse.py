"""A change that would rank earlier closed cases worse is refused and said."""

from __future__ import annotations

from dataclasses import replace

from diagnose.lessons.apply import with_lessons
from diagnose.lessons.learn import learn
from diagnose.lessons.model import Lessons, Share, Strength
from diagnose.lessons.refuse import judged, losses
from diagnose.lessons.showing import lessons_text, view_of
from tests.lessons.drawn import BARS, BELT, BURN, COOLANT, UNDRESSED, WHEEL, many
from tests.small import small_book


def test_what_the_cases_say_is_kept() -> None:
    cases = many(8, BELT) + many(2, WHEEL)
    lessons = judged(small_book(), learn(small_book(), cases), cases)

    assert lessons.refused == ()
    assert lessons.typical_after > lessons.typical_before > 0.0


def test_shares_against_the_cases_are_refused_and_the_rest_is_kept() -> None:
    cases = many(8, BELT) + many(3, COOLANT, complaint=(BURN,))
    right = learn(small_book(), cases)
    wrong = [replace(s, odds=0.01) if s.cause == BELT and s.complaint else s for s in right.shares]

    lessons = judged(small_book(), replace(right, shares=tuple(wrong)), cases)

    (told,) = lessons.refused
    assert (told.kind, told.what, told.cases) == ("complaint", (BARS,), 8)
    assert told.after < told.before
    assert {s.complaint for s in lessons.shares} == {(BURN,), ()}
    text = lessons_text(view_of(lessons, small_book(), 11))
    assert "Refused, because earlier cases would be ranked worse" in text
    assert "new shares for Even bars across the travel" in text


def test_a_complaint_that_was_refused_stays_as_the_book_has_it() -> None:
    cases = many(8, BELT) + many(3, COOLANT, complaint=(BURN,))
    right = learn(small_book(), cases)
    wrong = [replace(s, odds=0.01) if s.cause == BELT else s for s in right.shares]

    lessons = judged(small_book(), replace(right, shares=tuple(wrong), strengths=()), cases)

    assert with_lessons(small_book(), lessons, (BARS,)) is small_book()


def test_a_machine_of_its_own_is_refused_and_the_shop_stays() -> None:
    cases = many(6, BELT, machine="north") + many(6, BELT, machine="south")
    right = learn(small_book(), cases)
    wrong = [replace(s, odds=0.01) if (s.cause, s.machine) == (BELT, "north") else s
             for s in right.shares]  # fmt: skip

    lessons = judged(small_book(), replace(right, shares=tuple(wrong)), cases)

    assert [(r.what, r.machine, r.cases) for r in lessons.refused] == [((BARS,), "north", 6)]
    assert {s.machine for s in lessons.shares if s.complaint} == {"", "south"}


def test_strengths_that_rank_cases_worse_are_refused_for_their_cause_alone() -> None:
    cases = many(6, COOLANT, complaint=(BURN,), answers={"coolant-stream": "thin"})
    cases += many(6, UNDRESSED, complaint=(BURN,), answers={"wheel-look": "shiny"})
    right = learn(small_book(), cases)
    wrong = [replace(s, after=0.25) if s.cause == COOLANT else s for s in right.strengths]

    lessons = judged(small_book(), replace(right, strengths=tuple(wrong)), cases)

    assert [(r.kind, r.what) for r in lessons.refused] == [("signs", (COOLANT,))]
    assert {s.cause for s in lessons.strengths} == {UNDRESSED}


def test_what_is_kept_never_ranks_the_earlier_cases_worse() -> None:
    cases = many(5, WHEEL, answers={"bars-even": "no"}) + many(4, COOLANT, complaint=(BURN,))
    odd = Lessons(
        "2026-03-14", 9,
        (Share((BARS,), WHEEL, 5, 5, 0.4, 0.2, 0.5), Share((BURN,), COOLANT, 4, 4, 0.3, 0.9, 9.0)),
        (Strength(COOLANT, "thin-stream", "yes", 0, 4, 0.91, 0.91, 0.3),),
    )  # fmt: skip
    lessons = judged(small_book(), odd, cases)

    for group in (cases[:5], cases[5:]):
        assert (
            sum(losses(small_book(), lessons, group))
            <= sum(losses(small_book(), Lessons(), group)) + 1e-9
        )


def test_nothing_to_judge_by_changes_nothing() -> None:
    assert judged(small_book(), Lessons(), []) == Lessons()
