"""Every upright rectangle of a grid as a patch with its own level, and what each would gain."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from diagnose.physics.arrays import Array, Mask, np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Corners = NDArray[np.intp]  # (rectangles, 4): top, bottom, first, last
else:
    Corners = Any

_MOST_RECTANGLES = 200_000


@dataclass(frozen=True, eq=False)
class Patch:
    """Cells `rows[0]`..`rows[1]`, `columns[0]`..`columns[1]` (from 1) at a level of their own.

    `height` and `plus_minus` are in metres, above the rest of the grid.
    """

    rows: tuple[int, int]
    columns: tuple[int, int]
    cells: Array
    height: float = 0.0
    plus_minus: float = 0.0

    @property
    def is_single(self) -> bool:
        """Whether this is one odd reading, not a step."""
        return float(self.cells.sum()) == 1.0

    def with_height(self, height: float, plus_minus: float) -> Patch:
        """The same patch with its height (m)."""
        return replace(self, height=height, plus_minus=plus_minus)


@dataclass(frozen=True, eq=False)
class Gains:
    """What each rectangle would take off the sum of squares, beside a model already fitted.

    `squares` is that sum, `dof` its degrees of freedom, `height` the level each would have.
    """

    gain: Array
    height: Array
    squares: float
    dof: int

    def noise_with(self, index: int) -> float:
        """Standard deviation of a reading once this rectangle is in the model."""
        return float(np.sqrt(max(self.squares - float(self.gain[index]), 0.0) / (self.dof - 1)))


def gains(values: Array, there: Mask, columns: Array, corners: Corners) -> Gains | None:
    """The gain of every rectangle beside the `columns` of a model; None when nothing is to gain."""
    orthonormal, _ = np.linalg.qr(columns)
    left = values - orthonormal @ (orthonormal.T @ values)
    squares, dof = float(left @ left), len(values) - columns.shape[1]
    if dof < 3 or squares <= 1e-20 * float(values @ values):
        return None
    count = _sums(_spread(np.ones(len(values)), there), corners)
    along = np.stack([_sums(_spread(q, there), corners) for q in orthonormal.T])
    free = count - (along**2).sum(axis=0)
    usable = (count >= 1) & (count <= len(values) / 2) & (free > 0.01 * count)
    safe = np.where(usable, free, 1.0)
    score = np.where(usable, _sums(_spread(left, there), corners), 0.0)
    return Gains(score**2 / safe, score / safe, squares, dof)


def patch(corner: Corners, there: Mask) -> Patch:
    """The rectangle as a patch of the cells that hold a reading."""
    top, bottom, first, last = (int(c) for c in corner)
    cells = np.zeros(there.shape)
    cells[top:bottom, first:last] = 1.0
    return Patch((top + 1, bottom), (first + 1, last), np.where(there, cells, 0.0))


def rectangles(rows: int, columns: int) -> Corners:
    """Every rectangle as (top, bottom, first, last), or bands and single cells in a large grid."""
    if (rows * (rows + 1) // 2) * (columns * (columns + 1) // 2) <= _MOST_RECTANGLES:
        upright, flat = _bands(rows), _bands(columns)
        pairs = [(*r, *c) for r in upright for c in flat]
    else:
        pairs = [(*r, 0, columns) for r in _bands(rows)]
        pairs += [(0, rows, *c) for c in _bands(columns)]
        pairs += [(r, r + 1, c, c + 1) for r in range(rows) for c in range(columns)]
    return np.array(pairs, dtype=np.intp)


def _bands(n: int) -> list[tuple[int, int]]:
    return [(first, last) for first in range(n) for last in range(first + 1, n + 1)]


def _spread(values: Array, there: Mask) -> Array:
    full = np.zeros(there.shape)
    full[there] = values
    return full


def _sums(field: Array, corners: Corners) -> Array:
    """The sum of a field over each rectangle."""
    total = np.zeros((field.shape[0] + 1, field.shape[1] + 1))
    total[1:, 1:] = field.cumsum(axis=0).cumsum(axis=1)
    top, bottom, first, last = corners.T
    summed: Array = (
        total[bottom, last] - total[top, last] - total[bottom, first] + total[top, first]
    )
    return summed
