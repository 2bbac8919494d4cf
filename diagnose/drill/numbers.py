"""Numbers of a drilled case: a machine, a wheel and speeds first, then what follows from them.

What is set is rounded first and what is read is worked out from it, so that every reading
satisfies the formulas of `diagnose.physics` with the others. All values are SI.
"""

from __future__ import annotations

import math
import random
from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.drill import usual
from diagnose.physics.holding import STEEL_MODULUS, bow_returned
from diagnose.physics.shown import digits
from diagnose.physics.units import find_unit
from diagnose.physics.vibration import mark_frequency, mark_spacing
from diagnose.physics.wheel import highest_turning_speed

COUNTED = 0.025  # m over which bars are counted
PULL = 750_000.0  # Pa of a shop magnet, the middle of 50 to 100 N/cm2
FEWEST = 1.2  # bars in that length in the quickest of the passes
WIDEST_LEAD = 8e-4  # m a turn; nobody runs the diamond across quicker
LEAST_BOW = 4e-6  # m, what an indicator on a shop plate still tells

# Bars in a turn of the wheel for each rhythm: the wheel itself, twice, and what belts, neighbours,
# bearings and ringing sheets are likely to do.
RATIOS: Mapping[str, tuple[float, ...]] = {
    "slower-than-the-wheel": (0.28, 0.34, 0.42, 0.55),
    "once-a-turn": (1.0,),
    "twice-a-turn": (2.0,),
    "several-a-turn": (3.1, 4.3, 5.4),
    "no-clear-rhythm": (1.5,),
}
FOLLOWED = {"follows-the-speed": 1.0, "follows-the-wheel": 1.0, "not-clear": 0.5}
HELD = {"comes-with-release": 0.12, "not-clear": 0.5, "there-while-held": 0.96}


@dataclass(frozen=True)
class Numbers:
    """What number checks would read: check -> text as written; and the rate of the bars (Hz)."""

    texts: Mapping[str, str]
    values: Mapping[str, float]
    bar_rate: float | None = None


class _Sheet:
    """Values written down one by one, each rounded as a person would read it."""

    def __init__(self, fixed: Mapping[str, tuple[str, float]]) -> None:
        self.texts = {n: text for n, (text, _) in fixed.items()}
        self.values = {n: value for n, (_, value) in fixed.items()}

    def put(
        self, check: str, value: float, unit: str, figures: int = 2, give: float = 0.0
    ) -> float:
        """Write a value in a unit; what stands already stays. `give`: share it may be out."""
        if check in self.values:
            return self.values[check]
        dimension, factor = _UNITS[unit]
        number = digits(value / factor, figures)
        spread = f" +- {digits(give * float(number), 1)}" if give else ""
        self.texts[check] = f"{number}{spread} {unit}".strip()
        known = find_unit(unit, dimension)
        self.values[check] = known.to_si(float(number)) if known else float(number) * factor
        return self.values[check]


_UNITS = {
    "rpm": ("turning-speed", 1.0 / 60.0),
    "mm": ("length", 1e-3),
    "m/min": ("speed", 1.0 / 60.0),
    "m/s": ("speed", 1.0),
    "kW": ("power", 1e3),
    "s": ("time", 1.0),
    "K": ("temperature-difference", 1.0),
    "": ("count", 1.0),
}


def draw_numbers(
    draw: random.Random,
    words: Mapping[str, str],
    signs: Mapping[str, str],
    thin: bool,
    fixed: Mapping[str, tuple[str, float]],
) -> Numbers:
    """One set of numbers that fits the answers in words and the signs that readings settle.

    `thin`: the part is a plate. `fixed` are readings known already: check -> text, SI value.
    """
    sheet = _Sheet(fixed)
    speed = _machine(draw, sheet, words)
    ratio = draw.choice(RATIOS[signs["bar-rhythm"]]) if "bar-rhythm" in signs else None
    # slow bars can be counted only where the table is slow enough
    most = COUNTED * ratio * speed / (2.0 * FEWEST) if ratio else math.inf
    able = [v for v in usual.TABLE_SPEEDS if v <= most] or usual.TABLE_SPEEDS[:1]
    table = sheet.put("table-speed", draw.choice(able), "m/min", 2)
    _cut(draw, sheet, words)
    _part(draw, sheet, thin)
    rate = _bars(sheet, signs, speed, table, ratio) if ratio else None
    _bow(draw, sheet, signs)
    return Numbers(sheet.texts, sheet.values, rate)


