"""Grids of indicator readings: made, read from a file, and one taken from another.

Rows of a grid lie across (the way of the crossfeed), columns along (the way of the table travel).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from diagnose.physics.arrays import Array, np
from diagnose.physics.readings import BadReadings, read_table
from diagnose.physics.reference import Setting

MOST_ROWS = 400  # and as many columns
MOST_CELLS = 10_000


@dataclass(frozen=True, eq=False)
class Grid:
    """Heights in metres, NaN where there is no reading, at the positions `across` and `along`."""

    heights: Array
    across: Array
    along: Array
    setting: Setting
    is_difference: bool = False


def grid(
    readings: Sequence[Sequence[float | None]] | Array,
    setting: Setting,
    step_along: float = 1.0,
    step_across: float = 1.0,
) -> Grid:
    """Make a grid of heights (m) taken every `step_along`, `step_across` (m); None is a gap.

    Raises BadReadings for unequal rows, an infinite reading or a step that is not above 0.
    """
    rows = [[math.nan if v is None else float(v) for v in row] for row in readings]
    if not rows or len({len(row) for row in rows}) != 1 or not rows[0]:
        raise BadReadings("The rows of the grid are not equally long.", "Mark gaps with '-'.")
    if not (0.0 < step_along < math.inf and 0.0 < step_across < math.inf):
        raise BadReadings("The step between readings must be above 0.", "Give it in mm or inch.")
    heights = np.array(rows, dtype=float)
    if heights.size > MOST_CELLS or max(heights.shape) > MOST_ROWS:
        raise BadReadings(
            f"The grid has {heights.shape[0]} rows and {heights.shape[1]} columns.",
            f"Keep every second or third: at most {MOST_CELLS} readings, {MOST_ROWS} in a row.",
        )
    if np.isinf(heights).any():
        raise BadReadings("A reading is infinite.", "Mark it as a gap with '-'.")
    across = step_across * np.arange(heights.shape[0], dtype=float)
    along = step_along * np.arange(heights.shape[1], dtype=float)
    return Grid(heights, across, along, setting)


def read_grid(
    path: str | Path,
    setting: Setting,
    unit: float,
    step_along: float = 1.0,
    step_across: float = 1.0,
) -> Grid:
    """Read a grid from a CSV whose numbers are in `unit` metres (1e-6 for micrometres)."""
    heights = unit * np.array(read_table(path).rows, dtype=float)
    return grid(heights, setting, step_along, step_across)


def difference(after: Grid, before: Grid) -> Grid:
    """The change from `before` to `after`, reading by reading (m).

    What both share (the ways, the indicator's own error) drops out. Raises BadReadings when the
    two were not taken at the same places or not against the same thing.
    """
    same_places(after, before)
    heights = after.heights - before.heights
    return Grid(heights, after.across, after.along, after.setting, is_difference=True)


def same_places(one: Grid, other: Grid) -> None:
    """Raise BadReadings unless two grids share places and reference."""
    if one.heights.shape != other.heights.shape or not (
        np.allclose(one.along, other.along) and np.allclose(one.across, other.across)
    ):
        mend = "Take both at the same places, the same number of rows and columns."
        raise BadReadings("The two grids do not cover the same places.", mend)
    if one.setting.against is not other.setting.against:
        mend = "Measure both against the same thing."
        said = f"{one.setting.against.value} and {other.setting.against.value}"
        raise BadReadings(f"The two grids were measured against different things ({said}).", mend)
