"""A grid of readings is split into tilt, twist, dish and the rest."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.physics.grids import Grid, difference, grid, read_grid
from diagnose.physics.readings import BadReadings
from diagnose.physics.reference import Against, CannotShow, Conclusion, Setting, Surface
from diagnose.physics.reversal import turned_end_for_end
from diagnose.physics.shape import Split, split

PLATE = Setting(Against.PLATE)
TRAVEL = Setting(Against.TRAVEL, magnet_on=True)
UM = 1e-6
SHAPE = {
    "tilt-along": 8 * UM,
    "tilt-across": -5 * UM,
    "twist": 4 * UM,
    "crown-along": -6 * UM,
    "crown-across": 3 * UM,
}


def surface(rows: int, columns: int, shape: dict[str, float] = SHAPE) -> Any:
    """Heights of a known shape, without noise."""
    y, x = np.meshgrid(np.linspace(-1, 1, rows), np.linspace(-1, 1, columns), indexing="ij")
    return (
        shape["tilt-along"] / 2 * x
        + shape["tilt-across"] / 2 * y
        + shape["twist"] / 4 * x * y
        - shape["crown-along"] * x * x
        - shape["crown-across"] * y * y
    )


def noisy(heights: Any, seed: int = 0, noise: float = UM) -> Any:
    return heights + np.random.default_rng(seed).normal(0, noise, heights.shape)


def values(found: Split) -> dict[str, float]:
    return {term.name: term.value for term in found.terms if term.name != "rest"}


def test_a_clean_shape_comes_back_exactly() -> None:
    found = split(grid(surface(4, 6), PLATE))

    assert values(found) == pytest.approx(SHAPE, abs=1e-15)
    assert found.term("rest").value == pytest.approx(0, abs=1e-12)
    assert found.patches == ()


def test_each_part_is_what_a_machinist_would_measure() -> None:
    heights = surface(3, 3)
    found = split(grid(heights, PLATE))
    corners = heights[2, 2] - heights[2, 0] - heights[0, 2] + heights[0, 0]

    assert found.term("tilt-along").value == pytest.approx(heights[1, 2] - heights[1, 0])
    assert found.term("tilt-across").value == pytest.approx(heights[2, 1] - heights[0, 1])
    assert found.term("twist").value == pytest.approx(corners)
    middle = heights[1, 1] - (heights[1, 0] + heights[1, 2]) / 2
    assert found.term("crown-along").value == pytest.approx(middle)


def test_a_dished_plate_has_a_crown_below_zero() -> None:
    dished = {**dict.fromkeys(SHAPE, 0.0), "crown-along": -20 * UM}
    term = split(grid(noisy(surface(3, 7, dished)), PLATE)).term("crown-along")

    assert term.high < 0
    assert term.is_clear


def test_a_single_sweep_has_no_terms_across() -> None:
    found = split(grid([[0, 1 * UM, 3 * UM, 2 * UM, 4 * UM]], PLATE))

    assert set(values(found)) == {"tilt-along", "crown-along"}
    assert found.not_measured == ("tilt-across", "twist", "crown-across")
    with pytest.raises(KeyError):
        found.term("twist")


def test_gaps_are_left_out_and_do_not_move_the_shape() -> None:
    heights = surface(5, 7)
    heights[0, 0] = heights[3, 2] = heights[4, 6] = math.nan
    found = split(grid(heights, PLATE))

    assert values(found) == pytest.approx(SHAPE, abs=1e-15)
    assert np.isnan(found.left_over).sum() == 3


@pytest.mark.parametrize("height", [20 * UM, 1e-3, -0.1])
def test_a_step_is_found_and_does_not_pass_for_tilt(height: float) -> None:
    heights = noisy(surface(5, 8))
    heights[:, 5:] += height
    found = split(grid(heights, PLATE))

    assert len(found.patches) == 1
    assert found.patches[0].columns in ((1, 5), (6, 8))
    assert abs(abs(found.patches[0].height) - abs(height)) < 3 * found.patches[0].plus_minus
    for name, truth in SHAPE.items():
        assert found.term(name).value == pytest.approx(truth, abs=6 * UM)


def test_a_pocket_and_an_odd_reading_are_found_where_they_are() -> None:
    heights = noisy(surface(6, 9))
    heights[2:4, 3:6] -= 0.5e-3
    heights[5, 0] += 60 * UM
    found = split(grid(heights, PLATE))

    assert {(p.rows, p.columns) for p in found.patches} == {((3, 4), (4, 6)), ((6, 6), (1, 1))}
    assert [p.is_single for p in found.patches] == [False, True]


def test_two_steps_of_a_stair_are_both_found() -> None:
    heights = noisy(surface(6, 10))
    heights[:, 5:] += 100 * UM
    heights[:, 7:] += 200 * UM
    found = split(grid(heights, PLATE))

    assert len(found.patches) == 2
    assert found.term("tilt-along").value == pytest.approx(8 * UM, abs=8 * UM)


@pytest.mark.parametrize("waves", [0.5, 1.0, 2.0])
def test_a_smooth_wave_is_not_taken_for_a_step(waves: float) -> None:
    along = np.sin(2 * math.pi * waves * np.linspace(0, 1, 10))
    taken = sum(
        bool(split(grid(noisy(surface(6, 10) + 20 * UM * along, seed), PLATE)).patches)
        for seed in range(50)
    )
    assert taken == 0


def test_a_grid_too_coarse_to_place_its_step_states_a_wide_range() -> None:
    heights = noisy(surface(3, 4))
    heights[:, 2:] += 1e-3
    found = split(grid(heights, PLATE))

    assert found.patches == ()
    assert found.term("crown-along").plus_minus > 50 * UM


def test_too_few_readings_need_to_be_told_how_the_indicator_repeats() -> None:
    short = grid([[0, 1 * UM, 0], [1 * UM, 2 * UM, 0]], PLATE)
    with pytest.raises(BadReadings, match="too few"):
        split(grid([[0, 1 * UM], [1 * UM, 0]], PLATE))

    assert split(short).spare_readings == 1
    assert any("wide" in note for note in split(short).notes)
    told = split(grid([[0, 1 * UM], [1 * UM, 0]], PLATE), repeatability=UM)
    assert told.term("twist").plus_minus == pytest.approx(1.96 * 2 * UM, rel=1e-6)


def test_the_dials_graduation_is_the_least_noise() -> None:
    found = split(grid(np.zeros((4, 5)), PLATE), graduation=2 * UM)

    assert found.term("rest").value == pytest.approx(2 * UM / math.sqrt(12))
    assert found.term("tilt-along").plus_minus > 0
    assert any("too coarse" in note for note in split(grid(np.zeros((4, 5)), PLATE)).notes)


def test_the_same_surface_measured_against_its_own_ways_refuses_every_conclusion() -> None:
    found = split(grid(noisy(surface(4, 6)), TRAVEL))
    for conclusion in Conclusion:
        with pytest.raises(CannotShow):
            found.require(conclusion)


def test_a_plate_lets_flatness_through() -> None:
    split(grid(surface(4, 6), PLATE)).require(Conclusion.FLAT)


def test_magnet_on_less_magnet_off_drops_the_ways_and_keeps_the_bow() -> None:
    ways = surface(4, 6, {**dict.fromkeys(SHAPE, 0.0), "crown-along": 30 * UM})
    bow = surface(4, 6, {**dict.fromkeys(SHAPE, 0.0), "crown-along": 12 * UM})
    off = grid(noisy(ways + bow, 1, 0.2 * UM), Setting(Against.TRAVEL))
    on = grid(noisy(ways, 2, 0.2 * UM), Setting(Against.TRAVEL, magnet_on=True))
    change = split(difference(on, off))

    assert change.term("crown-along").value == pytest.approx(-12 * UM, abs=UM)
    assert len(change.refused) == len(Conclusion)


def test_grids_of_other_places_or_references_are_not_compared() -> None:
    one = grid(surface(4, 6), PLATE)
    with pytest.raises(BadReadings, match="same places"):
        difference(one, grid(surface(4, 5), PLATE))
    with pytest.raises(BadReadings, match="different things"):
        difference(one, grid(surface(4, 6), Setting(Against.MICROMETER)))


def test_turning_end_for_end_tells_the_parts_wedge_from_the_machines() -> None:
    part = {**dict.fromkeys(SHAPE, 0.0), "tilt-along": 10 * UM, "tilt-across": -4 * UM}
    machine = {**SHAPE, "tilt-along": 3 * UM, "tilt-across": 7 * UM}
    on_part, on_machine = surface(4, 6, part), surface(4, 6, machine)
    before = grid(noisy(on_part + on_machine, 1, 0.1 * UM), TRAVEL)
    after = grid(noisy(on_part[::-1, ::-1] + on_machine, 2, 0.1 * UM), TRAVEL)
    told = turned_end_for_end(before, after)

    for terms, truth in ((told.part, part), (told.machine, machine)):
        for term in terms:
            assert term.low - 0.1 * UM <= truth[term.name] <= term.high + 0.1 * UM
    assert told.cannot_split == ("twist", "crown-along", "crown-across")


def test_a_grid_from_a_file(tmp_path: Path) -> None:
    path = tmp_path / "plate.csv"
    path.write_text("0;1;2;3\n0;1;-;3\n0;1,0;2;3\n", encoding="utf-8")
    found = split(read_grid(path, PLATE, unit=UM, step_along=0.02))

    assert found.term("tilt-along").value == pytest.approx(3 * UM)


@pytest.mark.parametrize(
    "readings", [[], [[]], [[1.0, 2.0], [1.0]], [[math.inf, 1.0]], [[math.nan] * 3] * 3]
)
def test_grids_that_are_none_are_refused(readings: list[list[float]]) -> None:
    with pytest.raises(BadReadings):
        split(grid(readings, PLATE))


def test_a_grid_of_too_many_readings_is_refused() -> None:
    with pytest.raises(BadReadings, match="Keep every second"):
        grid(np.zeros((401, 2)), PLATE)


def test_the_step_between_readings_must_be_above_zero() -> None:
    with pytest.raises(BadReadings, match="step"):
        grid([[1.0, 2.0]], PLATE, step_along=0.0)


def test_a_known_flat_block_swept_by_the_head_may_speak_of_the_ways() -> None:
    setting = Setting(Against.TRAVEL, Surface.KNOWN_FLAT)
    split(grid(surface(4, 6), setting)).require(Conclusion.WAYS)


def _grids() -> st.SearchStrategy[Grid]:
    cell = st.one_of(st.none(), st.floats(-1e-3, 1e-3, allow_nan=False))
    shape = st.tuples(st.integers(1, 5), st.integers(1, 6))
    rows = shape.flatmap(
        lambda s: st.lists(
            st.lists(cell, min_size=s[1], max_size=s[1]), min_size=s[0], max_size=s[0]
        )
    )
    return rows.map(lambda r: grid(r, PLATE))


@settings(max_examples=150, deadline=None)
@given(_grids())
def test_any_grid_gives_finite_ranges_or_one_clear_fault(readings: Grid) -> None:
    try:
        found = split(readings)
    except BadReadings:
        return
    for term in found.terms:
        assert math.isfinite(term.value)
        assert term.low <= term.value <= term.high
        assert term.plus_minus >= 0
    assert found.term("rest").value >= 0


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10_000), st.floats(-1e-2, 1e-2))
def test_where_the_dial_is_zeroed_does_not_matter(seed: int, zero: float) -> None:
    heights = noisy(surface(4, 5), seed)
    plain, moved = split(grid(heights, PLATE)), split(grid(heights + zero, PLATE))

    assert values(moved) == pytest.approx(values(plain), abs=1e-11)
