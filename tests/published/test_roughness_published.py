"""Roughness tables and filter against their standards and a surface-texture library."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest

from diagnose.physics.grades import CUT_OFFS, cut_off, evaluation_length, grade, grade_limit
from diagnose.physics.roughness import mean_line, roughness, transmission
from diagnose.physics.trace import Pickup, trace
from tests.published.sources import (
    FINISHING,
    ISO_4288,
    ISO_16610,
    N_GRADES,
    RATIO_PAGE,
    TEXTURE,
    published,
)


@published(N_GRADES, "confirmed")
@pytest.mark.parametrize(
    ("number", "micrometres", "microinches"),
    [
        (1, 0.025, 1), (2, 0.05, 2), (3, 0.1, 4), (4, 0.2, 8), (5, 0.4, 16), (6, 0.8, 32),
        (7, 1.6, 63), (8, 3.2, 125), (9, 6.3, 250), (10, 12.5, 500), (11, 25, 1000), (12, 50, 2000),
    ],
)  # fmt: skip
def test_grades_of_iso_1302(number: int, micrometres: float, microinches: float) -> None:
    """roymech.org, surface finish values; a second published N table (confirmed)."""
    assert grade(micrometres * 1e-6) == number
    assert grade_limit(number) == pytest.approx(micrometres * 1e-6)
    assert grade_limit(number) == pytest.approx(microinches * 25.4e-9, rel=0.02)


@published(FINISHING, "confirmed")
def test_a_roughness_above_the_limit_does_not_qualify() -> None:
    """finishing.com 75/60 (confirmed): 7.4 µm is N10, not N9."""
    assert grade(7.4e-6) == 10


@published(ISO_4288, "from memory")
@pytest.mark.parametrize(
    ("up_to", "millimetres", "over"),
    [(0.02, 0.08, 0.4), (0.1, 0.25, 1.25), (2, 0.8, 4), (10, 2.5, 12.5), (80, 8, 40)],
)
def test_cut_offs_of_iso_4288(up_to: float, millimetres: float, over: float) -> None:
    """ISO 4288:1996 (first two rows confirmed, the rest from memory); lengths as ISO 21920-3."""
    assert cut_off(up_to * 1e-6) == pytest.approx(millimetres * 1e-3)
    assert evaluation_length(up_to * 1e-6) == pytest.approx(over * 1e-3)


@published(ISO_4288, "from memory")
def test_the_limits_of_rz_are_five_times_those_of_ra_up_to_10_micrometres() -> None:
    """ISO 4288:1996 (from memory)."""
    assert [row.rz / row.ra for row in CUT_OFFS[:4]] == pytest.approx([5, 5, 5, 5])


@published(ISO_16610, "from memory")
@pytest.mark.parametrize(("ratio", "share"), [(1.0, 0.5), (2.0, 0.5**0.25), (0.5, 0.5**4)])
def test_the_filter_passes_a_half_at_the_cut_off(ratio: float, share: float) -> None:
    """ISO 16610-21: 50 % at the cut-off, exp(-pi (alpha lc / l)^2) elsewhere (from memory)."""
    step, cut = 1e-6, 0.8e-3
    x = step * np.arange(20_000)
    wave = np.cos(2 * math.pi * (x - x.mean()) / (ratio * cut))

    middle = mean_line(wave, step, cut)[10_000]

    assert transmission(ratio * cut, cut) == pytest.approx(share)
    assert middle == pytest.approx(share, abs=2e-4)


@published(RATIO_PAGE, "confirmed")
def test_a_sine_has_ra_two_over_pi_and_rq_one_over_root_two_of_its_height() -> None:
    """Textbook; hence Rq / Ra = 1.11 (leebhardnesstesters.com uses 1.1, confirmed)."""
    step, wavelength = 0.5e-6, 50e-6
    heights = 1e-6 * np.sin(2 * math.pi * step * np.arange(11_200) / wavelength)

    found = roughness(trace(heights, Pickup.PROFILE, step))

    assert found.ra == pytest.approx(2e-6 / math.pi, rel=1e-3)
    assert found.rq == pytest.approx(1e-6 / math.sqrt(2), rel=1e-3)
    assert found.rz == pytest.approx(2e-6, rel=1e-3)


def _wavy_ground_profile(start: int) -> Any:
    x = 0.5e-6 * np.arange(11_201)
    heights = 1.5e-6 * np.sin(2 * math.pi * x / 2.5e-3 + 0.3 * start)
    for k in range(1, 120):
        heights = heights + 0.08e-6 * np.sin(2 * math.pi * x / (6e-6 * 1.035**k) + start * k * k)
    return heights


@published(TEXTURE, "run")
@pytest.mark.parametrize(
    ("start", "ra", "rq", "rz", "rt"),
    [
        (1, 0.5056834383187826, 0.6289621362472955, 3.742461346220422, 4.283856895826355),
        (2, 0.4994449792532724, 0.6127059590696736, 3.3291944525835957, 3.732498415326914),
        (3, 0.5031353630861497, 0.6242152061693561, 3.463684056381608, 4.2181508469383004),
    ],
)
def test_against_a_surface_texture_library(
    start: int, ra: float, rq: float, rz: float, rt: float
) -> None:
    """surfalize 0.19.2: level, high-pass 800 µm, middle 4 mm, Ra Rq Rz Rt in µm (run, recorded).

    The library is too big to install for every test run (460 MB with what it needs).
    """
    found = roughness(trace(_wavy_ground_profile(start), Pickup.PROFILE, 0.5e-6))

    assert found.cut_off == pytest.approx(0.8e-3)
    assert found.sampling_lengths == 5
    measured = [1e6 * value for value in (found.ra, found.rq, found.rz, found.rt)]
    assert measured == pytest.approx([ra, rq, rz, rt], rel=3e-4)
