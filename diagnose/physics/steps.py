"""Steps, lands, pockets and odd readings in a grid, found so that they do not pass for shape.

Every upright rectangle of cells is tried as a patch that stands higher or lower than the rest, the
best is taken, and all taken are tried again beside each other. They are believed when each is
beyond chance and four times the noise, no other set would do as well, and together they explain
the readings far better than S-bends and waves.

Source: forward selection with Bonferroni's bound on the t of the added term (from memory, Draper
& Smith, *Applied Regression Analysis*); the thresholds are ours.
"""

from __future__ import annotations

from diagnose.physics.arrays import Array, Mask, np
from diagnose.physics.patches import Corners, Gains, Patch, gains, patch, rectangles
from diagnose.physics.quantiles import student_quantile

FALSE_ALARM = 1e-3  # chance to see a patch in a smooth noisy grid
LEAST_HEIGHT = 4.0  # times the noise
LEAST_TOTAL = 0.75  # the share of the left-over that all patches together must account for
AS_GOOD = 4.0  # squares of the noise within which two patches explain the readings equally well
MOST_PATCHES = 4
_LARGEST_DOF = 4000


def find_patches(heights: Array, there: Mask, basis: Array) -> tuple[Patch, ...]:
    """The patches of a grid; `basis` holds the smooth shape at the readings, level first."""
    values, corners = heights[there], rectangles(*there.shape)
    chosen: list[int] = []
    sets: list[list[int]] = []
    while len(chosen) < MOST_PATCHES:
        beside = gains(values, there, _with(basis, corners, chosen, there), corners)
        if beside is None or not _beyond_chance(beside, int(np.argmax(beside.gain))):
            break
        best = int(np.argmax(beside.gain))
        chosen = _exchanged(values, there, basis, corners, [*chosen, best])
        sets.append(chosen)
    for each in reversed(sets):
        if _beats_bends(values, there, basis, corners, each):
            settled = _without_overlap(values, there, basis, corners, each)
            if settled:
                return tuple(patch(corners[i], there) for i in settled)
    return ()


def _exchanged(
    values: Array, there: Mask, basis: Array, corners: Corners, chosen: list[int]
) -> list[int]:
    """The patches, each replaced by the best beside the others until none changes."""
    for _ in range(MOST_PATCHES):
        before = list(chosen)
        for i in range(len(chosen)):
            others = chosen[:i] + chosen[i + 1 :]
            beside = gains(values, there, _with(basis, corners, others, there), corners)
            if beside is not None:
                best = int(np.argmax(beside.gain))
                if beside.gain[best] > (1.0 + 1e-9) * beside.gain[chosen[i]]:
                    chosen = [*others[:i], best, *others[i:]]
        if chosen == before:
            break
    return chosen


def _without_overlap(
    values: Array, there: Mask, basis: Array, corners: Corners, chosen: list[int]
) -> list[int]:
    """The patches told so that none overlaps; empty when one is weak, doubtful or cannot be so."""
    for i in range(len(chosen)):
        others = chosen[:i] + chosen[i + 1 :]
        beside = gains(values, there, _with(basis, corners, others, there), corners)
        if beside is None:
            return []
        noise = beside.noise_with(chosen[i])
        if not _beyond_chance(beside, chosen[i]) or (
            abs(float(beside.height[chosen[i]])) < LEAST_HEIGHT * noise
        ):
            return []
        least = beside.gain[chosen[i]] - AS_GOOD * noise**2 - 1e-9 * beside.gain[chosen[i]]
        as_good = [int(k) for k in np.flatnonzero(beside.gain >= least)]
        levels = _with(basis[:, :1], corners, others, there)
        if any(_differs(corners[chosen[i]], corners[k], there, levels) for k in as_good):
            return []
        clear = [k for k in as_good if not _overlaps(k, others, corners, there)]
        if not clear:
            return []  # patch upon patch is a slope or a bump, not a step
        chosen = [*others[:i], chosen[i] if chosen[i] in clear else clear[0], *others[i:]]
    return chosen


def _beyond_chance(beside: Gains, index: int) -> bool:
    bound = student_quantile(
        1.0 - FALSE_ALARM / (2.0 * len(beside.gain)), min(beside.dof - 1, _LARGEST_DOF)
    )
    return float(beside.gain[index]) > (bound * beside.noise_with(index)) ** 2


def _overlaps(index: int, others: list[int], corners: Corners, there: Mask) -> bool:
    cells = patch(corners[index], there).cells
    return any(float((cells * patch(corners[k], there).cells).sum()) for k in others)


def _differs(one: Corners, other: Corners, there: Mask, levels: Array) -> bool:
    """Whether two patches mean different steps: not the same levels told another way."""
    flat, _ = np.linalg.qr(levels)
    sides = (patch(corner, there).cells[there] for corner in (one, other))
    a, b = (cells - flat @ (flat.T @ cells) for cells in sides)
    return bool(float(a @ b) ** 2 < (1.0 - 1e-9) * float(a @ a) * float(b @ b))


def _with(basis: Array, corners: Corners, chosen: list[int], there: Mask) -> Array:
    return np.column_stack([basis, *(patch(corners[i], there).cells[there] for i in chosen)])


def _beats_bends(
    values: Array, there: Mask, basis: Array, corners: Corners, chosen: list[int]
) -> bool:
    """Whether patches explain the readings, and far better than S-bends and waves would."""
    smooth = _left(values, basis)
    stepped = _left(values, _with(basis, corners, chosen, there))
    if stepped > (1.0 - LEAST_TOTAL) * smooth:
        return False
    bends = _with_bends(there, basis)
    spare = len(values) - bends.shape[1]
    if spare < 3:
        return True
    noise = stepped / max(len(values) - basis.shape[1] - len(chosen), 1)
    return bool(_left(values, bends) / spare > 2.0 * noise)


def _left(values: Array, columns: Array) -> float:
    """The sum of squares a least-squares fit leaves over."""
    solution, *_ = np.linalg.lstsq(columns, values, rcond=None)
    left = values - columns @ solution
    return float(left @ left)


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
