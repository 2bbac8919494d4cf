"""A grid of indicator readings split into tilt, twist, dish or crown, and what is left.

Rows of a grid lie across (the way of the crossfeed), columns along (the way of the table travel).
The model is c + a x + b y + t x y + p x^2 + q y^2 with x and y from -1 to +1 over the grid, fitted
by least squares; the noise is taken from what the fit leaves over, with its degrees of freedom.

Source: ordinary least squares with Student's t for each coefficient (any statistics text, for
example Draper & Smith, *Applied Regression Analysis*: from memory).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.physics.arrays import Array, Mask, np
from diagnose.physics.grids import Grid
from diagnose.physics.patches import Patch
from diagnose.physics.quantiles import chi_square_quantile, student_quantile
from diagnose.physics.readings import BadReadings
from diagnose.physics.reference import (
    CannotShow,
    Conclusion,
    Refusal,
    refusals,
    refusals_of_a_difference,
)
from diagnose.physics.steps import find_patches

FEW_SPARE = 5  # below this many spare readings the stated uncertainty is wide
_LARGEST_DOF = 4000
_TERMS = ("level", "tilt-along", "tilt-across", "twist", "crown-along", "crown-across")
_SCALE = {"tilt-along": 2.0, "tilt-across": 2.0, "twist": 4.0}


@dataclass(frozen=True)
class Term:
    """One part of the shape in metres, with the range that holds it 19 times in 20.

    `tilt-along`, `tilt-across`: rise from the first to the last reading. `twist`: how far the
    fourth corner stands above the plane of the other three. `crown-...`: how far the middle
    stands above the line through both ends; less than 0 is dished. `rest`: standard deviation of
    what is left.
    """

    name: str
    value: float
    low: float
    high: float

    @property
    def plus_minus(self) -> float:
        """Half the width of the range."""
        return (self.high - self.low) / 2.0

    @property
    def is_clear(self) -> bool:
        """Whether the range leaves out zero."""
        return self.low > 0.0 or self.high < 0.0


@dataclass(frozen=True, eq=False)
class Split:
    """The parts of a shape, what could not be measured, and what must not be concluded."""

    terms: tuple[Term, ...]
    patches: tuple[Patch, ...]
    not_measured: tuple[str, ...]
    refused: tuple[Refusal, ...]
    spare_readings: int
    left_over: Array
    notes: tuple[str, ...]

    def term(self, name: str) -> Term:
        """The part called `name`; KeyError when the grid cannot measure it."""
        for term in self.terms:
            if term.name == name:
                return term
        raise KeyError(name)

    def require(self, conclusion: Conclusion) -> None:
        """Raise CannotShow when the reference of the readings cannot carry this conclusion."""
        for refusal in self.refused:
            if refusal.conclusion is conclusion:
                raise CannotShow(refusal)


def split(grid: Grid, repeatability: float | None = None, graduation: float = 0.0) -> Split:
    """Split a grid into its terms (m), each with the range that holds it 19 times in 20.

    `repeatability`: standard deviation (m) of readings repeated on one spot, used where the
    left-over agrees with it; `graduation`: the smallest division of the dial (m), which the noise
    cannot be under. Raises BadReadings when there are too few readings to tell noise from shape.

    A grid of 3 x 3 leaves 3 spare readings: the mean half width is then 3.18 x 0.92 / 1.96 = 1.5
    times what a known noise would give (Student's t), and nothing narrower holds the truth 19 times
    in 20 whatever the noise is. The repeatability, or a fourth row or column, brings it under 1.3.
    """
    there = np.isfinite(grid.heights)
    basis, names = _basis(grid, there)
    patches = find_patches(grid.heights, there, basis)
    columns = np.column_stack([basis, *(p.cells[there] for p in patches)])
    heights = grid.heights[there]
    solution, *_ = np.linalg.lstsq(columns, heights, rcond=None)
    left = heights - columns @ solution
    dof = len(heights) - columns.shape[1]
    sigma, reach = _noise(float(left @ left), dof, repeatability, graduation)
    spread = sigma * np.sqrt(np.diag(np.linalg.pinv(columns.T @ columns)))
    terms = [
        _term(name, float(solution[i]), reach * float(spread[i]))
        for i, name in enumerate(names)
        if name != "level"
    ]
    left_over = np.full(grid.heights.shape, math.nan)
    left_over[there] = left
    return Split(
        terms=(*terms, _rest(sigma, dof, repeatability is not None and reach < 2.0)),
        patches=tuple(
            patch.with_height(
                float(solution[len(names) + i]), reach * float(spread[len(names) + i])
            )
            for i, patch in enumerate(patches)
        ),
        not_measured=tuple(name for name in _TERMS if name not in names),
        refused=refusals_of_a_difference() if grid.is_difference else refusals(grid.setting),
        spare_readings=dof,
        left_over=left_over,
        notes=_notes(dof, float(np.ptp(heights)), graduation),
    )


def _basis(grid: Grid, there: Mask) -> tuple[Array, list[str]]:
    """The columns of the model that these places can tell apart, and their names."""
    y, x = np.meshgrid(_unit(grid.across), _unit(grid.along), indexing="ij")
    x, y = x[there], y[there]
    wanted = (np.ones_like(x), x, y, x * y, x * x, y * y)
    kept: list[Array] = []
    names: list[str] = []
    for name, column in zip(_TERMS, wanted, strict=True):
        if len(column) and _is_new(column, kept):
            kept.append(column)
            names.append(name)
    if not kept:
        raise BadReadings("There is no reading in this grid.", "Fill in the cells.")
    return np.column_stack(kept), names


def _unit(positions: Array) -> Array:
    reach = float(np.ptp(positions))
    if reach == 0.0:
        return np.zeros_like(positions)
    unit: Array = 2.0 * (positions - positions.min()) / reach - 1.0
    return unit


def _is_new(column: Array, kept: list[Array]) -> bool:
    if not kept:
        return True
    known = np.column_stack(kept)
    solution, *_ = np.linalg.lstsq(known, column, rcond=None)
    left = column - known @ solution
    return float(left @ left) > 1e-9 * float(column @ column + 1e-300)


def _noise(
    squares: float, dof: int, repeatability: float | None, graduation: float
) -> tuple[float, float]:
    """Standard deviation of one reading, and by how many of it a value may be out."""
    floor = graduation / math.sqrt(12.0)
    known = max(repeatability, floor) if repeatability is not None else None
    if known and squares <= known**2 * (chi_square_quantile(0.95, dof) if dof else math.inf):
        return known, 1.96
    if dof < 1:
        raise BadReadings(
            "There are too few readings to tell noise from shape.",
            "Take more, or say how well the indicator repeats on one spot.",
        )
    reach = student_quantile(0.975, min(dof, _LARGEST_DOF))
    return max(math.sqrt(squares / dof), floor), reach


def _term(name: str, coefficient: float, half_width: float) -> Term:
    scale = -1.0 if name.startswith("crown") else _SCALE[name]
    value, half = scale * coefficient, abs(scale) * half_width
    return Term(name, value, value - half, value + half)


def _rest(sigma: float, dof: int, is_known: bool) -> Term:
    if is_known or dof < 1:
        return Term("rest", sigma, sigma, sigma)
    dof = min(dof, _LARGEST_DOF)
    low = sigma * math.sqrt(dof / chi_square_quantile(0.975, dof))
    high = sigma * math.sqrt(dof / chi_square_quantile(0.025, dof))
    return Term("rest", sigma, low, high)


def _notes(dof: int, reach: float, graduation: float) -> tuple[str, ...]:
    notes = []
    if dof < FEW_SPARE:
        notes.append(
            f"Only {dof} readings more than the shape needs: the ranges are wide. "
            "Take four rows or columns more, or repeat the readings."
        )
    if reach == 0.0 and graduation == 0.0:
        notes.append("Every reading is the same: the dial is too coarse, or it was not touching.")
    return tuple(notes)
