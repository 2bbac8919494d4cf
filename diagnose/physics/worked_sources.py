"""The worked answers `match-marks` and `forced-or-self-excited`."""

from __future__ import annotations

import math
from typing import Any

from diagnose.physics.bearings import Bearing
from diagnose.physics.catalogue import Answer, Input, Line, WordInput, Worked
from diagnose.physics.quantities import Quantity
from diagnose.physics.readings import BadReadings
from diagnose.physics.sources_of_vibration import (
    Machine,
    Match,
    match_sources,
    sources_of_vibration,
)
from diagnose.physics.trials import Chatter, Drive, forced_or_self_excited

DRIVES = tuple(drive.value for drive in Drive)
_DRIVE = WordInput("drive", "how the wheel is driven", DRIVES, "")
MACHINE_INPUTS: tuple[Input | WordInput, ...] = (
    _DRIVE,
    Input("turning_speed", "turning-speed", "turning speed of the wheel", ""),
    Input("motor_speed", "turning-speed", "turning speed of the motor", ""),
    Input("line_frequency", "frequency", "mains, or what the inverter gives", ""),
    Input("pulley_diameter", "length", "pitch diameter of the pulley on the spindle", ""),
    Input("belt_length", "length", "length of the belt", ""),
    Input("pump_speed", "turning-speed", "turning speed of the hydraulic pump", ""),
    Input("pump_elements", "count", "pistons or vanes of the pump", ""),
    Input("rack_pitch", "length", "tooth to tooth of the table's rack", ""),
    Input("roller_pitch", "length", "roller to roller of the ways", ""),
    Input("balls", "count", "balls of the spindle bearing", ""),
    Input("ball_diameter", "length", "their diameter", ""),
    Input("pitch_diameter", "length", "diameter of the circle through their middles", ""),
    Input("speed_share", "ratio", "how well the turning speeds are known", "2 %"),
)


def machine_from(
    drive: str = "",
    balls: float | None = None,
    ball_diameter: float | None = None,
    pitch_diameter: float | None = None,
    **known: Any,
) -> Machine:
    """The machine as given, SI units; what is left out is not known.

    Raises BadReadings when a bearing is given in part or a value is not above 0.
    """
    for name, value in known.items():
        if value <= 0.0:
            raise BadReadings(f"{name} is not above 0.", "Leave out what is not known.")
    bearings: tuple[Bearing, ...] = ()
    if balls is not None and ball_diameter is not None and pitch_diameter is not None:
        bearings = (Bearing(balls, ball_diameter, pitch_diameter),)
    elif (balls, ball_diameter, pitch_diameter) != (None, None, None):
        mend = "Give balls, ball_diameter and pitch_diameter, or none of them."
        raise BadReadings("The bearing is given in part.", mend)
    return Machine(drive=Drive(drive) if drive else None, bearings=bearings, **known)


def match_lines(match: Match) -> list[Line]:
    """The sources a frequency fits, and what would tell them apart."""
    lines = [
        Line("fits", s.name, value=s.lowest, highest=s.highest, dimension="frequency")
        for s in match.fits
    ]
    label = "to prove it" if match.told_apart else "to tell them apart" if match.fits else "next"
    return [*lines, *(Line(label, each) for each in match.experiments)]


def marks_answer(
    frequency: Quantity | None = None,
    spacing: Quantity | None = None,
    table_speed: Quantity | None = None,
    **machine: Any,
) -> Answer:
    """Which sources of the machine a frequency, or a spacing at a table speed, fits.

    Raises BadReadings when neither is given whole, or both are; OutOfRange.
    """
    low, high = _range_of(frequency, spacing, table_speed)
    known = machine_from(**machine)
    speed = table_speed.value if table_speed else None
    match = match_sources(low, high, known, speed)
    first = Line("frequency of the marks", value=low, highest=high, dimension="frequency")
    others = [
        Line("does not fit", s.name, value=s.lowest, highest=s.highest, dimension="frequency")
        for s in sources_of_vibration(known, speed)
        if s not in match.fits
    ]
    return Answer((first, *match_lines(match), *others), match.said)


