"""A planted mistake comes first, or stops; a sound set-up is left in peace."""

from __future__ import annotations

import pytest

from tests.review.jobs import SOUND, book, job, reviewed, safe

STOPS = [
    ("soft block", {"spindle_speed": "4200 rpm"}, "spindle-over-the-mark"),
    ("soft block", {"part_thickness": "120 mm", "part_base": "40 mm"}, "tall-part-not-blocked"),
    ("soft block", {"before_anything_runs": "tall-not-blocked"}, "tall-part-not-blocked"),
    ("soft block", {"before_anything_runs": "soaked-while-stopped"}, "wheel-soaked"),
    ("soft block", {"before_anything_runs": "wheel-in-doubt-now"}, "wheel-in-doubt"),
    ("soft block", {"before_anything_runs": "turns-wrong-way"}, "spindle-turns-the-wrong-way"),
    ("soft block", {"before_anything_runs": "guard-is-off"}, "guard-off"),
    ("soft block", {"hold_proved": "moves"}, "magnet-in-doubt"),
    ("soft block", {"the_machine_and_its_power": "inverter-too-fast"}, "inverter-over-the-plate"),
    ("soft block", {"before_the_wheel_meets_the_work": "in-the-way"}, "path-not-clear"),
]
RISKS = [
    ("hard plate", {"wheel_grade": "k-to-m"}, "wheel-grade-too-hard"),
    ("hard plate", {"wheel_grade": "n-or-harder"}, "wheel-grade-too-hard"),
    ("hard plate", {"wheel_abrasive": "silicon-carbide"}, "wheel-wrong-for-the-material"),
    ("hard plate", {"wet_or_dry": "dry", "depth_of_cut": "0.05 mm"}, "cut-too-deep"),
    ("hard plate", {"dress_seconds": "30 s"}, "dressed-too-fine"),
    ("hard plate", {"table_speed": "3 m/min"}, "table-too-slow"),
    ("hard plate", {"diamond_tip": "flat-or-chipped"}, "diamond-blunt"),
    ("hard plate", {"coolant_at_contact": "misses"}, "coolant-misses-the-contact"),
    ("hard plate", {"since_last_dress": "many-parts"}, "wheel-left-undressed"),
    ("hard plate", {"finish": "0.1 um"}, "wheel-grit-too-coarse"),
    ("soft block", {"dress_seconds": "2 s"}, "dress-lead-too-coarse"),
    ("soft block", {"dress_depth": "0.06 mm"}, "dress-too-deep"),
    ("soft block", {"crossfeed": "8 mm", "depth_of_cut": "0.004 mm"}, "crossfeed-too-wide"),
    ("soft block", {"depth_of_cut": "0.05 mm"}, "cut-too-deep"),
    ("soft block", {"stops_look": "nothing"}, "no-stops-round-the-part"),
    ("soft block", {"wiped_and_stoned": "neither"}, "debris-under-part"),
    ("soft block", {"wiped_and_stoned": "wiped-only"}, "debris-under-part"),
    ("soft block", {"measured_when": "at-once"}, "measured-warm-or-burred"),
    ("soft block", {"warmed_up_how_long": "under-ten-minutes"}, "not-warmed-up"),
    ("soft block", {"spark_out_strokes": "0"}, "too-few-spark-out-passes"),
    ("soft block", {"spark_out_strokes": "15"}, "too-many-spark-out-passes"),
    ("soft block", {"brushed_after_dressing": "nothing-cleaned"}, "grit-left-after-dressing"),
    ("soft block", {"trued_since_mounting": "no-truing"}, "wheel-not-trued"),
    ("soft block", {"chuck_off_lately": "off-or-rebolted"}, "chuck-not-parallel"),
    ("soft block", {"overtravel_look": "on-the-part"}, "stroke-too-short"),
    ("thin strip", {"bow_before": "0.1 mm"}, "thin-work-pulled-flat"),
    ("thin strip", {"lever_or_selector": "full-on"}, "thin-work-pulled-flat"),
    ("hard plate", {"crossfeed": "4 mm", "depth_of_cut": "0.003 mm"}, "crossfeed-too-wide"),
    ("thin strip", {"sides_ground": "one-side-only"}, "stress-let-out-on-one-side"),
    ("thin strip", {"depth_of_cut": "0.05 mm", "crossfeed": "3 mm"}, "cut-too-deep"),
]


@pytest.mark.parametrize("name", SOUND)
def test_a_sound_set_up_raises_no_stop_no_risk_and_at_most_two_notes(name: str) -> None:
    view = reviewed(job(name))

    assert view.stops == ()
    assert view.safe
    assert [r.name for r in view.risks if r.level == "risk"] == []
    assert len(view.risks) <= 2


@pytest.mark.parametrize(("name", "mistake", "stop"), STOPS)
def test_a_planted_hazard_stops(name: str, mistake: dict[str, str], stop: str) -> None:
    view = reviewed(job(name, **mistake))

    assert stop in [s.id for s in view.stops]
    assert not view.safe
    assert view.headline.endswith("nothing turns until it is cleared.")
    assert view.first_action == view.stops[0].do_first[0]


@pytest.mark.parametrize(("name", "mistake", "cause"), RISKS)
def test_a_planted_mistake_is_the_first_risk(
    name: str, mistake: dict[str, str], cause: str
) -> None:
    view = reviewed(job(name, **mistake))

    assert view.risks[0].cause == cause
    assert view.risks[0].shown_by
    assert view.risks[0].do
    assert view.stops == ()


def test_a_risk_comes_with_the_number_that_shows_it_and_what_to_change() -> None:
    view = reviewed(job("soft block", depth_of_cut="0.05 mm"))
    risk = view.risks[0]

    told = " ".join(text for each in risk.shown_by for text in each.shown)
    assert "0.05 mm" in told
    assert "0.75 kW" in told
    assert any("not 0.05 mm" in line for line in risk.change)
    assert risk.after < 0.5 * risk.here


def test_the_hazards_nobody_spoke_of_are_asked_before_anything_turns() -> None:
    case = job("soft block")
    given = {n: a for n, a in case.given.items() if n not in safe()}
    from dataclasses import replace

    view = reviewed(replace(case, given=given))

    assert view.stops == ()
    assert not view.safe
    named = {s.name for s in book().stops.values() if s.kind == "stop"}
    assert set(view.open_hazards) <= named
    assert len(view.open_hazards) > 5
    assert {c.id for c in view.first_checks} <= {s.asked_by for s in book().stops.values()}
    assert view.first_action == view.first_checks[0].ask
