"""What a review recommends holds together: wheel, dress, cut, order of sides, what is not known."""

from __future__ import annotations

import itertools
from dataclasses import replace

import pytest

from diagnose.case.entries import Entry
from diagnose.case.files import load_case
from diagnose.physics.quantities import read_quantity
from diagnose.physics.tables import METALS
from diagnose.review.marking_facts import facts_of
from diagnose.review.metals import MATERIAL, ROWS
from diagnose.review.review import review
from diagnose.review.risks import present
from diagnose.review.set_up import DEPTH, REACH, SPARK_OUT, TAKEN, WET
from diagnose.review.settings import ACROSS, BITE, SECONDS, TABLE
from diagnose.view.review import ReviewView
from tests.review.jobs import SHARED, SOUND, book, job, reviewed, shop

MOST_HARDNESS = {"soft-steel": "20 HRC", "alloy-steel": "40 HRC", "hardened-steel": "60 HRC"}
METALS_PLANNED = ("soft-steel", "alloy-steel", "hardened-steel", "grey-iron", "aluminium", "brass")


def test_the_checks_the_sums_look_at_are_in_the_book() -> None:
    named = {MATERIAL, DEPTH, SPARK_OUT, WET, REACH, ACROSS, TABLE, SECONDS, BITE, *TAKEN}

    assert named <= book().checks.keys()
    options = set(book().checks[MATERIAL].by_option)
    assert set(ROWS) <= options
    assert {o for o in options if not book().checks[MATERIAL].by_option[o].raises} == set(ROWS)
    for marking in ("A36H8V", "C46J5V", "A80N12V", "A60F8V"):
        for check, answer in facts_of(marking).items():
            assert answer in book().checks[check].by_option


@pytest.mark.parametrize(
    ("metal", "machine"),
    list(itertools.product(METALS_PLANNED, ("north-grinder", "south-grinder"))),
)
def test_a_job_set_as_recommended_has_no_risk_left_that_a_setting_makes(
    metal: str, machine: str
) -> None:
    """The recommendation is put back in as the plan: no figure of it is found fault with."""
    hardness = MOST_HARDNESS.get(metal, "")
    plan = replace(SOUND["soft block"], machine=machine)
    case = replace(
        job("soft block", metal=metal, hardness=hardness, finish="0.8 um"), machine=plan.machine
    )
    given = {n: a for n, a in case.given.items() if n != MATERIAL}
    case = replace(case, given=given)
    found = review(book(), case, shop(), "metric")
    entries = tuple(Entry("answer", s.check, s.answer()) for s in found.settings)
    again = reviewed(replace(case, entries=entries))

    assert [s.check for s in again.settings if not s.keep] == []
    told = {r.cause for r in again.risks if any(c.startswith("Set ") for c in r.change)}
    assert told == set()
    settings = ("cut-too-deep", "table-too-slow", "crossfeed-too-wide", "dress-too-deep",
                "dressed-too-fine", "dress-lead-too-coarse", "too-few-spark-out-passes",
                "too-many-spark-out-passes", "cut-too-light", "last-cut-too-deep")  # fmt: skip
    assert [r.cause for r in again.risks if r.cause in settings] == []


def test_what_is_recommended_takes_a_settings_risk_away() -> None:
    for mistake in ({"depth_of_cut": "0.05 mm"}, {"dress_seconds": "30 s"}, {"crossfeed": "9 mm"}):
        risk = reviewed(job("soft block", **mistake)).risks[0]

        assert risk.after < risk.here / 2
        assert risk.change


def wheel(view: ReviewView, name: str) -> tuple[str, tuple[str, ...]]:
    found = next(w for w in view.wheels if w.id == name)
    return found.verdict, found.wrong


def test_hard_steel_gets_the_soft_wheel_and_each_other_wheel_its_fault() -> None:
    view = reviewed(job("hard plate"))

    assert wheel(view, "white-46-h")[0] == "best"
    assert "harder" in " ".join(wheel(view, "pink-46-i")[1])
    verdict, wrong = wheel(view, "brown-60-l")
    assert verdict == "does not suit"
    assert any("glazes and burns" in w for w in wrong)


def test_a_wheel_marked_slower_than_the_spindle_is_not_to_be_run() -> None:
    view = reviewed(job("hard plate", spindle_speed="3450 rpm", wheel="pink-46-i"))
    verdict, wrong = wheel(view, "white-46-h")

    assert verdict == "not to be run"
    assert "3340 rpm" in wrong[0]
    assert wheel(view, "pink-46-i")[0] == "best"


def test_carbide_gets_no_wheel_of_the_shelf_and_no_cut() -> None:
    view = reviewed(job("soft block", metal="carbide", work_material="cemented-carbide"))

    assert view.wheels == ()
    assert view.cuts == ()
    assert "diamond" in view.wheel_hint


def test_without_a_metal_it_is_asked_for_and_nothing_is_made_up() -> None:
    case = job("soft block")
    case = replace(case, given={n: a for n, a in case.given.items() if n != MATERIAL})
    view = reviewed(case)

    assert view.wheels == ()
    assert view.cuts == ()
    assert view.due is None
    assert "Say what metal it is" in view.wheel_hint


