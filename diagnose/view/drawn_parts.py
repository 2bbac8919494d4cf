"""From the facts of a case to what is drawn of them."""

from __future__ import annotations

import math
from collections.abc import Mapping

from diagnose.book.conditions import FactValue, Number
from diagnose.book.grid_checks import grid_reading
from diagnose.physics.errors import OutOfRange
from diagnose.physics.marking import MarkingError, explained, read_marking
from diagnose.physics.readings import BadReadings
from diagnose.physics.sources_of_vibration import Machine, match_sources, sources_of_vibration
from diagnose.physics.trials import Drive
from diagnose.physics.units import show
from diagnose.reasoning.reason import Read
from diagnose.view.drawn import (
    FieldView,
    GridView,
    LimitView,
    MarkingView,
    ShakersView,
    ShakerView,
)

DRIVES = {"belt": Drive.BELT, "direct": Drive.DIRECT, "inverter-direct": Drive.INVERTER}
COUNTED = ("bar-frequency", "bar-frequency-over-a-length")
# number -> (name, what the two sides of 1 mean, safe above 1)
LIMITS = {
    "margin-to-burn": ("How far the cut is from burn", "below 1 it burns", True),
    "share-of-power": ("The cut against the spindle", "above 1 the spindle slows", False),
}


def marking_view(wheel: str, text: str) -> MarkingView | None:
    """The marking at the head of a line taken apart; None when it cannot be read."""
    try:
        marking = read_marking(text.split(",")[0].split(";")[0])
    except MarkingError:
        return None
    fields = tuple(FieldView(*each) for each in explained(marking) if each[1] != "-")
    return MarkingView(wheel, text, fields)


def shakers_view(read: Read, units: str) -> ShakersView | None:
    """What can shake on this machine and what the marks fit; None when no speed is known."""
    facts = read.facts
    turns = _number(facts, "spindle-speed")
    if turns is None:
        return None
    motor, table = _number(facts, "motor-speed"), _number(facts, "table-speed")
    machine = Machine(
        drive=DRIVES.get(str(facts.get("drive"))),
        turning_speed=turns.value,
        motor_speed=motor.value if motor else None,
    )
    marks = next((n for n in (_number(facts, name) for name in COUNTED) if n), None)
    try:
        found = sources_of_vibration(machine)
        match = match_sources(marks.low, marks.high, machine) if marks else None
    except OutOfRange:
        return None
    pace = table.value if table else None
    shakers = tuple(
        ShakerView(
            source.name,
            _range(source.lowest, source.highest, units),
            f"{show(pace / source.frequency, 'length', units)} apart" if pace else "",
            match is not None and source in match.fits,
            source.lowest,
            source.highest,
        )
        for source in found
    )
    if marks is None or match is None:
        return ShakersView("", "", 0.0, 0.0, shakers)
    rate = _range(marks.low, marks.high, units)
    return ShakersView(rate, match.said, marks.low, marks.high, shakers)


def _range(low: float, high: float, units: str) -> str:
    ends = [show(float(f"{hertz:.3g}"), "frequency", units) for hertz in (low, high)]
    return ends[0] if ends[0] == ends[1] else f"{ends[0]} to {ends[1]}"


def limit_views(read: Read, units: str) -> tuple[LimitView, ...]:
    """The numbers that have a limit at 1."""
    out = []
    for name, (words, means, good_above) in LIMITS.items():
        number = _number(read.facts, name)
        if number is None or number.low <= 0.0 or not math.isfinite(number.high):
            continue
        value, low, high = (
            show(v, "ratio", units) for v in (number.value, number.low, number.high)
        )
        sizes = (number.value, number.low, number.high)
        out.append(LimitView(words, value, low, high, means, good_above, *sizes))
    return tuple(out)


def grid_views(read: Read, units: str) -> tuple[GridView, ...]:
    """The grids of readings that were told, each as a map."""
    out = []
    for name, told in sorted(read.gathered.told.items()):
        check = read.book.checks[name]
        if check.reads != "grid":
            continue
        try:
            reading = grid_reading(check, told.text)
            terms = reading.split().terms
        except BadReadings:
            continue
        rows = tuple(tuple("" if math.isnan(v) else f"{v:g}" for v in r) for r in reading.rows)
        values = [v for row in reading.rows for v in row if not math.isnan(v)]
        out.append(
            GridView(
                check.name,
                reading.unit,
                reading.setting.against.value.replace("-", " "),
                rows,
                tuple(tuple(None if math.isnan(v) else v for v in r) for r in reading.rows),
                tuple((t.name.replace("-", " "), show(t.value, "deviation", units)) for t in terms),
                f"{max(values) - min(values):g} {reading.unit}",
            )
        )
    return tuple(out)


def _number(facts: Mapping[str, FactValue], name: str) -> Number | None:
    value = facts.get(name)
    return value if isinstance(value, Number) else None
