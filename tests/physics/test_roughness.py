"""Roughness of a profile: ends, cut-off, refusals."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.physics.errors import OutOfRange
from diagnose.physics.grades import depth_ratio, grade, grade_limit, what_the_ratio_says
from diagnose.physics.readings import BadReadings
from diagnose.physics.roughness import mean_line, roughness
from diagnose.physics.trace import Pickup, Trace, trace


def grainy(samples: int, step: float, ra: float, seed: int = 0) -> Trace:
    """A profile of random grains a few micrometres wide with about this Ra (m)."""
    kernel = np.exp(-(np.arange(-30, 31) ** 2) / 200.0)
    kernel /= math.sqrt(float((kernel**2).sum()))
    white = np.random.default_rng(seed).normal(0, 1.25 * ra, samples + 60)
    return trace(np.convolve(white, kernel, "valid"), Pickup.PROFILE, step)


def test_a_slope_and_a_high_place_leave_no_roughness() -> None:
    slope = 1.0 + 1e-3 * np.linspace(0, 1, 6000)
    found = roughness(trace(slope, Pickup.PROFILE, 1e-6))
    assert found.ra < 1e-12


def test_a_long_profile_is_measured_over_five_cut_offs_in_the_middle() -> None:
    found = roughness(grainy(11_200, 0.5e-6, 0.4e-6))

    assert found.sampling_lengths == 5
    assert len(found.profile) == 8000
    assert found.ra == pytest.approx(0.4e-6, rel=0.1)
    assert found.rq == pytest.approx(1.25 * found.ra, rel=0.05)
    assert found.ra <= found.rq <= found.rz <= found.rt


@pytest.mark.parametrize(
    ("ra", "step", "cut"),
    [(0.05e-6, 0.5e-6, 0.25e-3), (0.4e-6, 0.5e-6, 0.8e-3), (4e-6, 2e-6, 2.5e-3)],
)
def test_the_cut_off_is_the_one_the_roughness_asks_for(ra: float, step: float, cut: float) -> None:
    assert roughness(grainy(12_000, step, ra)).cut_off == pytest.approx(cut)


def test_a_short_profile_says_what_it_could_not_do() -> None:
    found = roughness(grainy(1700, 0.5e-6, 0.4e-6))
    assert any("evaluated to its ends" in note for note in found.notes)
    assert any("Rz is less sure" in note for note in found.notes)


def test_a_profile_too_short_for_its_roughness_says_which_cut_off_it_wanted() -> None:
    found = roughness(grainy(4000, 0.5e-6, 4e-6))
    assert found.cut_off == pytest.approx(0.8e-3)
    assert any("asks for a cut-off of 2.5 mm" in note for note in found.notes)


def test_one_deep_scratch_shows_in_the_ratio() -> None:
    even = grainy(11_200, 0.5e-6, 0.4e-6)
    scratched = even.samples.copy()
    for start in range(1500, 10_000, 1600):
        scratched[start : start + 20] -= 6e-6
    found = roughness(trace(scratched, Pickup.PROFILE, 0.5e-6))

    assert found.depth_ratio > 10
    assert any("scratches" in note for note in found.notes)
    assert 5 <= roughness(even).depth_ratio <= 8


def test_a_recording_in_time_has_no_roughness() -> None:
    with pytest.raises(BadReadings, match="along the work"):
        roughness(trace(np.zeros(5000), Pickup.MICROPHONE, 1e-4))


def test_a_coarse_profile_is_refused() -> None:
    with pytest.raises(BadReadings, match="too short or too coarse"):
        roughness(trace(np.zeros(100), Pickup.PROFILE, 1e-3))
    with pytest.raises(OutOfRange):
        roughness(trace(np.zeros(1000), Pickup.PROFILE, 0.1e-3), cut_off=0.8e-3)
    with pytest.raises(OutOfRange):
        mean_line(np.zeros(100), 0.1e-3, 0.8e-3)


def test_grades_outside_the_table_are_refused() -> None:
    for number in (0, 13, 6.5, math.nan):
        with pytest.raises(OutOfRange):
            grade_limit(number)
    for ra in (-1e-9, 51e-6, math.inf):
        with pytest.raises(OutOfRange):
            grade(ra)
    with pytest.raises(OutOfRange):
        depth_ratio(0.1e-6, 0.2e-6)


@pytest.mark.parametrize(
    ("ratio", "said"), [(4, "waves"), (6, "usual"), (9, "little above"), (12, "scratches")]
)
def test_what_rz_over_ra_says(ratio: float, said: str) -> None:
    assert said in what_the_ratio_says(ratio)


@settings(max_examples=40, deadline=None)
@given(st.floats(1e-9, 1e-4), st.integers(0, 1000), st.integers(800, 4000))
def test_any_profile_gives_finite_roughness_in_order(ra: float, seed: int, samples: int) -> None:
    profile: Any = grainy(samples, 1e-6, ra, seed)
    try:
        found = roughness(profile)
    except (BadReadings, OutOfRange):
        return
    assert 0 < found.ra <= found.rq <= found.rt < math.inf
    assert 0 < found.rz <= found.rt * (1 + 1e-12)


@settings(max_examples=100, deadline=None)
@given(st.floats(1e-9, 50e-6))
def test_a_finer_grade_is_never_met_by_chance(ra: float) -> None:
    number = grade(ra)
    assert ra <= grade_limit(number) * (1 + 1e-8)
    if number > 1:
        assert ra > grade_limit(number - 1)
