"""Numbers worked out for the trade notes, by hand and apart from the code."""

from __future__ import annotations

import math

import pytest

from diagnose.physics.balance import (
    eccentric_unbalance,
    felt_by_ways,
    grade_reached,
    permissible_unbalance,
    unbalance_force,
)
from diagnose.physics.bowing import bow_from_stress, bow_ratio, stress_from_bow, thermal_bow
from diagnose.physics.catalogue import calculation
from diagnose.physics.cutting import (
    aggressiveness,
    crossfeed_overlap,
    equivalent_chip,
    removal_per_width,
)
from diagnose.physics.dressing import cusp_height, seconds_for_overlap
from diagnose.physics.heat import burn_threshold, warm_growth
from diagnose.physics.holding import (
    bow_returned,
    flattening_pressure,
    slide_hold,
    thickness_pulled_flat,
)
from diagnose.physics.power import area_ceiling, ceiling_share, deep_way, thin_way
from diagnose.physics.wear import (
    depth_left,
    effective_ratio,
    spark_out_passes,
    strokes_until_dress,
)
from diagnose.physics.wheel import wheel_speed

HALF_HORSE, ONE_HORSE = 373.0, 750.0
HARD, SOFT = 60e9, 40e9
TABLE = 0.2  # m/s, 12 m/min
RPM = 1 / 60


@pytest.mark.parametrize(
    ("diameter", "rpm", "speed"),
    [(0.1778, 3450, 32.1), (0.2032, 3450, 36.7), (0.2032, 2850, 30.3), (0.18, 2850, 26.9)],
)
def test_rim_speeds_of_common_wheels(diameter: float, rpm: float, speed: float) -> None:
    assert wheel_speed(diameter, rpm * RPM) == pytest.approx(speed, abs=0.06)


@pytest.mark.parametrize(
    ("power", "energy", "square_millimetres"),
    [
        (HALF_HORSE, HARD, 0.022),
        (HALF_HORSE, SOFT, 0.033),
        (ONE_HORSE, HARD, 0.044),
        (ONE_HORSE, SOFT, 0.066),
        (1100.0, HARD, 0.064),
        (1100.0, SOFT, 0.096),
    ],
)
def test_the_ceiling_of_small_motors(
    power: float, energy: float, square_millimetres: float
) -> None:
    assert area_ceiling(power, energy, TABLE) * 1e6 == pytest.approx(square_millimetres, abs=6e-4)


def test_the_production_row_asks_eleven_times_what_half_a_horse_gives() -> None:
    assert ceiling_share(HALF_HORSE, HARD, TABLE, 76.2e-6, 3.175e-3) == pytest.approx(
        11.2, abs=0.15
    )


def test_a_thin_cut_with_a_quarter_horse_of_hard_steel_stays_under_the_ceiling() -> None:
    area = area_ceiling(HALF_HORSE, HARD, TABLE)
    for depth, crossfeed in (deep_way(0.9 * area), thin_way(0.9 * area, 3.2e-3)):
        assert depth * crossfeed <= area
        assert depth <= 50e-6


@pytest.mark.parametrize(
    ("ratio", "fewest", "most"), [(2, 50, 110), (5, 130, 270), (20, 530, 1070)]
)
def test_strokes_until_the_dress_spread_with_the_grinding_ratio(
    ratio: float, fewest: float, most: float
) -> None:
    shape = {"wheel_diameter": 0.178, "wheel_width": 0.013, "crossfeed": 3e-4, "part_length": 0.15}
    assert strokes_until_dress(0.5 * ratio, **shape) == pytest.approx(fewest, rel=0.08)
    assert strokes_until_dress(1.0 * ratio, **shape) == pytest.approx(most, rel=0.03)
    had = strokes_until_dress(ratio, **shape)
    assert effective_ratio(had, **shape) == pytest.approx(ratio)


