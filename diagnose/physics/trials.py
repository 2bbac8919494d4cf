"""Trials that tell what is fixed in time from what is fixed in place, and forced from self-excited.

Both compare two counts made at two speeds, as the power with which one follows the other: 1 when
the marks follow the speed, 0 when they do not. Source: kinematics (derived); the wheel-speed trial
is in *Cutting Tool Engineering*, April 2011, "Origins of chatter".
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum

from diagnose.physics.catalogue import Calculation, Input
from diagnose.physics.errors import OutOfRange, within

LEAST_CHANGE = 1.2  # the two speeds must differ by this factor
FOLLOWS = 0.7  # at or above: the marks follow the speed
STAYS = 0.3  # at or below: they do not


class Drive(Enum):
    """How the wheel is driven; decides which experiments can be made."""

    BELT = "belt"
    DIRECT = "direct"
    INVERTER = "inverter"


class Fixed(Enum):
    """Where a pattern comes from by its table-speed trial."""

    IN_TIME = "in time"
    IN_PLACE = "in place"
    UNDECIDED = "undecided"


class Chatter(Enum):
    """Forced vibration comes from a source; self-excited is made by the cut itself."""

    FORCED = "forced"
    SELF_EXCITED = "self-excited"
    UNDECIDED = "undecided"


@dataclass(frozen=True)
class ChatterVerdict:
    """Forced or self-excited, the reasons, and the next look that would decide."""

    verdict: Chatter
    because: tuple[str, ...]
    next_look: str


def table_speed_trial(
    spacing_slow: float, speed_slow: float, spacing_fast: float, speed_fast: float
) -> float:
    """How far the spacing (m) followed the table speed (m/s): 1 fixed in time, 0 fixed in place.

    Source: kinematics (derived). Raises OutOfRange when the faster is not at least 1.2 times the
    slower.
    """
    within("spacing_slow", spacing_slow, "length", 1e-6, 10.0)
    within("spacing_fast", spacing_fast, "length", 1e-6, 10.0)
    _two_speeds("speed", "speed", speed_slow, speed_fast)
    return _follows(spacing_fast / spacing_slow, speed_fast / speed_slow)


def wheel_speed_trial(
    frequency_slow: float, wheel_slow: float, frequency_fast: float, wheel_fast: float
) -> float:
    """How far the mark frequency (Hz) followed the wheel (rev/s): 1 forced by it, 0 self-excited.

    Not with a wheel of one fixed speed. Raises OutOfRange when the faster is not at least 1.2
    times the slower; never raise a wheel above its marked speed for this: go down.
    Source: *Cutting Tool Engineering*, April 2011, "Origins of chatter" (confirmed).
    """
    within("frequency_slow", frequency_slow, "frequency", 0.01, 1e5)
    within("frequency_fast", frequency_fast, "frequency", 0.01, 1e5)
    _two_speeds("wheel", "turning-speed", wheel_slow, wheel_fast)
    return _follows(frequency_fast / frequency_slow, wheel_fast / wheel_slow)


def fixed_in(followed: float) -> Fixed:
    """What a table-speed trial says about the marks."""
    if followed >= FOLLOWS:
        return Fixed.IN_TIME
    return Fixed.IN_PLACE if followed <= STAYS else Fixed.UNDECIDED


def forced_or_self_excited(
    *,
    shakes_while_idling: bool | None = None,
    follows_wheel_speed: float | None = None,
    at_once_after_dress: bool | None = None,
    gone_after_dress_then_back: bool | None = None,
    drive: Drive | None = None,
) -> ChatterVerdict:
    """Weigh what was seen; None is don't know and counts for neither.

    `follows_wheel_speed` is the result of `wheel_speed_trial`. Source: *Cutting Tool Engineering*,
    April 2011; lecture after Inasaki and others, CIRP 2001 (confirmed).
    """
    forced: list[str] = []
    own: list[str] = []
    if shakes_while_idling:
        forced.append("it shakes while idling, so something drives it without the cut")
    if shakes_while_idling is False:
        own.append("nothing shakes while idling")
    if follows_wheel_speed is not None and follows_wheel_speed >= FOLLOWS:
        forced.append("the frequency went with the wheel's speed")
    if follows_wheel_speed is not None and follows_wheel_speed <= STAYS:
        own.append("the frequency stayed when the wheel's speed was changed")
    if at_once_after_dress:
        forced.append("the marks are there at once after a dress")
    if gone_after_dress_then_back:
        own.append("the marks go with a dress and grow again")
    return _weigh(forced, own, drive)


def _weigh(forced: list[str], own: list[str], drive: Drive | None) -> ChatterVerdict:
    if bool(forced) == bool(own):
        reasons = (*forced, *own) or ("nothing that was seen points either way",)
        return ChatterVerdict(Chatter.UNDECIDED, reasons, _next_look(drive))
    if forced:
        return ChatterVerdict(
            Chatter.FORCED, tuple(forced), "Find the source: stop things one by one."
        )
    look = "Sharper and softer wheel, lighter cut; see whether it comes back as soon."
    return ChatterVerdict(Chatter.SELF_EXCITED, tuple(own), look)


def _next_look(drive: Drive | None) -> str:
    dress = "Rough dress, one pass: marks there at once are forced; gone and coming back are not."
    if drive is Drive.BELT:
        return f"{dress} Or a lower belt step, never a higher one, and count again."
    if drive is Drive.INVERTER:
        return f"{dress} Or set the wheel a fifth slower, never faster, and count again."
    return dress


def _two_speeds(name: str, dimension: str, slow: float, fast: float) -> None:
    within(f"{name}_slow", slow, dimension, 1e-3, 2000.0)
    if not LEAST_CHANGE * slow <= fast <= 100.0 * slow:
        raise OutOfRange(f"{name}_fast", fast, dimension, LEAST_CHANGE * slow, 100.0 * slow)


def _follows(marks: float, speeds: float) -> float:
    # A spacing that moves against the speed does not follow it; below 0 would mean nothing.
    return max(0.0, math.log(marks) / math.log(speeds))


def _of_table_trial(inputs: dict[str, float], result: float) -> str:
    if inputs["spacing_fast"] < 0.9 * inputs["spacing_slow"]:
        return "The spacing shrank as the table went faster: count both again."
    said = {
        Fixed.IN_TIME: "The spacing followed: something in time (rotating, electrical, floor).",
        Fixed.IN_PLACE: "The spacing stayed: something in place (rack teeth, rollers, ways, dogs).",
        Fixed.UNDECIDED: "Between the two: count again with speeds further apart.",
    }
    return said[fixed_in(result)]


def _of_wheel_trial(_inputs: dict[str, float], result: float) -> str:
    if result >= FOLLOWS:
        return "The marks went with the wheel: forced by the wheel or what turns with it."
    if result <= STAYS:
        return "The frequency stayed: the cut shakes itself, or a source that is not the wheel."
    return "Between the two: count again with speeds further apart."


CALCULATIONS = (
    Calculation(
        "table-speed-trial",
        "how far the marks followed the table speed",
        (
            Input("spacing_slow", "length", "Spacing of the marks at the slower table speed."),
            Input("speed_slow", "speed", "The slower table speed."),
            Input("spacing_fast", "length", "Spacing of the marks at the faster table speed."),
            Input("speed_fast", "speed", "The faster table speed, at least 1.2 times the slower."),
        ),
        "ratio",
        table_speed_trial,
        "log (spacing 2 / spacing 1) / log (speed 2 / speed 1)",
        _of_table_trial,
        "kinematics",
        "derived",
        "1 is fixed in time, 0 fixed in place; 0.3 to 0.7 decides nothing.",
    ),
    Calculation(
        "wheel-speed-trial",
        "how far the marks followed the wheel speed",
        (
            Input("frequency_slow", "frequency", "Mark frequency at the slower wheel speed."),
            Input("wheel_slow", "turning-speed", "The slower turning speed of the wheel."),
            Input("frequency_fast", "frequency", "Mark frequency at the faster wheel speed."),
            Input("wheel_fast", "turning-speed", "The faster one, at least 1.2 times the slower."),
        ),
        "ratio",
        wheel_speed_trial,
        "log (frequency 2 / frequency 1) / log (wheel 2 / wheel 1)",
        _of_wheel_trial,
        "Cutting Tool Engineering, April 2011, Origins of chatter",
        "confirmed",
        "Belt step or inverter only, and only DOWN from the usual speed: never above the speed "
        "marked on the wheel.",
    ),
)