def _range_of(
    frequency: Quantity | None, spacing: Quantity | None, table_speed: Quantity | None
) -> tuple[float, float]:
    if frequency is not None and spacing is not None:
        raise BadReadings("Both a frequency and a spacing are given.", "Give one of the two.")
    if frequency is not None:
        return max(frequency.lowest, 1e-3), frequency.highest
    if spacing is None or table_speed is None:
        mend = "Give frequency=47Hz, or spacing=3.3mm and table_speed=10m/min."
        raise BadReadings("There is no frequency to look for.", mend)
    share = math.hypot(_share(spacing), _share(table_speed))
    middle = table_speed.value / spacing.value
    return middle * (1.0 - min(share, 0.9)), middle * (1.0 + share)


def _share(quantity: Quantity) -> float:
    if quantity.value <= 0.0:
        raise BadReadings(f"'{quantity.text}' is not above 0.", "Give what was measured.")
    return (quantity.uncertainty or 0.0) / quantity.value


_SEEN = {"yes": True, "no": False, "dont-know": None}


def chatter_answer(
    idling: str, at_once: str, comes_back: str, drive: str, followed: float | None = None
) -> Answer:
    """Forced or self-excited, from what was seen. Raises nothing."""
    found = forced_or_self_excited(
        shakes_while_idling=_SEEN[idling],
        follows_wheel_speed=followed,
        at_once_after_dress=_SEEN[at_once],
        gone_after_dress_then_back=_SEEN[comes_back],
        drive=Drive(drive) if drive else None,
    )
    lines = [Line("verdict", found.verdict.value)]
    lines += [Line("because", each) for each in found.because]
    lines.append(Line("next look", found.next_look))
    return Answer(tuple(lines), _MEANINGS[found.verdict])


_MEANINGS = {
    Chatter.FORCED: "Something drives this shake and can be found and stopped.",
    Chatter.SELF_EXCITED: "The cut makes this shake itself: change the wheel face or the cut.",
    Chatter.UNDECIDED: "What was seen does not decide it; the next look can.",
}


def _yes_no(name: str, words: str) -> WordInput:
    return WordInput(name, words, tuple(_SEEN), "dont-know")


WORKED = (
    Worked(
        id="match-marks",
        name="which sources of this machine fit the marks, and what tells them apart",
        inputs=(
            Input("frequency", "frequency", "frequency of the marks, or of a hum", "", whole=True),
            Input("spacing", "length", "or the spacing of the marks", "", whole=True),
            Input("table_speed", "speed", "with the table speed at that spot", "", whole=True),
            *MACHINE_INPUTS,
        ),
        function=marks_answer,
        formula="table speed / spacing against the frequency of each source, where ranges meet",
        source="kinematics; shares of spacing and speed added as squares, GUM (from memory)",
        standing="derived",
        limits="Only what is given of the machine is looked at. Write the give-or-take: "
        "spacing=3.3+-0.1mm. Mid-stroke of a hand stroke is up to 57 % faster than the mean.",
    ),
    Worked(
        id="forced-or-self-excited",
        name="whether something drives the shake or the cut makes it itself",
        inputs=(
            _yes_no("idling", "it shakes while the wheel runs idle"),
            _yes_no("at_once", "the marks are there at once after a rough dress"),
            _yes_no("comes_back", "the marks go with a dress and grow again"),
            _DRIVE,
            Input("followed", "ratio", "result of wheel-speed-trial", ""),
        ),
        function=chatter_answer,
        formula="each thing seen points to one of the two; both or neither decides nothing",
        source="Cutting Tool Engineering, April 2011, Origins of chatter; lecture after Inasaki "
        "and others, CIRP 2001",
        standing="confirmed",
        limits="Idling is felt with the wheel clear of the work, hand on the column. Change the "
        "wheel's speed downwards only.",
    ),
)
