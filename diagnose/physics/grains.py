"""Grit numbers and the size of their grains."""

from __future__ import annotations

import math
from bisect import bisect_left

from diagnose.physics.arguments import ranged

MEAN_DIAMETER: dict[int, float] = {
    8: 2460e-6, 10: 2085e-6, 12: 1765e-6, 14: 1470e-6, 16: 1230e-6, 20: 1040e-6, 24: 745e-6,
    30: 625e-6, 36: 525e-6, 40: 438e-6, 46: 370e-6, 54: 310e-6, 60: 260e-6, 70: 218e-6,
    80: 185e-6, 90: 154e-6, 100: 129e-6, 120: 109e-6, 150: 82e-6, 180: 69e-6, 220: 58e-6,
    230: 53e-6, 240: 44.5e-6, 280: 36.5e-6, 320: 29.2e-6, 400: 17.3e-6,
}  # fmt: skip
SIZES = tuple(sorted(MEAN_DIAMETER))


@ranged
def grain_diameter(grit: float) -> float:
    """Mean diameter (m) of the grains of this grit number, F8 to F400.

    Source: F series of ISO 8486 / FEPA 42, from memory; between two sizes a straight line in
    logarithms. Raises OutOfRange.
    """
    at = bisect_left(SIZES, grit)
    if SIZES[at] == grit:
        return MEAN_DIAMETER[SIZES[at]]
    low, high = SIZES[at - 1], SIZES[at]
    share = math.log(grit / low) / math.log(high / low)
    ends = math.log(MEAN_DIAMETER[low]), math.log(MEAN_DIAMETER[high])
    return math.exp(ends[0] + share * (ends[1] - ends[0]))


def near_sizes(grit: int) -> list[int]:
    """The one or two sizes of the series next to a number that is not in it."""
    at = bisect_left(SIZES, grit)
    return list(SIZES[max(at - 1, 0) : at + 1])


def sizes_apart(one: int, other: int) -> int:
    """How many sizes of the series lie from `one` to `other`; above zero when `other` is finer."""
    return bisect_left(SIZES, other) - bisect_left(SIZES, one)
