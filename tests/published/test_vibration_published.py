"""Published examples of marks, bearings and trials. The source stands beside each check."""

from __future__ import annotations

import math

import pytest

from diagnose.physics.bearings import (
    ball_frequency,
    cage_frequency,
    inner_race_frequency,
    outer_race_frequency,
)
from diagnose.physics.running_parts import rack_tooth_spacing
from diagnose.physics.trials import (
    Chatter,
    forced_or_self_excited,
    wheel_speed_trial,
)
from diagnose.physics.vibration import mark_frequency, marks_per_wheel_turn
from tests.published.sources import (
    BEARING_PAGE,
    CHATTER,
    DEFECT_PAGE,
    FAULT_DATA,
    ISO_54,
    TEST_RIG,
    published,
)

INCH = 0.0254


@published(CHATTER, "confirmed")
class TestChatterOfACylindricalPart:
    """Cutting Tool Engineering, April 2011, "Origins of chatter": 16 in wheel at 12,000 sfpm,
    work 40 rpm, 70 marks round the part (confirmed)."""

    work_turning = 40 / 60
    diameter = 3 * INCH  # drops out
    table_speed = math.pi * diameter * work_turning
    spacing = math.pi * diameter / 70
    wheel_turning = 12_000 / (math.pi * 16 / 12) / 60

    def test_seventy_marks_are_47_hz(self) -> None:
        assert mark_frequency(self.spacing, self.table_speed) == pytest.approx(47, abs=0.5)

    def test_the_wheel_turns_2866_times_a_minute(self) -> None:
        assert self.wheel_turning * 60 == pytest.approx(2866, abs=2)

    def test_the_marks_come_about_once_a_turn_of_the_wheel(self) -> None:
        ratio = marks_per_wheel_turn(self.spacing, self.table_speed, self.wheel_turning)
        assert ratio == pytest.approx(70 / 71.65, rel=1e-3)

    def test_54_marks_at_9000_sfpm_are_forced_by_the_wheel(self) -> None:
        slow = 2150 / 60
        followed = wheel_speed_trial(
            54 * self.work_turning, slow, 70 * self.work_turning, 2866 / 60
        )
        verdict = forced_or_self_excited(follows_wheel_speed=followed)
        assert verdict.verdict is Chatter.FORCED

    def test_still_47_hz_at_9000_sfpm_is_self_excited(self) -> None:
        followed = wheel_speed_trial(47, 2150 / 60, 47, 2866 / 60)
        verdict = forced_or_self_excited(follows_wheel_speed=followed)
        assert verdict.verdict is Chatter.SELF_EXCITED


@published(BEARING_PAGE, "confirmed")
def test_bearing_of_eight_balls_at_1800_rpm() -> None:
    """codingace.net, bearing fault frequency (confirmed): d 10, D 50 mm: 12, 96, 144, 72 Hz."""
    shape = (30.0, 0.010, 0.050)

    assert cage_frequency(*shape) == pytest.approx(12)
    assert outer_race_frequency(8, *shape) == pytest.approx(96)
    assert inner_race_frequency(8, *shape) == pytest.approx(144)
    assert ball_frequency(*shape) == pytest.approx(72)


@published(DEFECT_PAGE, "confirmed")
def test_bearing_6205_at_1500_rpm() -> None:
    """vibromera.eu, bearing defect frequencies (confirmed): d 7.94, D 38.5 mm, 9 balls."""
    shape = (25.0, 0.00794, 0.0385)

    assert cage_frequency(*shape) == pytest.approx(9.92, abs=0.005)
    assert outer_race_frequency(9, *shape) == pytest.approx(89.3, abs=0.05)
    assert inner_race_frequency(9, *shape) == pytest.approx(135.7, abs=0.05)


@published(TEST_RIG, "from memory")
def test_orders_of_the_test_rig_bearing() -> None:
    """Case Western Reserve University bearing data (3.5848 confirmed, others from memory)."""
    shape = (1.0, 0.3126 * INCH, 1.537 * INCH)

    assert outer_race_frequency(9, *shape) == pytest.approx(3.5848, abs=2e-4)
    assert inner_race_frequency(9, *shape) == pytest.approx(5.4152, abs=2e-4)
    assert cage_frequency(*shape) == pytest.approx(0.39828, abs=2e-4)
    assert 30 * outer_race_frequency(9, *shape) == pytest.approx(107.54, abs=0.02)


@published(FAULT_DATA, "confirmed")
def test_fault_frequencies_of_an_open_bearing_record() -> None:
    """MFPT bearing fault data, 25 Hz shaft (read): outer race 81.125, inner race 118.875, cage
    14.8375, ball 63.91 Hz. Geometry from memory: 8 balls, d 0.235, D 1.245 in.

    The cage is stated for the other ring at rest: turning speed less ours. Its recordings (97,656
    samples a second; CC BY-NC-SA, so not shipped here) went once through `envelope` (2 to 10 kHz)
    and `find_peaks`: 80.5 and 80.7 Hz on two outer-race faults, 117.9 and 118.0 Hz on two
    inner-race faults, each .5 to .8 % low as slip makes them; no peak on the healthy bearing.
    """
    shape = (25.0, 0.235 * INCH, 1.245 * INCH)

    assert outer_race_frequency(8, *shape) == pytest.approx(81.125, rel=1e-3)
    assert inner_race_frequency(8, *shape) == pytest.approx(118.875, rel=1e-3)
    assert ball_frequency(*shape) == pytest.approx(63.91, rel=1e-3)
    assert 25.0 - cage_frequency(*shape) == pytest.approx(14.8375, rel=2e-3)


@published(ISO_54, "from memory")
def test_a_module_one_rack_has_its_teeth_pi_millimetres_apart() -> None:
    """ISO 54, definition of the module (from memory)."""
    assert rack_tooth_spacing(0.001) == pytest.approx(3.14159e-3, rel=1e-5)
