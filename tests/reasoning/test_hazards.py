"""No step that needs the wheel turning comes up while a hazard of the machine is not cleared."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from diagnose.book.conditions import Condition, holds
from diagnose.book.conditions import Test as Comparison
from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book, Check, Stop
from diagnose.case.entries import OUTCOMES, UNKNOWN, Case, Entry
from diagnose.reasoning.belief import Impossible
from diagnose.reasoning.gates import CLEARED, RAISED, TURNING
from diagnose.reasoning.reason import Reasoned, read_case, reason
from tests.small import small_book

MOST_STEPS = 40


@cache
def book() -> Book:
    """The shipped knowledge."""
    return load_book(knowledge_folder())


def stops() -> list[str]:
    """The stops of the machine."""
    return sorted(s.id for s in book().stops.values() if s.kind == "stop")


# what is offered ----------------------------------------------------------------------------------


def turning_steps(told: Reasoned) -> list[str]:
    """Everything offered now that needs the wheel turning."""
    checks = told.read.book.checks
    named = [told.step.name, *told.walk] if told.step.kind in ("ask", "safety") else [*told.walk]
    found = [name for name in named if TURNING in checks[name].needs]
    found += [s.fix.id for s in told.plan.cure if TURNING in s.fix.needs and not s.withheld]
    return found + [
        a.aid.do for a in told.plan.first_aid if TURNING in a.aid.needs and not a.withheld
    ]


def answers(check: Check) -> list[str]:
    """Answers a person could give."""
    if check.kind == "number":
        return [check.example, UNKNOWN]
    if check.kind == "file":
        return [UNKNOWN]
    return [o.id for o in check.options] + [UNKNOWN]


def touches(check: Check, stop: str) -> bool:
    """True when some answer of the check raises or clears the stop."""
    return any(stop in (*o.raises, *o.clears) for o in check.options)


# any entries at all -------------------------------------------------------------------------------


@st.composite
def entries(draw: st.DrawFn) -> Entry:
    """One entry of any kind."""
    shelf = book()
    kind = draw(st.sampled_from(["answer"] * 6 + ["tried", "cleared", "later"]))
    if kind == "tried":
        name = draw(st.sampled_from(sorted(shelf.causes)))
        return Entry("tried", name, outcome=draw(st.sampled_from(OUTCOMES)))
    if kind == "cleared":
        return Entry("cleared", draw(st.sampled_from(sorted(shelf.stops))), "looked at")
    near_hazards = sorted({s.asked_by for s in shelf.stops.values()})
    names = st.one_of(st.sampled_from(sorted(shelf.checks)), st.sampled_from(near_hazards))
    check = shelf.checks[draw(names)]
    if kind == "later":
        return Entry("later", check.id)
    return Entry(kind, check.id, draw(st.sampled_from(answers(check))), sure=draw(st.booleans()))


@st.composite
def cases(draw: st.DrawFn) -> Case:
    """A case with any entries, some of them corrected later."""
    symptom = draw(st.sampled_from(sorted(book().symptoms)))
    told = draw(st.lists(entries(), max_size=12))
    case = Case("any", (symptom,), tuple(told))
    given_ = [n for n, e in enumerate(told, 1) if e.kind == "answer"]
    for number in (
        draw(st.lists(st.sampled_from(given_), unique=True, max_size=2)) if given_ else ()
    ):
        check = book().checks[told[number - 1].name]
        value = draw(st.sampled_from(answers(check)))
        case = case.with_entry(Entry("correct", check.id, value, replaces=number))
    return case


@settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(cases())
def test_no_entries_lead_to_a_turning_step_with_a_hazard_open(case: Case) -> None:
    try:
        told = reason(book(), case)
    except Impossible:
        return

    if any(h.state != CLEARED for h in told.read.hazards if h.stop.kind == "stop"):
        assert turning_steps(told) == []


def cleared_by(case: Case, stop: Stop) -> bool:
    """True when some entry, surely meant, clears the stop."""
    for entry in case.entries:
        if entry.kind == "cleared" and entry.name == stop.id:
            return True
        if entry.kind in ("answer", "correct") and entry.sure:
            check = book().checks[entry.name]
            chosen = {part.strip() for part in entry.value.split(",")}
            if check.kind == "any" and "none" not in chosen:  # what a list leaves out is not so
                chosen.add("none")
            if any(o.id in chosen and stop.id in o.clears for o in check.options):
                return True
    return False


@settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(cases())
def test_a_hazard_is_cleared_only_by_somebody_who_is_sure(case: Case) -> None:
    read = read_case(book(), case)

    for hazard in read.hazards:
        if hazard.state == CLEARED and holds(hazard.stop.applies_when, read.facts) != 0.0:
            assert cleared_by(case, hazard.stop), hazard.stop.id


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.data())
def test_a_stop_raised_by_any_entry_stands_wherever_it_comes_in_the_list(
    data: st.DataObject,
) -> None:
    shelf = book()
    raising = [(c.id, o.id, s) for c in shelf.checks.values() for o in c.options for s in o.raises]
    check, option, stop = data.draw(st.sampled_from(raising))
    others = data.draw(st.lists(entries(), max_size=6))
    quiet = [
        e
        for e in others
        if e.kind in ("answer", "later")
        and e.name != check
        and not touches(shelf.checks[e.name], stop)
    ]
    place = data.draw(st.integers(0, len(quiet)))
    told = [*quiet[:place], Entry("answer", check, option), *quiet[place:]]

    symptom = data.draw(st.sampled_from(sorted(shelf.symptoms)))
    read = read_case(shelf, Case("any", (symptom,), tuple(told)))
    assert stop in {h.stop.id for h in read.stops}


# paths that never speak of the hazard -------------------------------------------------------------


def quiet_answer(check: Check, stop: str) -> str:
    """An answer that says nothing of the stop, and clears other hazards where it can."""
    silent = [o for o in check.options if stop not in (*o.raises, *o.clears) and not o.raises]
    clearing = [o.id for o in silent if o.clears]
    if clearing:
        return clearing[0]
    if silent:
        return silent[0].id
    return check.example if check.kind == "number" else UNKNOWN


@cache
def walked(symptom: str, entries: tuple[Entry, ...]) -> Reasoned:
    """The case reasoned out; the quiet paths of most stops begin alike."""
    return reason(book(), Case("quiet", (symptom,), entries))


def quiet_path(symptom: str, stop: str) -> tuple[list[str], Reasoned]:
    """The checks asked of a person who never speaks of the stop, to a turning step or the end."""
    shelf, asked = book(), list[str]()
    entries: tuple[Entry, ...] = ()
    told = walked(symptom, entries)
    for _ in range(MOST_STEPS):
        if told.step.kind not in ("ask", "safety") or turning_steps(told):
            break
        check = shelf.checks[told.step.name]
        asked.append(check.id)
        entries += (Entry("answer", check.id, quiet_answer(check, stop)),)
        told = walked(symptom, entries)
        if shelf.stops[stop].asked_by in asked:
            break
    return asked, told


@pytest.mark.parametrize("stop", stops())
@pytest.mark.parametrize("symptom", sorted(book().symptoms))
def test_a_path_that_never_speaks_of_the_hazard_is_asked_about_it(symptom: str, stop: str) -> None:
    asked, told = quiet_path(symptom, stop)

    hazard = next(h for h in told.read.hazards if h.stop.id == stop)
    does_not_apply = holds(hazard.stop.applies_when, told.read.facts) == 0.0
    assert hazard.stop.asked_by in asked or does_not_apply
    if not does_not_apply and hazard.state != CLEARED:
        assert turning_steps(told) == []


@pytest.mark.parametrize("stop", stops())
def test_the_question_that_clears_a_hazard_can_clear_it_and_raise_it(stop: str) -> None:
    check = book().checks[book().stops[stop].asked_by]

    assert any(stop in o.clears for o in check.options)
    assert any(stop in o.raises for o in check.options)


@pytest.mark.parametrize("symptom", sorted(book().symptoms))
def test_dont_know_at_every_safety_question_keeps_the_wheel_still_to_the_end(symptom: str) -> None:
    shelf, case = book(), Case("does not know", (symptom,))
    safety = {s.asked_by for s in shelf.stops.values()}

    for _ in range(MOST_STEPS):
        told = reason(shelf, case)
        assert turning_steps(told) == []
        if told.step.kind not in ("ask", "safety"):
            break
        check = shelf.checks[told.step.name]
        value = UNKNOWN if check.id in safety else answers(check)[0]
        case = case.with_entry(Entry("answer", check.id, value))
    else:
        pytest.fail("the questions did not come to an end")


@pytest.mark.parametrize("stop", stops())
def test_a_cleared_hazard_opens_again_after_what_renews_it(stop: str) -> None:
    shelf = book()
    renewing = [
        c.id
        for c in shelf.causes.values()
        if set(c.fix.changes) & set(shelf.stops[stop].renewed_by)
    ]
    symptom = sorted(shelf.symptoms)[0]
    case = Case("renewed", (symptom,), (Entry("cleared", stop, "looked at"),))

    before = read_case(shelf, case)
    assert next(h for h in before.hazards if h.stop.id == stop).state == CLEARED
    for cause in renewing:
        after = read_case(shelf, case.with_entry(Entry("tried", cause, outcome="same")))
        assert next(h for h in after.hazards if h.stop.id == stop).state != CLEARED


def test_a_still_question_that_hangs_on_a_turning_one_does_not_bring_it_in() -> None:
    """A look at the wheel that is only asked once the stream was watched with the wheel turning."""
    small = small_book()
    hangs = Condition((Comparison("coolant-stream", "is", ("full", "thin")),))
    look = replace(small.checks["wheel-look"], asked_when=hangs, minutes=0.1)
    shelf = replace(small, checks={**small.checks, "wheel-look": look})
    nobody_knows = tuple(Entry("answer", s.asked_by, UNKNOWN) for s in small.stops.values())

    told = reason(shelf, Case("burn", ("burnt-patches",), nobody_knows))
    assert turning_steps(told) == []


def test_what_the_cards_of_machine_and_wheel_tell_is_not_asked_again() -> None:
    shelf = book()
    cards = {"the-machine-and-its-power": "none", "speed-against-mark": "not-faster"}
    symptom = sorted(shelf.symptoms)[0]

    without = {h.stop.id for h in read_case(shelf, Case("no cards", (symptom,))).hazards}
    read = read_case(shelf, Case("cards", (symptom,)), cards)
    cleared = {h.stop.id for h in read.hazards if h.state == CLEARED}
    told = {s for c in cards for o in shelf.checks[c].options for s in (*o.raises, *o.clears)}
    assert told <= cleared <= without
    assert "wheel-in-doubt" not in cleared
    assert "path-not-clear" not in cleared


def test_a_card_that_tells_of_a_danger_raises_its_stop() -> None:
    symptom = sorted(book().symptoms)[0]
    cards = {"the-machine-and-its-power": "starts-again, chuck-tingles"}

    read = read_case(book(), Case("cards", (symptom,)), cards)
    assert {h.stop.id for h in read.stops} == {"starts-by-itself", "electric-chuck-leaks"}


def test_metals_that_burn_or_poison_are_asked_about_only_where_they_may_be_ground() -> None:
    symptom = sorted(book().symptoms)[0]
    special = {"light-metal-with-steel-dust", "wet-light-metal-sludge", "carbide-dust"}

    def open_for(metal: str) -> set[str]:
        case = Case("metal", (symptom,), (Entry("answer", "work-material", metal),))
        read = read_case(book(), case)
        return {h.stop.id for h in read.hazards if h.state != CLEARED} & special

    assert open_for("soft-steel") == set()
    assert open_for("cemented-carbide") == {"carbide-dust"}
    assert open_for("light-or-red-metal") == special - {"carbide-dust"}
    assert open_for(UNKNOWN) == special


def test_a_danger_that_is_cleared_stays_evidence_of_what_it_did() -> None:
    """The wheel that shook hard was stopped and looked after: it shook all the same."""
    said = (
        Entry("answer", "before-anything-runs", "shakes-hard"),
        Entry("cleared", "violent-shake", "balanced and mounted again by the fitter"),
        Entry("answer", "before-anything-runs", "none"),
    )
    before = reason(book(), Case("", ("even-bars-across-travel",), said[:1]))
    after = reason(book(), Case("", ("even-bars-across-travel",), said))
    never = reason(book(), Case("", ("even-bars-across-travel",), said[2:]))

    state = {h.stop.id: h.state for h in after.read.hazards}
    assert state["violent-shake"] == CLEARED
    unbalanced = [r.belief.of("unbalanced-wheel") for r in (before, after, never)]
    shares = [r.acts for r in unbalanced if r is not None]
    assert shares[1] == pytest.approx(shares[0], rel=0.05)
    assert shares[1] > 1.05 * shares[2]


def test_a_list_of_dangers_answered_with_one_clears_those_not_named() -> None:
    said = (Entry("answer", "before-anything-runs", "guard-is-off"),)
    state = {h.stop.id: h.state for h in read_case(book(), Case("", (), said)).hazards}
    assert state["guard-off"] == RAISED
    listed = book().checks["before-anything-runs"].by_option["none"].clears
    assert {state[s] for s in listed if s != "guard-off"} == {CLEARED}

    thought = (Entry("answer", "before-anything-runs", "guard-is-off", sure=False),)
    state = {h.stop.id: h.state for h in read_case(book(), Case("", (), thought)).hazards}
    assert CLEARED not in {state[s] for s in listed}
