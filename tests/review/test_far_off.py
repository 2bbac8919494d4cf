"""What is far off comes first and weighs more the farther it is; what is near is left in peace."""

from __future__ import annotations

import itertools

import pytest

from diagnose.physics.marking import read_marking
from diagnose.physics.quantities import read_quantity
from diagnose.physics.wheel_choice import choose
from diagnose.review.far_off import BASES, LETTERS, answers_far, lifted, wheel_far
from diagnose.review.review import review
from diagnose.review.risks import ORDER, Risk
from diagnose.review.unknown import AFTER, AT_THE_BENCH, OF_HARDENING, OF_THE_PART
from diagnose.view.review import ReviewView
from tests.review.fresh_jobs import FRESH, fresh
from tests.review.jobs import SOUND, book, job, reviewed, shop

CARE = {"wheel_glass": "open", "since_last_dress": "just-dressed", "what_changed": "nothing"}
THIN, HARD, DRY = "thin plate on coarse poles", "pair of parallels", "die block ground dry"
WIDE, IRON, GUMMY = "hydraulic machine", "iron table, open dress", "slide of gummy steel"
# the ten kinds of mistakes, each in a job told with care
PLANTED = [
    (HARD, {"wheel": "brown-60-l", "dress_seconds": "8 s", "crossfeed": "1.2 mm", **CARE},
     "wheel-grade-too-hard"),
    (THIN, {"dress_seconds": "45 s", **CARE}, "dressed-too-fine"),
    (DRY, {"dress_seconds": "50 s", **CARE}, "dressed-too-fine"),
    (GUMMY, {"dress_seconds": "1.5 s", **CARE}, "dress-lead-too-coarse"),
    (WIDE, {"depth_of_cut": "0.09 mm", **CARE}, "cut-too-deep"),
    (THIN, {"bow_before": "0.12 mm", "lever_or_selector": "full-on", **CARE},
     "thin-work-pulled-flat"),
    (HARD, {"crossfeed": "17 mm", "depth_of_cut": "0.003 mm", **CARE}, "crossfeed-too-wide"),
    (DRY, {"crossfeed": "11 mm", "depth_of_cut": "0.0025 mm", **CARE}, "crossfeed-too-wide"),
    (HARD, {"spark_out_strokes": "0", "dress_seconds": "16 s", **CARE},
     "too-few-spark-out-passes"),
    (DRY, {"chuck_off_lately": "off-or-rebolted", **CARE}, "chuck-not-parallel"),
    (GUMMY, {"balanced_since_mounting": "never-balanced", **CARE}, "unbalanced-wheel"),
]  # fmt: skip
STOPPED = [
    (WIDE, {"part_thickness": "140 mm", "part_base": "30 mm"}, "tall-part-not-blocked"),
    (HARD, {"spindle_speed": "3600 rpm"}, "spindle-over-the-mark"),
]
JOBS = {**{n: fresh(n) for n in FRESH}, **{n: job(n) for n in SOUND}}


def risk_of(name: str, cause: str, **changes: str) -> Risk | None:
    found = review(book(), job(name, **changes), shop(), "metric")
    return next((r for r in found.levels.risks if r.cause == cause), None)


@pytest.mark.parametrize(("name", "mistake", "cause"), PLANTED)
def test_each_kind_of_mistake_is_the_first_risk(
    name: str, mistake: dict[str, str], cause: str
) -> None:
    view = reviewed(fresh(name, **mistake))

    assert (view.risks[0].cause, view.risks[0].level) == (cause, "risk")
    assert view.stops == ()


@pytest.mark.parametrize(("name", "mistake", "stop"), STOPPED)
def test_each_hazard_stops_and_gives_no_reason_twice(
    name: str, mistake: dict[str, str], stop: str
) -> None:
    view = reviewed(fresh(name, **mistake))

    assert stop in [s.id for s in view.stops]
    for each in view.stops:
        assert len(set(each.because)) == len(each.because)


