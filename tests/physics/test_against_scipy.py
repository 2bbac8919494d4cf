"""Our quantiles, least squares, spectrum and filter against a general reference library."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from scipy import linalg, ndimage, optimize, signal, stats

from diagnose.physics.grids import grid
from diagnose.physics.quantiles import chi_square_quantile, student_quantile
from diagnose.physics.reference import Against, Setting
from diagnose.physics.roughness import ALPHA, mean_line
from diagnose.physics.shape import split
from diagnose.physics.spectrum import find_waves, spectrum


@pytest.mark.parametrize("dof", [1, 2, 3, 4, 5, 9, 30, 101, 1000])
@pytest.mark.parametrize("p", [0.5, 0.9, 0.975, 0.9995, 1 - 1e-8])
def test_student_quantiles_agree(dof: int, p: float) -> None:
    assert student_quantile(p, dof) == pytest.approx(stats.t.ppf(p, dof), rel=1e-6, abs=1e-12)


@pytest.mark.parametrize("dof", [1, 2, 3, 4, 5, 9, 30, 101, 1000])
@pytest.mark.parametrize("p", [0.025, 0.5, 0.95, 0.975])
def test_chi_square_quantiles_agree(dof: int, p: float) -> None:
    assert chi_square_quantile(p, dof) == pytest.approx(stats.chi2.ppf(p, dof), rel=1e-9)


@pytest.mark.parametrize("dof", [0, -1])
def test_quantiles_without_degrees_of_freedom_are_refused(dof: int) -> None:
    with pytest.raises(ValueError, match="quantile"):
        student_quantile(0.975, dof)
    with pytest.raises(ValueError, match="quantile"):
        chi_square_quantile(0.975, dof)


def test_the_split_is_the_least_squares_of_the_library() -> None:
    heights = np.random.default_rng(1).normal(0, 1e-6, (5, 7))
    y, x = np.meshgrid(np.linspace(-1, 1, 5), np.linspace(-1, 1, 7), indexing="ij")
    columns = np.column_stack([f.ravel() for f in (np.ones_like(x), x, y, x * y, x * x, y * y)])
    solution, squares, *_ = linalg.lstsq(columns, heights.ravel())
    sigma = math.sqrt(squares / (35 - 6))
    spread = sigma * np.sqrt(np.diag(linalg.inv(columns.T @ columns)))
    found = split(grid(heights, Setting(Against.PLATE)))

    assert found.term("tilt-along").value == pytest.approx(2 * solution[1], rel=1e-10)
    assert found.term("twist").value == pytest.approx(4 * solution[3], rel=1e-10)
    assert found.term("crown-across").value == pytest.approx(-solution[5], rel=1e-10)
    half = stats.t.ppf(0.975, 29) * spread[4]
    assert found.term("crown-along").plus_minus == pytest.approx(half, rel=1e-8)
    assert found.term("rest").value == pytest.approx(sigma, rel=1e-10)


def test_the_spectrum_is_the_periodogram_of_the_library() -> None:
    values = np.random.default_rng(2).normal(0, 1, 500)
    window = np.hanning(500)
    frequencies, power = signal.periodogram(
        values, window=window, detrend=False, scaling="spectrum"
    )
    ours = spectrum(values)

    assert ours.frequencies == pytest.approx(frequencies)
    # The library's one-sided power is half the amplitude squared, but for both ends.
    assert ours.amplitudes[1:-1] == pytest.approx(np.sqrt(2 * power[1:-1]), rel=1e-9)


def test_two_waves_are_where_the_librarys_least_squares_puts_them() -> None:
    t = np.arange(700.0)
    values = np.sin(0.20 * t + 1) + 0.6 * np.sin(0.23 * t + 2)
    values = values + np.random.default_rng(3).normal(0, 0.4, 700)

    def left(p: Any) -> Any:
        waves = p[0] * np.sin(p[1] * t + p[2]) + p[3] * np.sin(p[4] * t + p[5])
        return waves + p[6] + p[7] * t + p[8] * t * t - values

    best = optimize.least_squares(left, [1, 0.2, 1, 0.6, 0.23, 2, 0, 0, 0], x_scale="jac")
    ours = sorted(2 * math.pi * wave.frequency for wave in find_waves(values)[:2])

    assert ours == pytest.approx(sorted((best.x[1], best.x[4])), abs=1e-5)


def test_the_mean_line_is_the_gaussian_of_the_library() -> None:
    heights = np.random.default_rng(4).normal(0, 1, 4000).cumsum()
    step, cut = 1e-6, 0.25e-3
    sigma = ALPHA * cut / step / math.sqrt(2 * math.pi)
    library = ndimage.gaussian_filter1d(heights, sigma, radius=250)
    inside = slice(250, -250)

    assert mean_line(heights, step, cut)[inside] == pytest.approx(library[inside], rel=1e-9)