@pytest.mark.parametrize(
    ("overlap", "least", "most"), [(2, 2, 4), (4, 4, 8), (6, 6, 12), (8, 8, 16)]
)
def test_seconds_across_a_half_inch_face(overlap: float, least: float, most: float) -> None:
    blunt = seconds_for_overlap(overlap, 0.013, 47.5, 0.38e-3, 25e-6)
    sharp = seconds_for_overlap(overlap, 0.013, 47.5, 0.25e-3, 10e-6)
    assert blunt == pytest.approx(least, rel=0.05)
    assert sharp == pytest.approx(most, rel=0.05)


@pytest.mark.parametrize(("lead", "height"), [(0.1367e-3, 6.1e-6), (0.0683e-3, 1.5e-6)])
def test_the_thread_on_the_wheel(lead: float, height: float) -> None:
    assert cusp_height(lead, 0.381e-3) == pytest.approx(height, abs=6e-8)


@pytest.mark.parametrize(
    ("diameter", "depth", "speed", "energy"),
    [(0.2, 2e-5, 0.2, 42), (0.2, 1e-5, 0.25, 60), (0.18, 2.5e-5, 0.25, 33), (0.2, 5e-5, 0.25, 22)],
)
def test_burn_thresholds_in_joules_a_cubic_millimetre(
    diameter: float, depth: float, speed: float, energy: float
) -> None:
    ours = burn_threshold(depth, diameter, speed) * 1e-9
    assert ours == pytest.approx(energy, abs=0.6)


@pytest.mark.parametrize(
    ("length", "thickness", "kelvin", "bow"),
    [(150, 6, 5, 28), (300, 10, 5, 67.5), (300, 10, 1, 13.5), (200, 5, 2, 24)],
)
def test_bows_of_plates_warm_on_one_side(
    length: float, thickness: float, kelvin: float, bow: float
) -> None:
    ours = thermal_bow(kelvin, length * 1e-3, thickness * 1e-3) * 1e6
    assert ours == pytest.approx(bow, abs=0.2)


def test_the_stress_of_a_skin_that_bows_a_six_millimetre_plate() -> None:
    stress = stress_from_bow(5e-5, 0.15, 6e-3, 5e-5)
    assert stress * 1e-6 == pytest.approx(616, abs=1)
    assert bow_from_stress(stress, 0.15, 6e-3, 5e-5) == pytest.approx(5e-5)
    assert stress_from_bow(5e-5, 0.15, 6e-3, 5e-5, poisson=0.0) * 1e-6 == pytest.approx(437, abs=1)


@pytest.mark.parametrize(
    ("thickness", "newtons"), [(3, 0.35), (5, 1.6), (10, 13), (15, 44), (25, 202)]
)
def test_pressures_that_pull_a_bow_flat(thickness: float, newtons: float) -> None:
    ours = flattening_pressure(5e-5, 0.15, thickness * 1e-3) * 1e-4
    assert ours == pytest.approx(newtons, rel=0.03)


@pytest.mark.parametrize(
    ("length", "thickness"), [(50, 2.8), (100, 7), (150, 12), (200, 17), (300, 30)]
)
def test_plates_the_magnet_pulls_flat(length: float, thickness: float) -> None:
    ours = thickness_pulled_flat(75e4, 5e-5, length * 1e-3) * 1e3
    assert ours == pytest.approx(thickness, rel=0.04)


def test_a_thin_plate_gives_back_all_of_its_bow_and_a_thick_one_little() -> None:
    assert bow_returned(75e4, 5e-5, 0.15, 5e-3) == 5e-5
    assert bow_returned(75e4, 5e-5, 0.15, 40e-3) < 1e-5


def test_a_bow_that_is_there_while_held_and_one_that_comes_with_the_release() -> None:
    assert bow_ratio(0.04e-3, 0.05e-3) == pytest.approx(0.8)
    assert bow_ratio(0.0, 0.05e-3) == 0.0
    back = bow_returned(75e4, 0.1e-3, 0.15, 4e-3)
    assert bow_ratio(0.09e-3, back) == pytest.approx(0.9)


def test_a_small_hardened_piece_at_half_pull_holds_less_than_one_horse_pushes() -> None:
    hold = slide_hold(0.5 * 75e4, 0.025, 0.025, 0.1)
    assert hold == pytest.approx(23, abs=0.5)
    assert hold < 750.0 / 30.0


