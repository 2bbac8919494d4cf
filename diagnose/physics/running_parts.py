"""How often the running parts of a machine come round: belt, motor, pump, rack.

Lengths in metres, turning speeds in rev/s, frequencies in Hz.
"""

from __future__ import annotations

import math

from diagnose.physics.catalogue import Calculation, Input
from diagnose.physics.errors import within


def belt_frequency(pulley_diameter: float, pulley_speed: float, belt_length: float) -> float:
    """How often one spot of the belt comes round (Hz): pi D n / L.

    Always below the turning speed of both pulleys; a bad spot shows at this and at twice this.
    Source: kinematics (derived). Raises OutOfRange: a belt is longer than round its pulley.
    """
    within("pulley_diameter", pulley_diameter, "length", 5e-3, 2.0)
    within("pulley_speed", pulley_speed, "turning-speed", 0.1, 2000.0)
    within("belt_length", belt_length, "length", math.pi * pulley_diameter, 20.0)
    return math.pi * pulley_diameter * pulley_speed / belt_length


def twice_line_frequency(line_frequency: float) -> float:
    """The hum of an electric motor (Hz): twice the line.

    Source: electric machines, any text (from memory). Raises OutOfRange.
    """
    within("line_frequency", line_frequency, "frequency", 1.0, 1000.0)
    return 2.0 * line_frequency


def motor_turning_speed(line_frequency: float, poles: float, slip: float) -> float:
    """Turning speed (rev/s) of an induction motor: 2 f / poles x (1 - slip).

    Source: textbook of electric machines (from memory). Raises OutOfRange.
    """
    within("line_frequency", line_frequency, "frequency", 1.0, 1000.0)
    within("poles", poles, "count", 2.0, 24.0)
    within("slip", slip, "ratio", 0.0, 0.2)
    return 2.0 * line_frequency / poles * (1.0 - slip)


def pump_frequency(pump_speed: float, elements: float) -> float:
    """Pulses of a hydraulic pump (Hz): pistons, vanes or teeth x turning speed (rev/s).

    Source: kinematics (from memory). Raises OutOfRange.
    """
    within("pump_speed", pump_speed, "turning-speed", 0.1, 500.0)
    within("elements", elements, "count", 1.0, 100.0)
    return pump_speed * elements


def rack_tooth_spacing(module: float) -> float:
    """Spacing (m) of the teeth of a rack: pi x module (m). Source: gear geometry, ISO 54."""
    within("module", module, "length", 1e-4, 0.05)
    return math.pi * module


_LINE = Input("line_frequency", "frequency", "Frequency of the mains, or what the inverter gives.")

CALCULATIONS = (
    Calculation(
        "belt-frequency",
        "how often one spot of the belt comes round",
        (
            Input("pulley_diameter", "length", "Pitch diameter of one pulley."),
            Input("pulley_speed", "turning-speed", "Turning speed of that pulley."),
            Input("belt_length", "length", "Length of the belt."),
        ),
        "frequency",
        belt_frequency,
        "pi x pulley diameter x turning speed / belt length",
        lambda _inputs, result: (
            f"A splice, a flat or a set in the belt shows at this and at {2 * result:.1f} Hz; "
            "always slower than both pulleys."
        ),
        "kinematics",
        "derived",
        "Belt drive only; a slipping belt comes round a little slower.",
    ),
    Calculation(
        "twice-line-frequency",
        "hum of an electric motor",
        (_LINE,),
        "frequency",
        twice_line_frequency,
        "2 x line frequency",
        lambda _inputs, _result: (
            "Gone the instant power is cut, wheel well clear of the work: electrical. Fading with "
            "the speed: rotating parts."
        ),
        "electric machines, any text",
        "from memory",
        "Too close to twice the wheel for arithmetic to split: use the coast-down.",
    ),
    Calculation(
        "motor-turning-speed",
        "turning speed of an induction motor",
        (
            _LINE,
            Input("poles", "count", "Poles: 2 for about 2900 or 3450 rpm, 4 for half of it."),
            Input("slip", "ratio", "How far it lags under load.", "4 %"),
        ),
        "turning-speed",
        motor_turning_speed,
        "2 x line frequency / poles x (1 - slip)",
        lambda _inputs, _result: "The nameplate says it better; a tachometer best.",
        "electric machines, any text",
        "from memory",
        "Induction motors; the slip changes with the load.",
    ),
    Calculation(
        "pump-frequency",
        "pulses of a hydraulic pump",
        (
            Input("pump_speed", "turning-speed", "Turning speed of the pump."),
            Input("elements", "count", "Pistons, vanes or teeth."),
        ),
        "frequency",
        pump_frequency,
        "turning speed x pistons, vanes or teeth",
        lambda _inputs, _result: "Switch the pump off for one hand-fed pass: marks gone, pump.",
        "kinematics",
        "from memory",
        "Hydraulic tables only.",
    ),
    Calculation(
        "rack-tooth-spacing",
        "spacing of the teeth of the table's rack",
        (Input("module", "length", "Module of the rack (25.4 mm / diametral pitch)."),),
        "length",
        rack_tooth_spacing,
        "pi x module",
        lambda _inputs, _result: (
            "Marks that keep this spacing at any table speed come from the rack, not the wheel."
        ),
        "gear geometry, ISO 54",
        "from memory",
        "A module 1.5 rack falls right on one mark a turn of the wheel.",
    ),
)
