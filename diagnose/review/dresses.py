"""The dress for the finish wanted: seconds from edge to edge, depth, passes.

Every number of seconds a review gives comes from here, for this wheel: its width, its turns and
the depth the pass is planned with.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from diagnose.physics.dressing import (
    DEPTHS,
    OVERLAPS,
    PASSES,
    expected_roughness,
    seconds_for_overlap,
)

TIP = 0.3e-3  # m, a usual diamond; common practice
COUNTED = 0.5  # s, what a person can count to
OPENEST = OVERLAPS["rough"][0]
TIGHTEST = 8.0  # overlap beyond which a dress buys nothing
OPEN, CLOSE = OVERLAPS["medium"]
EVEN = 4.0  # the overlap to aim at where it gives the finish: more open, the lead may show
ANY_FACE = re.compile(r"[\d.]+ mm deep, [\d.]+ to [\d.]+ s across a 13 mm face")


@dataclass(frozen=True)
class Dress:
    """One dress (SI). `roughness` is the Ra to expect, half to double in practice."""

    kind: str  # rough | medium | fine
    use: str  # to rough | to finish
    depth: float
    passes: str
    overlaps: tuple[float, float]
    seconds: tuple[float, float]
    roughness: float


@dataclass(frozen=True)
class Dresses:
    """The dresses for a job; `finest` is the Ra the wheel can come to."""

    ways: tuple[Dress, ...]
    finest: float
    reached: bool
    least: float  # seconds from edge to edge below which the finish wanted is not to be expected
    aim: float  # seconds to go for


def dresses_for(
    finish: float | None,
    grit: float,
    wheel_width: float,
    turning_speed: float,
    bite: float | None = None,
) -> Dresses:
    """A dress to rough and one to finish. Lengths m, rev/s. Raises OutOfRange.

    The finishing dress begins at the most open one that gives the finish wanted; a finer one only
    heats. `bite`: the depth of the last pass where another is planned than the usual one.
    """
    finest = expected_roughness(grit, TIGHTEST)
    needed = OPEN if finish is None else _overlap_for(finish, grit, OPENEST, TIGHTEST)
    kind, overlaps = "medium", (max(needed, OPEN), CLOSE)
    if needed > CLOSE:
        low, high = OVERLAPS["fine"]
        kind, overlaps = "fine", (min(max(needed, low), high), high)
    depth = DEPTHS[kind] if bite is None else bite
    rough = _dress(
        "rough", "to rough", OVERLAPS["rough"], DEPTHS["rough"], grit, wheel_width, turning_speed
    )
    fine = _dress(kind, "to finish", overlaps, depth, grit, wheel_width, turning_speed)
    least, aim = (
        _seconds(u, wheel_width, turning_speed, depth)
        for u in (needed, min(max(EVEN, overlaps[0]), overlaps[1]))
    )
    return Dresses((rough, fine), finest, finish is None or finest <= finish, least, aim)


def for_this_face(text: str, depth: str, seconds: str) -> str:
    """A sentence of the book about a 13 mm face, with the depth and seconds of this wheel."""
    return ANY_FACE.sub(lambda _: f"{depth} deep, {seconds} from edge to edge", text)


def _overlap_for(finish: float, grit: float, low: float, high: float) -> float:
    """The least overlap between the two that gives the finish; `high` when none does."""
    for _ in range(40):
        middle = (low + high) / 2
        if expected_roughness(grit, middle) <= finish:
            high = middle
        else:
            low = middle
    return high


def _dress(
    kind: str,
    use: str,
    overlaps: tuple[float, float],
    depth: float,
    grit: float,
    width: float,
    turning_speed: float,
) -> Dress:
    low, high = (_seconds(u, width, turning_speed, depth) for u in overlaps)
    expected = expected_roughness(grit, overlaps[0])
    return Dress(kind, use, depth, PASSES[kind], overlaps, (low, high), expected)


def _seconds(overlap: float, width: float, turning_speed: float, depth: float) -> float:
    """Seconds from edge to edge for an overlap, as a person counts them."""
    exact = seconds_for_overlap(overlap, width, turning_speed, TIP, depth)
    return max(round(exact / COUNTED), 1) * COUNTED
