"""A careful plan is left in peace: notes only where they change what a person does."""

from __future__ import annotations

import pytest

from diagnose.review.shaking import SHAKES, new_wheel_force
from tests.review.fresh_jobs import FRESH, fresh
from tests.review.jobs import job, reviewed

PLANTED = [
    ("thin plate on coarse poles", {"lever_or_selector": "full-on"}, "thin-work-pulled-flat"),
    ("thin plate on coarse poles", {"stops_look": "nothing"}, "no-stops-round-the-part"),
    ("pair of parallels",
     {"wheel": "pink-46-i", "balanced_since_mounting": "never-balanced", "dress_seconds": "14 s"},
     "unbalanced-wheel"),
    ("die block ground dry", {"depth_of_cut": "0.04 mm"}, "cut-too-deep"),
    ("hydraulic machine", {"balanced_since_mounting": "never-balanced"}, "unbalanced-wheel"),
    ("iron table, open dress", {"spark_out_strokes": "16"}, "too-many-spark-out-passes"),
    ("slide of gummy steel", {"wheel": "brown-60-l"}, "wheel-grade-too-hard"),
]  # fmt: skip


@pytest.mark.parametrize("name", FRESH)
def test_a_careful_plan_raises_no_stop_no_risk_and_two_lines_at_most(name: str) -> None:
    view = reviewed(fresh(name))

    assert view.stops == ()
    assert view.safe
    assert [r.name for r in view.risks if r.level == "risk"] == []
    assert len(view.risks) + bool(view.brought) <= 2


@pytest.mark.parametrize(("name", "mistake", "cause"), PLANTED)
def test_one_mistake_in_a_careful_plan_comes_first_and_is_a_risk(
    name: str, mistake: dict[str, str], cause: str
) -> None:
    first = reviewed(fresh(name, **mistake)).risks[0]

    assert (first.cause, first.level) == (cause, "risk")
    assert first.shown_by


def test_a_wheel_never_balanced_is_rated_by_its_pull_and_says_it() -> None:
    view = reviewed(job("soft block", balanced_since_mounting="never-balanced"))
    told = " ".join(text for each in view.risks[0].shown_by for text in each.shown)

    assert view.risks[0].cause == "unbalanced-wheel"
    assert "up to about 53 N once a turn" in told


def test_the_pull_grows_with_the_square_of_the_speed_and_with_the_root_of_the_width() -> None:
    narrow, wide, quick = (
        new_wheel_force(0.178, width, turns)
        for width, turns in ((0.01, 40), (0.02, 40), (0.01, 60))
    )

    assert wide / narrow == pytest.approx(2**0.5)
    assert quick / narrow == pytest.approx(2.25)
    assert new_wheel_force(0.15, 0.01, 25) < SHAKES < new_wheel_force(0.2, 0.02, 47.5)


def test_a_slow_small_wheel_never_balanced_does_not_shake_the_machine() -> None:
    left_out = {"balanced_since_mounting": "never-balanced", "spindle_speed": "1400 rpm"}
    slow = reviewed(job("soft block", **left_out))

    assert [r.level for r in slow.risks if r.cause == "unbalanced-wheel"] == ["minor note"]


def test_what_the_part_brings_along_is_one_line_and_no_risk() -> None:
    view = reviewed(fresh("thin plate on coarse poles"))

    assert "thin for the poles" in " ".join(b.name.lower() for b in view.brought)
    assert all(b.do for b in view.brought)
