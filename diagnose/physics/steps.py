"""Steps, lands, pockets and odd readings in a grid, found so that they do not pass for shape.

Every upright rectangle of cells is tried as a patch that stands higher or lower than the rest.
A patch is believed when its height is beyond chance for the number of rectangles tried, is at
least four times the noise, and accounts for a good share of what the smooth shape leaves over.

Source: forward selection with Bonferroni's bound on the t of the added term (from memory, Draper
& Smith, *Applied Regression Analysis*); the thresholds are ours.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from diagnose.physics.arrays import Array, Mask, np
from diagnose.physics.quantiles import student_quantile

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Corners = NDArray[np.intp]  # (rectangles, 4): top, bottom, first, last
else:
    Corners = Any

FALSE_ALARM = 1e-3  # chance to see a patch in a smooth noisy grid
LEAST_HEIGHT = 4.0  # times the noise
LEAST_TOTAL = 0.75  # the share all patches together must account for
LEAST_SHARE = 0.3  # of what the smooth shape leaves over
AS_GOOD = 4.0  # squares of the noise within which two patches explain the readings equally well
MOST_PATCHES = 4
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


def find_patches(heights: Array, there: Mask, basis: Array) -> tuple[Patch, ...]:
    """The patches of a grid, strongest first; `basis` holds the smooth shape at the readings."""
    corners = _rectangles(*there.shape)
    patches: list[Patch] = []
    while len(patches) < MOST_PATCHES:
        columns = _with(basis, patches, there)
        levels = np.column_stack([columns[:, :1], columns[:, basis.shape[1] :]])
        patch = _strongest(heights, there, columns, levels, corners)
        if patch is None or not _is_told_apart(_with(basis, [*patches, patch], there)):
            break
        if any(float((patch.cells * other.cells).sum()) for other in patches):
            return ()  # patch upon patch is a slope or a bump, not a step
        patches.append(patch)
    return tuple(patches) if _beats_bends(heights[there], there, basis, patches) else ()


def _with(basis: Array, patches: list[Patch], there: Mask) -> Array:
    return np.column_stack([basis, *(patch.cells[there] for patch in patches)])


def _beats_bends(values: Array, there: Mask, basis: Array, patches: list[Patch]) -> bool:
    """Whether patches explain the readings, and far better than S-bends and waves would."""
    smooth, stepped = _left(values, basis), _left(values, _with(basis, patches, there))
    if not patches or stepped > (1.0 - LEAST_TOTAL) * smooth:
        return False
    bends = _with_bends(there, basis)
    spare = len(values) - bends.shape[1]
    if spare < 3:
        return True
    noise = stepped / max(len(values) - basis.shape[1] - len(patches), 1)
    return bool(_left(values, bends) / spare > 2.0 * noise)


def _left(values: Array, columns: Array) -> float:
    """The sum of squares a least-squares fit leaves over."""
    solution, *_ = np.linalg.lstsq(columns, values, rcond=None)
    left = values - columns @ solution
    return float(left @ left)


def _strongest(
    heights: Array,
    there: Mask,
    columns: Array,
    levels: Array,
    corners: Corners,
) -> Patch | None:
    orthonormal, _ = np.linalg.qr(columns)
    values = heights[there]
    left = values - orthonormal @ (orthonormal.T @ values)
    squares = float(left @ left)
    dof = len(values) - columns.shape[1]
    scale = float(values @ values)
    if dof < 3 or squares <= 1e-20 * scale:
        return None
    count = _sums(_spread(np.ones(len(values)), there), corners)
    along = np.stack([_sums(_spread(q, there), corners) for q in orthonormal.T])
    free = count - (along**2).sum(axis=0)
    usable = (count >= 1) & (count <= len(values) / 2) & (free > 0.01 * count)
    if not usable.any():
        return None
    score = _sums(_spread(left, there), corners)
    gain = np.where(usable, score**2 / np.where(usable, free, 1.0), 0.0)
    best = int(np.argmax(gain))
    rest = max(squares - float(gain[best]), 1e-20 * scale)
    noise = np.sqrt(rest / (dof - 1))
    height = float(score[best] / free[best])
    bound = student_quantile(1.0 - FALSE_ALARM / (2.0 * len(corners)), min(dof - 1, 4000))
    beyond_chance = float(gain[best]) > (bound * noise) ** 2
    if not (
        beyond_chance
        and abs(height) > LEAST_HEIGHT * noise
        and float(gain[best]) > LEAST_SHARE * squares
    ):
        return None
    patch = _patch(corners[best], there)
    as_good = np.flatnonzero(gain > gain[best] - AS_GOOD * noise**2)
    others = (_patch(corners[i], there) for i in as_good if i != best)
    if any(_differs(patch, other, there, levels) for other in others):
        return None
    return patch


def _differs(one: Patch, other: Patch, there: Mask, levels: Array) -> bool:
    """Whether two patches mean different steps: not the same two levels told another way."""
    flat, _ = np.linalg.qr(levels)
    a, b = (p.cells[there] - flat @ (flat.T @ p.cells[there]) for p in (one, other))
    return float(a @ b) ** 2 < (1.0 - 1e-9) * float(a @ a) * float(b @ b)


def _patch(corner: Corners, there: Mask) -> Patch:
    top, bottom, first, last = (int(c) for c in corner)
    cells = np.zeros(there.shape)
    cells[top:bottom, first:last] = 1.0
    return Patch((top + 1, bottom), (first + 1, last), np.where(there, cells, 0.0))


def _is_told_apart(columns: Array) -> bool:
    singular = np.linalg.svd(columns, compute_uv=False)
    return bool(singular[-1] > 1e-6 * singular[0]) and columns.shape[0] > columns.shape[1]


def _with_bends(there: Mask, basis: Array) -> Array:
    """The smooth shape with S-bends and waves in it, where there are readings to spend on them."""
    y, x = np.meshgrid(*(np.linspace(-1.0, 1.0, n) for n in there.shape), indexing="ij")
    x, y = x[there], y[there]
    columns = [*basis.T]
    rows, places = there.shape
    bends = [x**n for n in (3, 4, 5) if places >= n + 3] + [
        y**n for n in (3, 4, 5) if rows >= n + 3
    ]
    # An S-bend needs three places more than its power, or it can follow any step exactly.
    for extra in (*bends, x * x * y, x * y * y):
        known = np.column_stack(columns)
        solution, *_ = np.linalg.lstsq(known, extra, rcond=None)
        left = extra - known @ solution
        if float(left @ left) > 1e-6 * float(extra @ extra):
            columns.append(extra)
    return np.column_stack(columns)


def _rectangles(rows: int, columns: int) -> Corners:
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
