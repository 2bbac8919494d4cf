"""Marks on the work turned into frequencies, and back.

Lengths in metres, speeds in m/s, turning speeds in rev/s, frequencies in Hz. Marks are bars
across the way the table runs. Sources stand beside each formula.
"""

from __future__ import annotations

import math

from diagnose.physics.catalogue import Calculation, Input
from diagnose.physics.errors import within

HAND_STROKE_PEAK = math.pi / 2.0  # fastest over mean speed of a swing that follows a sine


def mark_frequency(spacing: float, table_speed: float) -> float:
    """How often a mark is made (Hz): table speed (m/s) at that spot / spacing (m).

    Source: kinematics; worked example in *Cutting Tool Engineering*, April 2011. Raises OutOfRange.
    """
    within("spacing", spacing, "length", 1e-6, 10.0)
    within("table_speed", table_speed, "speed", 1e-3, 2.0)
    return table_speed / spacing


def mark_frequency_uncertainty(
    spacing: float, spacing_uncertainty: float, table_speed: float, speed_uncertainty: float
) -> float:
    """By how much the mark frequency may be out (Hz), the shares added as squares.

    Source: ISO/IEC Guide 98-3 (GUM), law of propagation (from memory). Raises OutOfRange.
    """
    frequency = mark_frequency(spacing, table_speed)
    within("spacing_uncertainty", spacing_uncertainty, "length", 0.0, 0.5 * spacing)
    within("speed_uncertainty", speed_uncertainty, "speed", 0.0, 0.5 * table_speed)
    share = math.hypot(spacing_uncertainty / spacing, speed_uncertainty / table_speed)
    return frequency * share


def mark_spacing(marks: float, length: float) -> float:
    """Spacing (m) of `marks` spaces counted in a length (m).

    Source: definition. Raises OutOfRange.
    """
    within("marks", marks, "count", 1.0, 1e5)
    within("length", length, "length", 1e-5, 10.0)
    return length / marks


def marks_per_wheel_turn(spacing: float, table_speed: float, turning_speed: float) -> float:
    """Marks made in one turn of the wheel: mark frequency / turning speed (rev/s).

    1 is the wheel itself, a whole number a harmonic or a lobed wheel, 2 / 3 and the like
    something else. Source: kinematics. Raises OutOfRange.
    """
    within("turning_speed", turning_speed, "turning-speed", 1.0, 2000.0)
    return mark_frequency(spacing, table_speed) / turning_speed


def wheel_turn_spacing(table_speed: float, turning_speed: float) -> float:
    """Spacing (m) of marks made once a turn of the wheel. Source: kinematics. Raises OutOfRange."""
    within("table_speed", table_speed, "speed", 1e-3, 2.0)
    within("turning_speed", turning_speed, "turning-speed", 1.0, 2000.0)
    return table_speed / turning_speed


def deepest_wave(spacing: float, wheel_diameter: float) -> float:
    """The deepest wave (m) a wheel can cut at this spacing: p^2 / 4d.

    A round wheel bridges the valley: sagitta of a chord p of the circle d. Derived. Raises
    OutOfRange: the sum holds for spacings up to a fifth of the diameter.
    """
    within("wheel_diameter", wheel_diameter, "length", 0.01, 2.0)
    within("spacing", spacing, "length", 1e-6, 0.2 * wheel_diameter)
    return spacing**2 / (4.0 * wheel_diameter)


def hand_stroke_peak_speed(mean_speed: float) -> float:
    """The speed (m/s) in the middle of a stroke swung by hand: up to pi/2 x the mean.

    A stopwatch gives the mean; at a given spot the speed lies between -0 and +57 % of it where
    marks are counted mid-stroke. Derived for a swing that follows a sine. Raises OutOfRange.
    """
    within("mean_speed", mean_speed, "speed", 1e-3, 2.0)
    return HAND_STROKE_PEAK * mean_speed


_SPACING = Input("spacing", "length", "Spacing of the marks; count ten or more and divide.")
_TABLE = Input("table_speed", "speed", "Speed of the table at that spot, not the mean of a stroke.")
_TURNING = Input("turning_speed", "turning-speed", "Turning speed of the wheel.")
_WORKED_EXAMPLE = "kinematics; worked example in Cutting Tool Engineering, April 2011"
_AT_THE_SPOT = (
    "The speed at that spot counts: mid-stroke of a hand-swung table it is up to 1.57 times the "
    "mean. Motor hum and twice the wheel lie 4 to 5 % apart: too close for a hand-fed table."
)