def test_the_weight_grows_with_every_letter_from_the_second_on() -> None:
    weights = []
    for letter in "IJKLM":
        marking = f"A 46 {letter} 8 V, 178 x 13 x 31.75, 3600 rpm"
        risk = risk_of("hard plate", "wheel-grade-too-hard", wheel="", marking=marking,
                       wheel_glass="open", dress_seconds="8 s", crossfeed="1.2 mm")  # fmt: skip
        weights.append(risk.weight if risk else 0.0)

    assert weights[0] == 0.0  # one letter over H
    assert weights == sorted(set(weights))


def test_the_weight_grows_with_every_doubling_of_the_dress_and_the_crossfeed() -> None:
    for cause, setting, values in (
        ("dressed-too-fine", "dress_seconds", ("35 s", "60 s", "90 s")),
        ("dress-lead-too-coarse", "dress_seconds", ("2.5 s", "1.5 s", "1 s")),
        ("crossfeed-too-wide", "crossfeed", ("7 mm", "10 mm", "12.9 mm")),
    ):
        found = [risk_of("soft block", cause, depth_of_cut="0.0025 mm", **{setting: v})
                 for v in values]  # fmt: skip
        weights = [r.weight for r in found if r is not None]
        assert weights == sorted(set(weights)), cause
        assert len(weights) >= len(values) - 1


def test_each_step_doubles_the_odds() -> None:
    assert lifted(0.2, 0.0) == pytest.approx(0.2)
    assert lifted(0.2, 2.0) == pytest.approx(0.5)
    assert lifted(1.0, 3.0) <= 1.0


def test_a_wheel_is_far_off_from_two_letters_two_sizes_or_another_grain() -> None:
    choice = choose("hardened-steel")

    def far(marking: str) -> set[str]:
        return {f.cause for f in wheel_far(choice, read_marking(marking))}

    assert far("A46H8V") == far("A46I8V") == set()
    assert far("A46J8V") == {"wheel-grade-too-hard"}
    assert far("A46D8V") == {"wheel-grade-too-soft"}
    assert far("A24H8V") == {"wheel-grit-too-coarse"}
    assert far("A150H8V") == {"wheel-grit-too-fine"}
    assert far("C46H8V") == {"wheel-wrong-for-the-material"}


def test_without_a_marking_the_nearest_letter_of_the_answer_counts() -> None:
    choice = choose("hardened-steel")

    assert answers_far(choice, {"wheel-grade": "h-to-j"}) == ()
    assert [f.steps for f in answers_far(choice, {"wheel-grade": "k-to-m"})] == [3.0]
    assert set(LETTERS) <= set(book().checks["wheel-grade"].by_option)
    assert set(BASES) <= set(book().checks["wheel-abrasive"].by_option)


@pytest.mark.parametrize("metal", ["soft-steel", "hardened-steel", "brass", "grey-iron"])
def test_a_wheel_that_is_recommended_is_never_called_unsuitable(metal: str) -> None:
    for wheel in shop().wheels:
        view = reviewed(job("soft block", metal=metal, wheel=wheel))
        best = [w for w in view.wheels if w.verdict == "best"]
        called = {r.cause for r in view.risks if r.level == "risk" and r.cause.startswith("wheel-")}
        if best and best[0].planned:
            assert not called & {"wheel-grade-too-hard", "wheel-grade-too-soft",
                                 "wheel-wrong-for-the-material", "wheel-grit-too-fine"}  # fmt: skip
    if metal == "brass":  # the shelf has alumina only
        assert best == []
        assert any("Fit the wheel C" in c for r in view.risks for c in r.change)