def test_balance_of_a_common_wheel() -> None:
    assert unbalance_force(5e-3 * 0.08, 47.5) == pytest.approx(35.6, abs=0.05)
    assert unbalance_force(1e-3 * 0.09, 57.5) == pytest.approx(11.7, abs=0.05)
    assert eccentric_unbalance(1.5, 5e-5) * 1e6 == pytest.approx(75)
    assert grade_reached(75e-6, 1.5, 47.5) * 1e3 == pytest.approx(15, abs=0.1)
    assert grade_reached(0.2e-3 * 0.09, 1.5, 47.5) * 1e3 == pytest.approx(3.5, abs=0.1)
    low, high = (grade_reached(felt_by_ways(1.5, arm), 1.5, 47.5) for arm in (5e-6, 20e-6))
    assert (low * 1e3, high * 1e3) == pytest.approx((1.5, 6.0), abs=0.05)


@pytest.mark.parametrize(
    ("grade", "rpm", "micrometres"),
    [(0.4, 2850, 1.34), (0.4, 3450, 1.11), (1, 2850, 3.35), (2.5, 3450, 6.9)],
)
def test_offsets_of_the_balance_grades(grade: float, rpm: float, micrometres: float) -> None:
    offset = permissible_unbalance(grade * 1e-3, 1.0, rpm * RPM)
    assert offset * 1e6 == pytest.approx(micrometres, abs=0.03)


def test_spark_out_of_springy_and_stiff_machines() -> None:
    assert depth_left(1e-5, 0.5, 4) == pytest.approx(0.0625e-5)
    assert depth_left(1e-5, 0.35, 5) == pytest.approx(0.116e-5, rel=0.01)
    assert depth_left(1e-5, 0.35, 7) == pytest.approx(0.049e-5, rel=0.01)
    assert spark_out_passes(0.35, 0.05) == 7
    assert spark_out_passes(1.0, 0.05) == 1


def test_small_sums_of_the_facts() -> None:
    assert warm_growth(0.05, 10) == pytest.approx(6e-6)
    assert removal_per_width(2e-5, 0.25) == pytest.approx(5e-6)
    assert equivalent_chip(2e-5, 0.25, 30) == pytest.approx(0.167e-6, abs=1e-9)
    assert aggressiveness(2e-5, 0.2, 0.25, 30) == pytest.approx(83, abs=0.5)


def test_the_worn_belt_step_trap() -> None:
    """A speed set for a worn 127 mm stub drives the next new 178 mm wheel at 42 m/s."""
    rpm = 60 * 30.0 / (math.pi * 0.127)
    assert rpm == pytest.approx(4510, abs=2)
    assert wheel_speed(0.178, rpm / 60) == pytest.approx(42, abs=0.1)


@pytest.mark.parametrize(("grade", "reachable"), [(0.4e-3, False), (1e-3, False), (2.5e-3, True)])
def test_grades_finer_than_the_ways_can_feel_are_not_promised(
    grade: float, reachable: bool
) -> None:
    given = {"balance_grade": grade, "rotor_mass": 1.5, "turning_speed": 47.5}
    said = calculation("permissible-unbalance").meaning(given, permissible_unbalance(**given))
    assert said.startswith("Finer than level ways can feel") is not reachable


@pytest.mark.parametrize(
    ("crossfeed", "passes", "said"),
    [
        (4e-3, 3.25, "Few for a finish"),
        (3.2e-3, 4.06, "Enough for soft steel"),
        (1.3e-3, 10.0, "Enough for a fine"),
    ],
)
def test_a_quarter_of_the_face_is_four_passes_over_each_place(
    crossfeed: float, passes: float, said: str
) -> None:
    given = {"wheel_width": 0.013, "crossfeed": crossfeed}
    worked = crossfeed_overlap(**given)
    assert worked == pytest.approx(passes, rel=0.01)
    assert calculation("crossfeed-overlap").meaning(given, worked).startswith(said)