def _of_frequency(_inputs: dict[str, float], result: float) -> str:
    rpm = 60.0 * result
    return f"Something happens {result:.1f} times a second ({rpm:.0f} a minute): what turns so?"


def _of_per_turn(_inputs: dict[str, float], result: float) -> str:
    nearest = round(result)
    if nearest >= 1 and abs(result - nearest) <= 0.04 * nearest:
        times = "once" if nearest == 1 else f"{nearest} times"
        return f"About {times} a turn of the wheel: look at the wheel and its mounting first."
    slower = (
        "slower than the wheel: belt, motor, pump" if result < 1 else "not the wheel's own turn"
    )
    return f"{result:.2f} marks a turn of the wheel: {slower}."


def _of_wave(_inputs: dict[str, float], result: float) -> str:
    return (
        f"Waves at this spacing cannot be deeper than {result * 1e6:.2g} µm; what measures deeper "
        "is not cut by the round of this wheel."
    )


CALCULATIONS = (
    Calculation(
        "mark-frequency",
        "frequency of the marks",
        (_SPACING, _TABLE),
        "frequency",
        mark_frequency,
        "table speed / spacing",
        _of_frequency,
        _WORKED_EXAMPLE,
        "confirmed",
        _AT_THE_SPOT,
    ),
    Calculation(
        "mark-frequency-uncertainty",
        "by how much the frequency of the marks may be out",
        (
            _SPACING,
            Input("spacing_uncertainty", "length", "Give or take on the spacing."),
            _TABLE,
            Input("speed_uncertainty", "speed", "Give or take on the table speed."),
        ),
        "frequency",
        mark_frequency_uncertainty,
        "frequency x root of (share of the spacing squared + share of the speed squared)",
        lambda _inputs, result: f"Sources within {result:.2g} Hz of it cannot be told apart.",
        "ISO/IEC Guide 98-3 (GUM), propagation of uncertainty",
        "from memory",
        "For errors that have nothing to do with each other.",
    ),
    Calculation(
        "mark-spacing",
        "spacing of marks counted in a length",
        (
            Input("marks", "count", "Spaces counted; ten or more."),
            Input("length", "length", "Length they were counted in, along the travel."),
        ),
        "length",
        mark_spacing,
        "length / marks",
        lambda inputs, _result: f"One mark miscounted moves this by {100 / inputs['marks']:.0f} %.",
        "definition",
        "derived",
        "Count spaces, not lines; lay the rule along the travel, wheel stopped.",
    ),
    Calculation(
        "marks-per-wheel-turn",
        "marks in one turn of the wheel",
        (_SPACING, _TABLE, _TURNING),
        "ratio",
        marks_per_wheel_turn,
        "table speed / spacing / turning speed",
        _of_per_turn,
        _WORKED_EXAMPLE,
        "confirmed",
        _AT_THE_SPOT,
    ),
    Calculation(
        "wheel-turn-spacing",
        "spacing of marks made once a turn of the wheel",
        (_TABLE, _TURNING),
        "length",
        wheel_turn_spacing,
        "table speed / turning speed",
        lambda _inputs, _result: "Bars at this spacing come once a turn of the wheel.",
        "kinematics",
        "derived",
        _AT_THE_SPOT + " A rack tooth can have the same spacing: count at a second table speed.",
    ),
    Calculation(
        "deepest-wave",
        "deepest wave a wheel can cut",
        (_SPACING, Input("wheel_diameter", "length", "Diameter of the wheel as it is now.")),
        "length",
        deepest_wave,
        "spacing squared / (4 x wheel diameter)",
        _of_wave,
        "geometry of a round wheel",
        "derived",
        "For spacings up to a fifth of the wheel's diameter.",
    ),
    Calculation(
        "hand-stroke-peak-speed",
        "fastest speed in a stroke swung by hand",
        (Input("mean_speed", "speed", "Mean speed: length of the stroke over its seconds."),),
        "speed",
        hand_stroke_peak_speed,
        "mean speed x pi / 2",
        lambda _inputs, _result: (
            "Mid-stroke the table may run this fast: take the speed as -0 / +57 % of the mean, or "
            "film the table over a rule."
        ),
        "swing that follows a sine",
        "derived",
        "Near the ends of the stroke it is slower than the mean.",
    ),
)
