"""Numbers of the marks that we worked out ourselves, or that the trade notes did."""

from __future__ import annotations

import pytest

from diagnose.physics.running_parts import belt_frequency, motor_turning_speed, rack_tooth_spacing
from diagnose.physics.sampling import alias_frequency, highest_shown_frequency
from diagnose.physics.trials import table_speed_trial
from diagnose.physics.vibration import (
    deepest_wave,
    hand_stroke_peak_speed,
    mark_frequency,
    mark_frequency_uncertainty,
    mark_spacing,
    wheel_turn_spacing,
)

MM, M_MIN, RPM = 1e-3, 1 / 60, 1 / 60


@pytest.mark.parametrize(
    ("table", "wheel", "spacing"),
    [
        (10, 2850, 3.51), (10, 3450, 2.90), (15, 2850, 5.26),
        (15, 3450, 4.35), (20, 2850, 7.02), (20, 3450, 5.80),
    ],
)  # fmt: skip
def test_spacing_of_one_turn_of_the_wheel(table: float, wheel: float, spacing: float) -> None:
    assert wheel_turn_spacing(table * M_MIN, wheel * RPM) == pytest.approx(spacing * MM, rel=2e-3)


@pytest.mark.parametrize(("hertz", "spacing"), [(100, 2.50), (120, 2.08)])
def test_motor_hum_at_15_metres_a_minute(hertz: float, spacing: float) -> None:
    assert mark_frequency(spacing * MM, 15 * M_MIN) == pytest.approx(hertz, rel=2e-3)


@pytest.mark.parametrize(("pitch", "depth"), [(1, 1.4), (4, 22)])
def test_a_178_mm_wheel_cannot_cut_deeper_waves(pitch: float, depth: float) -> None:
    assert deepest_wave(pitch * MM, 0.178) == pytest.approx(depth * 1e-6, rel=0.03)


@pytest.mark.parametrize(("true", "shown"), [(57.5, 42.5), (120, 20), (30, 30)])
def test_at_100_samples_a_second_a_fast_shake_shows_at_a_false_place(
    true: float, shown: float
) -> None:
    assert alias_frequency(true, 100) == pytest.approx(shown)


def test_a_recording_is_read_to_four_tenths_of_its_rate() -> None:
    assert highest_shown_frequency(100) == pytest.approx(40)


@pytest.mark.parametrize(("module", "spacing"), [(1.5, 4.7), (25.4 / 16, 5.0)])
def test_rack_teeth_lie_on_top_of_one_turn_of_the_wheel(module: float, spacing: float) -> None:
    assert rack_tooth_spacing(module * MM) == pytest.approx(spacing * MM, rel=0.01)


def test_the_middle_of_a_hand_stroke_runs_57_per_cent_faster_than_the_mean() -> None:
    assert hand_stroke_peak_speed(0.2) / 0.2 == pytest.approx(1.57, abs=1e-3)


def test_a_belt_comes_round_more_seldom_than_either_pulley_turns() -> None:
    once = belt_frequency(0.070, 57.5, 0.9)
    assert once == pytest.approx(14.05, abs=0.01)
    assert once < 57.5 * 70 / 120  # the bigger pulley


def test_a_two_pole_motor_on_50_hz_with_5_per_cent_slip_runs_2850() -> None:
    assert motor_turning_speed(50, 2, 0.05) == pytest.approx(2850 * RPM)


def test_eight_spaces_in_an_inch() -> None:
    assert mark_spacing(8, 25.4 * MM) == pytest.approx(3.175 * MM)


def test_three_and_four_per_cent_make_five() -> None:
    assert mark_frequency_uncertainty(1 * MM, 0.03 * MM, 0.1, 0.004) == pytest.approx(5.0)


def test_the_wheel_follows_the_table_speed_and_the_rack_does_not() -> None:
    assert table_speed_trial(3 * MM, 0.1, 6 * MM, 0.2) == pytest.approx(1.0)
    assert table_speed_trial(4.7 * MM, 0.1, 4.7 * MM, 0.2) == pytest.approx(0.0)
