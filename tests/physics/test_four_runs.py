"""Four runs find the weight and the angle of an invented unbalance."""

from __future__ import annotations

import cmath
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.physics.errors import OutOfRange
from diagnose.physics.four_runs import THIRD, RunsError, correction


def readings(mass: float, angle: float, trial: float, scale: float) -> list[float]:
    heavy = cmath.rect(mass, angle)
    weights = [0, *(cmath.rect(trial, i * THIRD) for i in range(3))]
    return [scale * abs(heavy + weight) for weight in weights]


@given(
    st.floats(1e-4, 2e-2),
    st.floats(0, 2 * math.pi),
    st.floats(0.2, 4.0),
    st.floats(0.1, 1000.0),
)
def test_the_weight_found_cancels_the_heavy_spot(
    mass: float, angle: float, share: float, scale: float
) -> None:
    trial = share * mass
    found = correction(*readings(mass, angle, trial, scale), trial)
    left = cmath.rect(mass, angle) + cmath.rect(found.mass, found.angle)
    assert abs(left) < 1e-4 * mass
    assert found.mismatch < 1e-4


def test_a_trial_weight_that_does_nothing_is_refused() -> None:
    with pytest.raises(RunsError, match="heavier one"):
        correction(10.0, 10.0, 10.0, 10.0, 1e-3)


def test_readings_that_do_not_belong_together_are_told() -> None:
    assert correction(10.0, 8.0, 12.0, 15.0, 3e-3).mismatch > 0.15


def test_a_reading_below_zero_is_refused() -> None:
    with pytest.raises(OutOfRange, match="bare"):
        correction(-1.0, 8.0, 12.0, 15.0, 3e-3)
