"""The dress for the finish wanted: seconds from edge to edge, depth, passes."""

from __future__ import annotations

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
TIGHTEST = 8.0  # overlap beyond which a dress buys nothing
EVEN = (4.0, 5.0)  # the close half of a medium dress: more open, the lead of the diamond may show


OPEN = OVERLAPS["medium"][0]  # the most open dress that still counts as medium
SURE = 1.3  # the finish expected of that must come so many times finer than wanted to be left be


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
    least: float  # seconds from edge to edge below which the finish wanted is not sure


def dresses_for(
    finish: float | None, grit: float, wheel_width: float, turning_speed: float
) -> Dresses:
    """A dress to rough and one to finish. Lengths m, rev/s. Raises OutOfRange.

    The finishing dress is the most open one that gives the finish wanted; a finer one only heats.
    """
    finest = expected_roughness(grit, TIGHTEST)
    kind, wanted = _kind(finish, grit)
    rough = _dress("rough", "to rough", OVERLAPS["rough"], grit, wheel_width, turning_speed)
    fine = _dress(kind, "to finish", wanted, grit, wheel_width, turning_speed)
    least = fine.seconds[0]
    if finish is not None and expected_roughness(grit, OPEN) * SURE <= finish:
        least = min(least, rough.seconds[1])
    return Dresses((rough, fine), finest, finish is None or finest <= finish, least)


def _kind(finish: float | None, grit: float) -> tuple[str, tuple[float, float]]:
    """The most open dress to finish with that gives the finish, and its overlaps."""
    if finish is None or expected_roughness(grit, EVEN[0]) <= finish:
        return "medium", EVEN
    if expected_roughness(grit, EVEN[1]) <= finish:
        return "medium", (_overlap_for(finish, grit, *EVEN), EVEN[1])
    low, high = OVERLAPS["fine"]
    least = _overlap_for(finish, grit, EVEN[1], high)
    return "fine", (min(max(least, low), high), high)


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
    grit: float,
    width: float,
    turning_speed: float,
) -> Dress:
    low, high = overlaps
    depth = DEPTHS[kind]
    exact = [seconds_for_overlap(u, width, turning_speed, TIP, depth) for u in (low, high)]
    seconds = [max(round(s / COUNTED), 1) * COUNTED for s in exact]
    expected = expected_roughness(grit, low)
    return Dress(kind, use, depth, PASSES[kind], overlaps, (seconds[0], seconds[1]), expected)
