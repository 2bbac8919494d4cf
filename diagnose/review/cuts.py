"""A cut this machine can pull: rough, finish, spark-out, from the spindle's power.

The ceiling is an area, depth x crossfeed (`physics/power.py`); the handbook's depth and share of
the face are ceilings as well and never exceeded. Roughing goes no deeper than where the burn index
of `physics/heat.py` reaches 1, so that what is recommended raises no warning of its own.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.physics.heat import burn_margin
from diagnose.physics.power import (
    DEEPEST,
    FINISH,
    FINISH_CROSSFEED,
    THIN,
    TINY_CROSSFEED,
    area_ceiling,
    thin_way,
    working_share,
)
from diagnose.physics.tables import DEPTHS, METALS, DepthRow
from diagnose.physics.wear import depth_left, spark_out_passes

BRISK = (10 / 60, 18 / 60)  # m/s, table by hand; common practice
BRISK_DRIVEN = (15 / 60, 25 / 60)  # m/s, hydraulic table; inside the handbook's 15 to 30 m/min
SHALLOW = 25e-6  # m, a deeper cut wants a tiny crossfeed
THIN_WORK = 5e-6  # m, a quarter of the usual depth; common practice
SPARE = 1.1  # burn index to keep, an index and no promise
MIDDLE = 0.65  # of the ceiling: energies spread by a quarter, and that must not stall the spindle
WIDEST = 1 / 4  # of the face: fewer than four passes over each place leave lines
PLAN_ENERGY = 40e9  # J/m3, the energy the burn rule of the book plans with
CUT_SHARE = 0.35  # of what is left, cut by one pass of a light machine
LEAST_LEFT = 0.5e-6  # m, nothing is asked below half a micrometre
FINISHING = 4  # passes that take what roughing leaves
FEWEST, MOST = 2, 6  # spark-out passes
DIAL = 0.05e-3  # m, crossfeeds are given in steps a handwheel can be set to
STEP = 0.5e-6  # m, depths are given in steps a dial can be read to


@dataclass(frozen=True)
class Cut:
    """One way to set the cut (SI). `area` is depth x crossfeed, `share` of the ceiling."""

    kind: str  # rough | rough, the other way | finish
    depth: float
    crossfeed: float
    area: float
    share: float


@dataclass(frozen=True)
class Cuts:
    """The cuts for one job (SI), with the ceilings they stay under."""

    table_speed: float
    slowest: float  # table speed that is still brisk
    ceiling: float
    work_at: float  # share of the ceiling
    row: DepthRow
    widest: float  # crossfeed the handbook allows on this wheel
    ways: tuple[Cut, ...]
    spark_out: int
    left: float  # still to come off after the spark-out


def table_pace(told: float, driven: bool) -> tuple[float, float]:
    """(table speed to plan with, slowest that is brisk) in m/s; as told where that is brisk."""
    low, high = BRISK_DRIVEN if driven else BRISK
    return min(max(told, low), high), low


def cuts_for(
    metal: str,
    power: float,
    pace: tuple[float, float],
    wheel_width: float,
    wheel_diameter: float,
    *,
    dry: bool,
    thin: bool,
    tolerance: float | None,
) -> Cuts:
    """The cuts for a metal of the tables. Lengths m, power W; `pace` from `table_pace`.

    Raises KeyError for a metal that has no row, OutOfRange.
    """
    row, (table_speed, slowest) = DEPTHS[metal], pace
    ceiling = area_ceiling(power, METALS[metal].energy, table_speed)
    at = min(MIDDLE, working_share(False, dry, thin))
    area, widest = at * ceiling, min(row.crossfeed, WIDEST) * wheel_width
    most = min(row.rough, THIN_WORK if thin else DEEPEST)
    deepest = _cool(most, wheel_diameter, table_speed)
    ways = [_cut("rough", *thin_way(area, widest, deepest), ceiling)]
    if deepest > THIN and not thin:
        across = min(widest, area / deepest, TINY_CROSSFEED if deepest > SHALLOW else widest)
        ways.append(_cut("rough, the other way", deepest, across, ceiling))
    fine = min(FINISH, row.finish)
    ways.append(_cut("finish", fine, min(area / fine, widest, FINISH_CROSSFEED), ceiling))
    aim = max(LEAST_LEFT, (tolerance or 4e-6) / 4)
    passes = FEWEST if aim >= fine else int(spark_out_passes(CUT_SHARE, aim / fine))
    passes = min(max(passes, FEWEST), MOST)
    left = depth_left(fine, CUT_SHARE, passes)
    return Cuts(table_speed, slowest, ceiling, at, row, widest, tuple(ways), passes, left)


def _cut(kind: str, depth: float, crossfeed: float, ceiling: float) -> Cut:
    across = max(math.floor(crossfeed / DIAL + 1e-9), 1) * DIAL
    across = min(across, crossfeed)
    return Cut(kind, depth, across, depth * across, depth * across / ceiling)


def _cool(deepest: float, diameter: float, table_speed: float) -> float:
    """The deepest cut, in steps of a dial, whose burn index keeps its spare."""
    steps = math.floor(deepest / STEP + 1e-6)
    while steps * STEP > THIN and _index(steps * STEP, diameter, table_speed) < SPARE:
        steps -= 1
    return max(steps * STEP, min(THIN, deepest))


def _index(depth: float, diameter: float, table_speed: float) -> float:
    return burn_margin(PLAN_ENERGY, depth, diameter, table_speed)