@pytest.mark.parametrize("name", JOBS)
def test_a_pair_of_depth_and_crossfeed_is_never_beyond_the_ceiling(name: str) -> None:
    for depth, across in itertools.product(("0.005 mm", "0.015 mm", "0.08 mm"), ("1 mm", "9 mm")):
        case = JOBS[name]
        case = type(case)(**{**vars(case), "given": {**case.given, "depth-of-cut": depth,
                                                     "crossfeed": across}})  # fmt: skip
        found = review(book(), case, shop(), "metric")
        assert found.cuts is not None
        pairs = [p for s in found.settings for p in s.pairs]
        assert pairs
        for deep, wide in pairs:
            assert deep * wide <= found.cuts.ceiling * (1 + 1e-9)


@pytest.mark.parametrize("name", JOBS)
def test_the_seconds_of_a_dress_are_the_same_wherever_they_are_told(name: str) -> None:
    for seconds in ("1 s", "60 s"):
        case = JOBS[name]
        case = type(case)(**{**vars(case), "given": {**case.given, "dress-seconds": seconds}})
        view = reviewed(case)
        told = next(d.seconds for d in view.dresses if d.use == "to finish")
        for risk in view.risks:
            assert "13 mm face" not in risk.do
            if risk.cause in ("dressed-too-fine", "dress-lead-too-coarse"):
                assert f"{told} from edge to edge" in risk.do
                line = next(c for c in risk.change if "dressing" in c)
                assert told.split(" to ")[-1] in line


def test_a_dress_that_gives_the_finish_by_the_table_makes_no_note() -> None:
    for name, seconds in (("soft block", "4.5 s"), ("soft block", "7 s")):
        told = {"dress_seconds": seconds, "since_last_dress": "just-dressed"}
        view = reviewed(job(name, finish="0.8 um", **told))
        assert [r.cause for r in view.risks if r.cause.startswith("dress")] == []
        kept = next(s for s in view.settings if s.check == "dress-seconds")
        assert kept.keep


def test_an_order_of_faces_is_a_matter_of_six_sides_or_of_a_told_order() -> None:
    def named(view: ReviewView) -> bool:
        return "squaring-order-wrong" in [r.cause for r in view.risks]

    flat = {"how_held": "flat-on-the-magnet"}
    assert not named(reviewed(job("soft block", sides="two", **flat)))
    assert not named(reviewed(job("soft block", **flat)))
    assert named(reviewed(job("soft block", sides="two", face_order="as-they-came", **flat)))
    assert named(reviewed(job("soft block", sides="six", face_order="as-they-came", **flat)))
    assert ORDER in book().checks


def test_the_sum_is_named_after_the_metal_that_is_ground() -> None:
    for name, word in (("soft block", "softer work"), ("hard plate", "hardened steel")):
        view = reviewed(job(name, depth_of_cut="0.08 mm"))
        told = [t for r in view.risks for each in r.shown_by for t in each.shown]
        told += [r.name for r in view.readings]
        sums = [t for t in told if t.startswith("the cut against the spindle")]
        assert sums
        assert all(word in t for t in sums)


@pytest.mark.parametrize("name", JOBS)
def test_nothing_is_asked_that_only_a_cut_can_show(name: str) -> None:
    checks = book().checks
    assert AFTER | AT_THE_BENCH | OF_THE_PART | set(OF_HARDENING) <= set(checks)

    for unknown in reviewed(JOBS[name]).unknown:
        check = checks[unknown.check.id]
        assert check.id not in AFTER
        assert check.place != "part" or check.id in OF_THE_PART
        for words in ("ground face", "low place", "bars", "the fault", "scratches"):
            assert words not in check.ask


def test_the_depths_of_a_pair_can_be_read() -> None:
    view = reviewed(job("soft block", depth_of_cut="0.08 mm", crossfeed="9 mm"))
    line = view.risks[0].change[0]

    assert "with" in line
    assert line.endswith("not 0.08 mm with 9 mm across.")
    first = line.split(" to ", 1)[1].split(",")[0].split(" with ")
    assert read_quantity(first[0], "length").value < 20e-6
