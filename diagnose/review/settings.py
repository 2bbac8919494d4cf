"""The settings recommended, by the checks that ask for them, beside those planned."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.book.conditions import Number
from diagnose.physics.dressing import DEPTHS
from diagnose.physics.units import show
from diagnose.review.cuts import Cuts
from diagnose.review.dresses import Dresses
from diagnose.review.set_up import DEPTH, SPARK_OUT, SetUp

ACROSS, TABLE, SECONDS, BITE = "crossfeed", "table-speed", "dress-seconds", "dress-depth"
LEAST_ACROSS, LEAST_BITE = 0.05e-3, 5e-6  # m
NEAR = 0.12  # a setting within this share of the recommended range is left as it is
BY_HAND = 0.2  # the same for seconds that a hand keeps


@dataclass(frozen=True)
class Setting:
    """One setting: recommended `low` to `high`, best `target` (SI); `planned` None = not said."""

    check: str
    dimension: str
    low: float
    high: float
    target: float
    planned: Number | None
    pairs: tuple[tuple[float, float], ...] = ()  # (depth, crossfeed): one goes with the other

    @property
    def keep(self) -> bool:
        """True when the planned one lies within the range recommended."""
        if self.planned is None:
            return False
        near = BY_HAND if self.dimension == "time" else NEAR
        return self.low * (1 - near) <= self.planned.value <= self.high * (1 + near)

    def said(self, units: str) -> str:
        """The range recommended, in words; for depth and crossfeed each with its other."""
        if self.pairs:
            said = [self._pair(depth, across, units) for depth, across in self.pairs]
            ways = ", or ".join(said[:-1] or said)
            return ways + (f"; to finish {said[-1]}" if len(said) > 1 else "")
        low, high = show(self.low, self.dimension, units), show(self.high, self.dimension, units)
        if low.endswith(" µm") and high.endswith(" mm"):  # one unit: both are read off one dial
            low = f"{self.low * 1e3:.2g} mm"
        return low if low == high else f"{low} to {high}"

    def _pair(self, depth: float, across: float, units: str) -> str:
        deep, wide = show(depth, "length", units), show(across, "length", units)
        if deep.endswith(" µm"):
            deep = f"{depth * 1e3:.2g} mm"
        if self.check == ACROSS:
            return f"{wide} at most with {deep} deep"
        return f"{deep} with {wide} across"

    def answer(self) -> str:
        """The setting to go on with, as the answer of its check: the planned one if it will do."""
        value = self.planned.value if self.planned is not None and self.keep else self.target
        unit, factor = UNITS[self.dimension]
        return f"{value * factor:.6g} {unit}".strip()


UNITS = {"length": ("mm", 1e3), "speed": ("m/min", 60.0), "time": ("s", 1.0), "count": ("", 1.0)}


def settings_for(setup: SetUp, cuts: Cuts, dresses: Dresses) -> tuple[Setting, ...]:
    """The settings of the job, those of the roughing cut first. A smaller crossfeed is left be."""
    rough, finish, dress = cuts.ways[0], cuts.ways[-1], dresses.ways[-1]
    depth = _planned(setup, DEPTH)
    deepest = max(way.depth for way in cuts.ways)
    across = rough.crossfeed
    if depth is not None and depth.value <= deepest * (1 + NEAR):
        across = min(cuts.widest, cuts.work_at * cuts.ceiling / depth.value)
    slow = min(cuts.table_speed, cuts.slowest)
    rows = (
        (DEPTH, "length", finish.depth, deepest, rough.depth),
        (ACROSS, "length", LEAST_ACROSS, across, min(across, rough.crossfeed)),
        (TABLE, "speed", slow, cuts.table_speed, cuts.table_speed),
        (BITE, "length", LEAST_BITE, dresses.ways[0].depth, dress.depth),
        (SECONDS, "time", dresses.least, dress.seconds[1], dresses.aim),
        (SPARK_OUT, "count", float(cuts.spark_out), cuts.spark_out + 2.0, float(cuts.spark_out)),
    )
    pairs = _pairs(setup, cuts, deepest, across)
    return tuple(
        Setting(*row, _planned(setup, row[0]), pairs if row[0] in (DEPTH, ACROSS) else ())
        for row in rows
    )


def _pairs(
    setup: SetUp, cuts: Cuts, deepest: float, across: float
) -> tuple[tuple[float, float], ...]:
    """Depth and crossfeed that go together (m): the depth planned where it may stay, else the
    ways of the table, roughing first. No pair is more than what the spindle is to pull."""
    depth = _planned(setup, DEPTH)
    if depth is not None and depth.value <= deepest * (1 + NEAR):
        return ((depth.value, across),)
    return tuple((way.depth, way.crossfeed) for way in cuts.ways)


def usual_bite(setup: SetUp) -> float | None:
    """The planned depth of the last dressing pass (m), where it may stay; else None."""
    bite = _planned(setup, BITE)
    fits = bite is not None and LEAST_BITE <= bite.value <= DEPTHS["rough"]
    return bite.value if bite is not None and fits else None


def _planned(setup: SetUp, check: str) -> Number | None:
    value = setup.read.facts.get(check)
    return value if isinstance(value, Number) else None