def _machine(draw: random.Random, sheet: _Sheet, words: Mapping[str, str]) -> float:
    able = [g for g in usual.GRINDERS if words.get("drive", "") in g.drives] or usual.GRINDERS
    grinder = draw.choice(able)
    speed = sheet.put("spindle-speed", grinder.spindle, "rpm", 4)
    sheet.put("machine-power", grinder.power, "kW", 3)
    worn = draw.uniform(0.88, 1.0)
    across = sheet.put("wheel-diameter", grinder.diameter * worn, "mm", 3)
    sheet.put("wheel-width", grinder.width, "mm", 3)
    sheet.put("marked-rim-speed", usual.MARKED, "m/s", 3)
    # the mark in turns holds for the wheel as it was new
    new = max(across, grinder.diameter)
    marked = math.floor(highest_turning_speed(usual.MARKED, new) * 6.0) / 6.0  # tens a minute
    sheet.put("marked-turning-speed", marked, "rpm", 4)
    sheet.put("pole-pitch", draw.choice(usual.POLE_PITCHES), "mm", 2)
    return speed


def _cut(draw: random.Random, sheet: _Sheet, words: Mapping[str, str]) -> None:
    width = sheet.values["wheel-width"]
    share = {"a-quarter-or-less": (0.06, 0.22), "about-half": (0.42, 0.58)}
    low, high = share.get(words.get("how-wide-a-bite", ""), (0.9, 1.0))
    if "how-wide-a-bite" not in words:
        low, high = 0.06, 0.58
    sheet.put("crossfeed", width * draw.uniform(low, high), "mm", 2)
    sheet.put("depth-of-cut", draw.choice(usual.DEPTHS), "mm", 2)
    quickest = max(1.5, width / (WIDEST_LEAD * sheet.values["spindle-speed"]))
    sheet.put("dress-seconds", math.exp(draw.uniform(math.log(quickest), math.log(30.0))), "s", 2)
    sheet.put("dress-depth", draw.choice(usual.DRESS_DEPTHS), "mm", 2)
    sheet.put("spark-out-strokes", float(draw.choice((0, 1, 2, 3, 4, 6, 10))), "")
    sheet.put("stock-to-come-off", draw.uniform(5e-5, 4e-4), "mm", 2)
    sheet.put("warmer-than-the-gauge", float(draw.choice((0, 1, 2, 5, 8, 12))), "K")


def _part(draw: random.Random, sheet: _Sheet, thin: bool) -> None:
    shape = usual.PLATE if thin else usual.BLOCK
    sheet.put("part-thickness", draw.uniform(*shape.thickness), "mm", 2)
    sheet.put("part-length", draw.uniform(*shape.length), "mm", 2)
    sheet.put("part-base", draw.uniform(*shape.base), "mm", 2)


def _bars(
    sheet: _Sheet, signs: Mapping[str, str], speed: float, table: float, ratio: float
) -> float:
    """Bars in 25 mm from the rate of the source and the table speed; then the two trials."""
    spacing = table / (ratio * speed)
    seen = sheet.put("bars-in-25mm", COUNTED / spacing, "", 2)
    spacing = mark_spacing(max(1.0, seen), COUNTED)
    rate = mark_frequency(spacing, table)
    if "spacing-at-other-speed" in signs:
        quick = sheet.put("quicker-table-speed", 2.0 * table, "m/min", 2)
        share = FOLLOWED.get(signs["spacing-at-other-speed"], 0.0)
        wider = spacing * (1.0 + share * (quick / table - 1.0))
        sheet.put("bars-at-quicker-table", COUNTED / wider, "", 2, 0.02)
    if "rate-at-slower-wheel" in signs:
        slow = sheet.put("slower-wheel-speed", 0.6 * speed, "rpm", 3)
        share = FOLLOWED.get(signs["rate-at-slower-wheel"], 0.0)
        slower = rate * (1.0 + share * (slow / speed - 1.0))
        sheet.put("bars-at-slower-wheel", COUNTED * slower / table, "", 2, 0.02)
    return rate


def _bow(draw: random.Random, sheet: _Sheet, signs: Mapping[str, str]) -> None:
    """The bow before, free and held: what the magnet pulls out comes back when it lets go."""
    stiff, length = sheet.values["part-thickness"], sheet.values["part-length"]
    before = sheet.put("bow-before", math.exp(draw.uniform(math.log(1e-5), math.log(1.5e-4))), "mm")
    back = bow_returned(PULL, before, length, stiff, STEEL_MODULUS)
    if signs.get("bow-as-the-magnet-gives-back") == "yes":
        free = back * draw.uniform(0.9, 1.2)
    else:
        free = back * draw.choice((0.25, 2.6)) if back > 2e-5 else draw.uniform(2.6, 6.0) * back
        free = max(free, 2.0 * LEAST_BOW)
    if free < LEAST_BOW:
        return  # too little to measure
    free = sheet.put("bow-free", free, "mm", 2, 0.05)
    held = HELD.get(signs.get("when-the-bow-comes", ""), 0.5) * free
    sheet.put("bow-held", held, "mm", 2, 0.05)
