"""Fault frequencies of a rolling bearing whose outer ring stands still.

Source: textbook kinematics as on a published fault-frequency page (BRG1), confirmed against two
published examples; real values lie 1 to 3 % lower because the balls slip (BRG2). The geometry is
seldom known at the machine: where it is not, these are left out.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.physics.catalogue import Calculation, Input
from diagnose.physics.errors import within

SLIP = 0.03  # real bearings run up to this share below the sum


@dataclass(frozen=True)
class Bearing:
    """A rolling bearing: number of balls, ball and pitch diameters (m), contact angle (rad)."""

    balls: float
    ball_diameter: float
    pitch_diameter: float
    contact_angle: float = 0.0


def cage_frequency(
    shaft_speed: float, ball_diameter: float, pitch_diameter: float, contact_angle: float = 0.0
) -> float:
    """Turning of the cage in Hz: 1/2 f (1 - k) with k = d/D cos(angle).

    `shaft_speed` rev/s, diameters m, `contact_angle` rad. Raises OutOfRange.
    Source: textbook kinematics of a rolling bearing (confirmed on two published examples).
    """
    k = _share(shaft_speed, ball_diameter, pitch_diameter, contact_angle)
    return 0.5 * shaft_speed * (1.0 - k)


def outer_race_frequency(
    balls: float,
    shaft_speed: float,
    ball_diameter: float,
    pitch_diameter: float,
    contact_angle: float = 0.0,
) -> float:
    """Balls over a spot on the outer race in Hz: N/2 f (1 - k).

    Source: textbook kinematics of a rolling bearing (confirmed on two published examples).
    Raises OutOfRange.
    """
    within("balls", balls, "count", 2.0, 200.0)
    return balls * cage_frequency(shaft_speed, ball_diameter, pitch_diameter, contact_angle)


def inner_race_frequency(
    balls: float,
    shaft_speed: float,
    ball_diameter: float,
    pitch_diameter: float,
    contact_angle: float = 0.0,
) -> float:
    """Balls over a spot on the inner race in Hz: N/2 f (1 + k).

    Source: textbook kinematics of a rolling bearing (confirmed on two published examples).
    Raises OutOfRange.
    """
    within("balls", balls, "count", 2.0, 200.0)
    k = _share(shaft_speed, ball_diameter, pitch_diameter, contact_angle)
    return 0.5 * balls * shaft_speed * (1.0 + k)


def ball_frequency(
    shaft_speed: float, ball_diameter: float, pitch_diameter: float, contact_angle: float = 0.0
) -> float:
    """Turning of a ball about itself in Hz: D/2d f (1 - k^2); a flaw shows mostly at twice this.

    Raises OutOfRange.
    Source: textbook kinematics of a rolling bearing (confirmed on two published examples).
    """
    k = _share(shaft_speed, ball_diameter, pitch_diameter, contact_angle)
    return pitch_diameter / (2.0 * ball_diameter) * shaft_speed * (1.0 - k * k)


def _share(shaft: float, ball: float, pitch: float, angle: float) -> float:
    within("shaft_speed", shaft, "turning-speed", 1e-3, 1e4)
    within("pitch_diameter", pitch, "length", 1e-4, 10.0)
    within("ball_diameter", ball, "length", 1e-2 * pitch, 0.95 * pitch)
    within("contact_angle", angle, "angle", 0.0, 1.56)
    return ball / pitch * math.cos(angle)


_BALLS = Input("balls", "count", "Balls or rollers in one row.")
_GEOMETRY = (
    Input("shaft_speed", "turning-speed", "Turning speed of the inner ring with the spindle."),
    Input("ball_diameter", "length", "Diameter of one ball or roller."),
    Input("pitch_diameter", "length", "Diameter of the circle the ball centres lie on."),
    Input("contact_angle", "angle", "Contact angle; 0 for a deep-groove bearing.", "0 deg"),
)
_SOURCE = "rolling-bearing kinematics; published fault-frequency pages and test-rig orders."
_LIMITS = (
    "Outer ring at rest, no slip: real values lie 1 to 3 % lower. Not for plain bearings. "
    "Without the bearing's geometry leave it out."
)


def _meaning(part: str) -> str:
    return f"Marks or a hum at this frequency, or a little below, point to {part} of that bearing"


CALCULATIONS = (
    Calculation(
        "bearing-outer-race",
        "balls passing a spot on the outer race of a bearing",
        (_BALLS, *_GEOMETRY),
        "frequency",
        outer_race_frequency,
        "half the balls x turning speed x (1 - ball / pitch diameter x cos angle)",
        lambda _inputs, _result: _meaning("the outer race") + ".",
        _SOURCE,
        "confirmed",
        _LIMITS,
    ),
    Calculation(
        "bearing-inner-race",
        "balls passing a spot on the inner race of a bearing",
        (_BALLS, *_GEOMETRY),
        "frequency",
        inner_race_frequency,
        "half the balls x turning speed x (1 + ball / pitch diameter x cos angle)",
        lambda _inputs, _result: _meaning("the inner race") + ".",
        _SOURCE,
        "confirmed",
        _LIMITS,
    ),
    Calculation(
        "bearing-ball",
        "turning of one ball of a bearing",
        _GEOMETRY,
        "frequency",
        ball_frequency,
        "pitch / (2 x ball diameter) x turning speed x (1 - (ball / pitch x cos angle) squared)",
        lambda _inputs, _result: _meaning("a ball") + ", mostly at twice this figure.",
        _SOURCE,
        "confirmed",
        _LIMITS,
    ),
    Calculation(
        "bearing-cage",
        "turning of the cage of a bearing",
        _GEOMETRY,
        "frequency",
        cage_frequency,
        "half the turning speed x (1 - ball / pitch diameter x cos angle)",
        lambda _inputs, _result: _meaning("the cage") + ".",
        _SOURCE,
        "confirmed",
        _LIMITS,
    ),
)
