"""What closed cases teach, and what they must not."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.case.entries import Closed, Entry
from diagnose.lessons.apply import with_lessons
from diagnose.lessons.fit import Acts, Setting, fit
from diagnose.lessons.learn import learn
from diagnose.lessons.model import Lessons
from diagnose.lessons.rates import learned
from diagnose.lessons.taught import Taught, taught_by
from diagnose.reasoning.belief import Belief, believe
from tests.bench.world import plain_network
from tests.lessons.drawn import (
    BARS,
    BELT,
    BURN,
    COOLANT,
    FLOOR,
    UNDRESSED,
    WHEEL,
    closed_case,
    many,
    teaches,
)  # fmt: skip
from tests.small import small_book

KNOWN = (WHEEL, BELT, FLOOR)


def belief(lessons: Lessons, complaint: str = BARS, machine: str = "") -> Belief:
    return believe(plain_network(with_lessons(small_book(), lessons, (complaint,), machine),
                                 complaint))  # fmt: skip


def acts(lessons: Lessons, complaint: str = BARS, machine: str = "") -> dict[str, float]:
    return {r.cause: r.acts for r in belief(lessons, complaint, machine).ranked if r.acts > 1e-9}


@settings(max_examples=60, deadline=None)
@given(st.tuples(*[st.integers(0, 60)] * 4))
def test_complaint_alone_comes_out_at_the_learned_shares(counts: tuple[int, int, int, int]) -> None:
    *named, new = counts
    cases = [t for c, n in zip(KNOWN, named, strict=True) for t in many(n, c)]
    cases += many(new, new="the new felt gave way")
    before = acts(Lessons())

    after = acts(learn(small_book(), cases))

    for cause, number in zip(KNOWN, named, strict=True):
        assert after[cause] == pytest.approx(learned(before[cause], number, len(cases)), abs=1e-6)


def test_a_complaint_of_two_symptoms_comes_out_at_its_shares_too() -> None:
    both = (BARS, BURN)
    cases = many(6, COOLANT, BELT, complaint=both) + many(3, UNDRESSED, complaint=both)

    lessons = learn(small_book(), cases)

    for share in (s for s in lessons.shares if s.complaint):
        hoped = learned(share.before, share.acted, share.cases)
        assert share.after == pytest.approx(hoped, abs=1e-6)


def test_one_factor_on_every_prior_at_once_misses_and_the_walk_does_not() -> None:
    model = Acts([Setting(plain_network(small_book(), BARS), 1)])
    now = dict(zip(model.causes, model.of(model.start({})).tolist(), strict=True))
    wanted = {WHEEL: 0.2, BELT: 0.6, FLOOR: 0.1}
    once = model.of(model.start({c: w / now[c] for c, w in wanted.items()}))
    walked = model.of(fit(model, wanted))

    assert max(abs(once[model.at[c]] - w) for c, w in wanted.items()) > 0.1
    assert max(abs(walked[model.at[c]] - w) for c, w in wanted.items()) < 1e-6


def test_a_share_above_what_the_link_allows_stays_bounded() -> None:
    model = Acts([Setting(plain_network(small_book(), BARS), 1)])
    factors = fit(model, {WHEEL: 1e-6, BELT: 0.999999, FLOOR: 1e-6})

    assert factors.min() >= 1e-3
    assert factors.max() <= 1e3
    assert model.of(factors)[model.at[BELT]] < 1.0


def test_no_cases_change_nothing() -> None:
    book = small_book()

    assert with_lessons(book, learn(book, []), (BARS,)) is book


def test_the_link_to_the_complaint_is_never_learned() -> None:
    sharper = {"bars-even": "yes"}  # a sharper word for the complaint
    lessons = learn(small_book(), many(20, WHEEL, answers=sharper))

    assert lessons.strengths == ()
    book = with_lessons(small_book(), lessons, (BARS,))
    assert book.causes[WHEEL].shows == small_book().causes[WHEEL].shows


def test_a_sign_is_learned_from_cases_of_one_named_cause_alone() -> None:
    seen = {"coolant-stream": "full"}
    two = many(5, COOLANT, UNDRESSED, complaint=(BURN,), answers=seen)
    new = many(5, COOLANT, complaint=(BURN,), answers=seen, new="a split hose")
    one = many(5, COOLANT, complaint=(BURN,), answers=seen)

    (strength,) = learn(small_book(), two + new + one).strengths

    assert (strength.finding, strength.seen, strength.cases) == ("thin-stream", 0, 5)
    assert strength.after == pytest.approx(0.91 * 10 / 15)


def test_a_guess_is_no_count() -> None:
    case = closed_case((COOLANT,), (BURN,))
    unsure = replace(case, entries=(Entry("answer", "coolant-stream", "full", sure=False),))

    assert dict(teaches(unsure).signs) == {}


def test_what_was_seen_after_a_fix_teaches_nothing() -> None:
    tried = Entry("tried", COOLANT, outcome="gone and stays")
    case = closed_case((COOLANT,), (BURN,))
    after = replace(case, entries=(tried, Entry("answer", "coolant-stream", "full")))

    assert dict(teaches(after).signs) == {}


def test_a_case_that_nothing_cured_teaches_nothing() -> None:
    case = replace(closed_case((WHEEL,)), closed=Closed("2026-03-14"))

    assert taught_by(small_book(), case) is None


def test_a_cause_the_book_does_not_let_show_it_is_told_and_counts_as_not_listed() -> None:
    lessons = learn(small_book(), many(4, COOLANT))

    (told,) = lessons.no_links
    assert (told.cause, told.complaint, told.cases) == (COOLANT, (BARS,), 4)
    assert belief(lessons).none > belief(Lessons()).none


def test_a_strength_never_falls_to_the_background() -> None:
    cases = many(400, COOLANT, complaint=(BURN,), answers={"coolant-stream": "full"})
    book = with_lessons(small_book(), learn(small_book(), cases), (BARS,))
    (link,) = [k for k in book.causes[COOLANT].shows if k.finding == "thin-stream"]

    assert 0.2 < link.how_often < 0.25


def test_a_machine_is_shrunk_to_the_other_cases_of_the_shop() -> None:
    cases = many(20, BELT, machine="north") + many(4, WHEEL, machine="south")
    lessons = learn(small_book(), cases)
    others = acts(learn(small_book(), many(20, BELT)))

    south = acts(lessons, machine="south")

    assert south[WHEEL] == pytest.approx(learned(others[WHEEL], 4, 4), abs=1e-6)
    assert acts(lessons, machine="north")[BELT] > acts(lessons)[BELT] > south[BELT]


def test_a_single_machine_counts_its_cases_once() -> None:
    cases = many(6, BELT, machine="north")

    assert acts(learn(small_book(), cases), machine="north") == acts(learn(small_book(), cases))


def test_what_stands_on_the_card_is_not_learned_a_second_time() -> None:
    """A direct drive rules the belt out; its cases say nothing on how common belts are."""
    card = {"drive-kind": "direct"}
    direct = [taught_by(small_book(), closed_case((WHEEL,)), card)] * 3
    cases = [t for t in direct if isinstance(t, Taught)]

    assert all(s.cause != BELT for s in learn(small_book(), cases).shares)


def test_what_is_common_in_other_complaints_counts_where_there_are_no_cases() -> None:
    lessons = learn(small_book(), many(12, COOLANT, complaint=(BURN,)))

    assert {s.complaint for s in lessons.shares} == {(BURN,), ()}
    general = {s.cause: s.odds for s in lessons.shares if not s.complaint}
    assert general[COOLANT] > 1.0 > general[UNDRESSED]


def test_cases_in_any_order_teach_the_same() -> None:
    cases = many(3, BELT) + many(5, WHEEL, machine="north") + many(2, COOLANT, complaint=(BURN,))

    assert learn(small_book(), cases) == learn(small_book(), cases[::-1])