def test_a_number_nobody_knows_is_taken_at_its_careful_end_and_said() -> None:
    known = reviewed(job("soft block"))
    case = replace(job("soft block"), machine="")
    unknown = reviewed(case)

    assert any("0.37 kW" in text for text in unknown.taken)
    few = read_quantity(unknown.cuts[0].crossfeed, "length").value
    many = read_quantity(known.cuts[0].crossfeed, "length").value
    assert few < many


def test_what_is_not_known_is_asked_for_with_how_far_it_could_move_a_cause() -> None:
    view = reviewed(job("soft block"))
    asked = {u.check.id for u in view.unknown}
    told = {e.check for e in view.entries}

    assert asked
    assert not asked & told
    for u in view.unknown:
        assert u.least < u.most
    assert "brushed-after-dressing" in asked
    after = reviewed(job("soft block", brushed_after_dressing="nothing-cleaned"))
    bound = next(u for u in view.unknown if u.check.id == "brushed-after-dressing")
    worst = next(r for r in after.risks if r.name == bound.cause)
    assert worst.here == pytest.approx(bound.most, abs=0.02)


def test_strokes_until_the_dress_are_a_wide_range_until_the_shop_has_counted() -> None:
    none = reviewed(job("soft block")).due
    counted = reviewed(job("soft block", strokes_had="200")).due

    assert none is not None
    assert counted is not None
    low, high = (float(x) for x in none.strokes.removesuffix(" strokes").split(" to "))
    assert high > 5 * low
    assert "no history" in none.known_from
    low, high = (float(x) for x in counted.strokes.removesuffix(" strokes").split(" to "))
    assert low < 200 < high < 2 * low + 1
    assert "learned" in counted.known_from


def test_thin_work_and_a_square_block_get_the_order_of_their_sides() -> None:
    lists = {name: {each.id for each in reviewed(case).lists} for name, case in (
        ("block", job("soft block")), ("thin", job("thin strip")),
        ("six", job("iron bracket", sides="six")))}  # fmt: skip

    assert lists["block"] == {"warm-up", "set-up"}
    assert lists["thin"] == {"warm-up", "set-up", "thin-work"}
    assert lists["six"] == {"warm-up", "set-up", "six-faces"}
    six = next(each for each in reviewed(job("iron bracket", sides="six")).lists
               if each.id == "six-faces")  # fmt: skip
    assert len(six.steps) == 1 + len(book().cards["square-a-block"].steps)


def test_thin_work_is_never_cut_deep_and_never_the_deep_way() -> None:
    for finish in ("0.4 um", "0.8 um"):
        cuts = reviewed(job("thin strip", finish=finish)).cuts

        assert [c.kind for c in cuts] == ["rough", "finish", "spark out"]
        assert read_quantity(cuts[0].depth, "length").value <= 5.001e-6


def test_a_finish_out_of_reach_is_said_by_dress_wheel_and_risk() -> None:
    view = reviewed(job("soft block", finish="0.1 um"))

    assert "wants a finer grit" in view.dress_note
    assert any(w.startswith("finish:") for _, wrong in [wheel(view, "pink-46-i")] for w in wrong)
    assert view.risks[0].cause == "wheel-grit-too-coarse"


@pytest.mark.parametrize("name", SOUND)
def test_a_cause_that_the_set_up_does_not_raise_is_not_listed(name: str) -> None:
    found = review(book(), job(name), shop(), "metric")
    here = present(found.weighed.network)

    listed = {r.cause for r in found.weighed.risks}
    assert len(listed) < 0.1 * len(here)
    for risk in found.weighed.risks:
        assert risk.there > risk.usual


def test_every_metal_of_the_tables_can_be_planned() -> None:
    for metal in METALS:
        view = reviewed(job("soft block", metal=metal, work_material="soft-steel"))
        assert view.cuts
        assert view.due is not None


@pytest.mark.parametrize("name", ["punch-plate", "square-block"])
def test_the_jobs_of_the_invented_shop_read_well(name: str) -> None:
    case = load_case(SHARED / "jobs" / f"{name}.yaml", book())
    view = reviewed(case)

    serious = [r.cause for r in view.risks if r.level == "risk"]
    assert serious == ([] if name == "square-block" else serious)
    assert ("cut-too-deep" in serious) is (name == "punch-plate")
    assert not view.stops


def test_a_wheel_told_by_its_marking_alone_is_judged_like_one_of_the_shelf() -> None:
    marking = "A 60 L 5 V, 178 x 13 x 31.75, 3600 rpm"
    case = job("hard plate", wheel="", marking=marking, dress_seconds="8 s")
    view = reviewed(case)
    verdict, wrong = wheel(view, "planned")

    assert verdict == "does not suit"
    assert any("harder" in w for w in wrong)
    assert view.risks[0].cause == "wheel-grade-too-hard"
    fast = reviewed(job("hard plate", wheel="", marking=marking, spindle_speed="4000 rpm"))
    assert "spindle-over-the-mark" in [s.id for s in fast.stops]


def test_a_hardness_alone_tells_which_steel_it_is() -> None:
    case = job("soft block", hardness="62 HRC")
    view = reviewed(replace(case, given={n: a for n, a in case.given.items() if n != MATERIAL}))

    assert view.wanted[0].value.startswith("hardened")
    assert view.cuts
    odd = reviewed(case)  # said to be soft
    assert any("do not go together" in note for note in odd.notes)
