"""The course: levels that open, missed cases that come back, who takes what for what."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest

from diagnose.book.problems import BookError
from diagnose.case.entries import Case, Closed, Entry
from diagnose.drill import course
from diagnose.drill.draw import draw_drill
from diagnose.drill.from_shop import usable, wish_from
from diagnose.drill.hazards import has_hazard
from diagnose.drill.progress import Done, Learner, everybody, keep, load
from diagnose.drill.side_by_side import deciding_look
from diagnose.drill.story import story
from tests.drill.test_drawn import shipped

GOOD = Done(1, 1, "2026-01-02", "even-bars-across-travel", "unbalanced-wheel", (), True, 80, 30.0,
            0, "", False)  # fmt: skip
BAD = replace(GOOD, passed=False, cause="wheel-not-trued", named=("unbalanced-wheel",))


def test_a_level_opens_with_four_of_five_passed() -> None:
    assert course.level_of(()) == 1
    assert course.level_of((GOOD,) * 3) == 1
    assert course.level_of((GOOD,) * 4) == 2
    assert course.level_of((BAD, GOOD, GOOD, GOOD, GOOD)) == 2
    assert course.level_of((BAD, BAD, GOOD, GOOD, GOOD)) == 1


def test_a_missed_hazard_keeps_the_level_shut() -> None:
    missed = replace(GOOD, hazard="guard-off")

    assert course.level_of((GOOD, missed, GOOD, GOOD, GOOD)) == 1
    assert course.level_of((GOOD, replace(missed, caught=True), GOOD, GOOD)) == 2


def test_a_missed_case_comes_back_and_less_often_each_time_it_is_passed() -> None:
    again = replace(BAD, passed=True, named=())

    assert course.due((BAD,)) == ()
    assert course.due((BAD, GOOD)) == ((BAD.complaint, BAD.cause),)
    assert course.due((BAD, GOOD, again)) == ()
    assert course.due((BAD, GOOD, again, GOOD, GOOD)) == ()
    assert course.due((BAD, GOOD, again, GOOD, GOOD, GOOD)) == ((BAD.complaint, BAD.cause),)


def test_what_is_due_is_drilled_next() -> None:
    chosen = course.next_drill(shipped(), Learner("anna", (BAD, GOOD)))

    assert chosen.wish.causes == {"wheel-not-trued"}
    assert chosen.why.startswith("a case you did not")


def test_what_a_learner_swaps_is_drilled_more_often() -> None:
    swapped = {"wheel-not-trued", "unbalanced-wheel"}
    seen = [
        course.next_drill(shipped(), Learner(f"learner {n}", (BAD,))).wish.causes for n in range(40)
    ]

    assert 8 <= sum(c == swapped for c in seen) <= 32


def test_one_in_four_of_a_learners_drills_has_a_hazard() -> None:
    seeds = [course.seed_for(Learner("anna", (GOOD,) * n)) for n in range(8)]

    assert [sum(map(has_hazard, seeds[i : i + 4])) for i in (0, 4)] == [1, 1]


def test_the_teacher_sees_who_takes_what_for_what() -> None:
    view = course.teacher(shipped(), (Learner("anna", (BAD, BAD)), Learner("ben", (BAD,))))

    (row,) = view.table
    assert row == (
        "Wheel not trued after mounting", "Wheel and adapter out of balance", ("anna", "ben"), 3
    )  # fmt: skip
    assert view.pairs[0].one == "out of round"


def test_two_causes_are_told_apart_by_a_look_that_comes_out_differently() -> None:
    look = deciding_look(shipped(), "unbalanced-wheel", "wheel-not-trued")

    assert look is not None
    assert look.apart > 0.5
    assert look.one[0] != look.other[0]


def test_what_was_done_is_kept_and_read_again(tmp_path: Path) -> None:
    keep(tmp_path, "Anna", GOOD)
    keep(tmp_path, "anna", BAD)

    assert load(tmp_path, "ANNA").done == (GOOD, BAD)
    assert [k.name for k in everybody(tmp_path)] == ["Anna"]


@pytest.mark.parametrize("text", ["", "{", "[]", '{"learner": "a"}', '{"learner":1,"drills":[{}]}'])
def test_a_spoiled_record_is_named_and_left_alone(tmp_path: Path, text: str) -> None:
    path = tmp_path / "drills" / "anna.json"
    path.parent.mkdir()
    path.write_text(text)

    with pytest.raises(BookError, match="cannot be read"):
        keep(tmp_path, "anna", GOOD)
    assert path.read_text() == text


def test_a_record_is_plain_data(tmp_path: Path) -> None:
    keep(tmp_path, "anna", GOOD)

    data = json.loads((tmp_path / "drills" / "anna.json").read_text())
    assert data["schema"] == 1
    assert data["drills"][0]["cause"] == "unbalanced-wheel"


CLOSED = Case(
    "Harrow plate for Mr Quill", ("even-bars-across-travel",),
    (
        Entry("answer", "before-anything-runs", "none"),
        Entry("answer", "drive", "direct"),
        Entry("answer", "bars-in-25mm", "8"),
        Entry("answer", "table-speed", "9 m/min"),
        Entry("answer", "spindle-speed", "2850 rpm"),
        Entry("answer", "trued-since-mounting", "no-truing"),
    ),
    machine="quill-grinder", part="harrow plate",
    closed=Closed("2026-01-02", ("wheel-not-trued",), note="told by Mr Quill"),
)  # fmt: skip


def test_a_closed_case_is_drilled_with_its_answers_and_without_its_names() -> None:
    wish = wish_from(shipped(), [CLOSED], 1, 1)
    drill = draw_drill(shipped(), 1, wish)
    told = " ".join(story(shipped(), drill)).lower()

    assert drill.cause == "wheel-not-trued"
    assert drill.from_shop
    assert drill.answers["bars-in-25mm"] == "8"
    assert drill.answers["table-speed"] == "9 m/min"
    assert drill.answers["trued-since-mounting"] == "no-truing"
    assert "quill" not in told
    assert "harrow" not in told
    assert "quill" not in str(drill).lower()


def test_a_case_that_nothing_cured_cannot_be_drilled() -> None:
    open_case = replace(CLOSED, closed=Closed("2026-01-02"))

    assert usable(shipped(), [CLOSED, open_case]) == [CLOSED]
    with pytest.raises(LookupError, match="no closed case"):
        wish_from(shipped(), [open_case], 1, 1)
