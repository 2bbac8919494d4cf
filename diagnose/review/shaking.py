"""How hard a wheel that was not balanced on its mounting pulls, from its own size and speed."""

from __future__ import annotations

import math

from diagnose.physics.balance import delivered_weight, unbalance_force
from diagnose.physics.units import show

BALANCED, NEVER = "balanced-since-mounting", "never-balanced"
DENSITY = 2200.0  # kg/m3 of a vitrified wheel of middle structure, pores and all; from memory
SHAKES = 50.0  # N once a turn: from here on it shakes the machine and marks the work


def new_wheel_force(diameter: float, width: float, turning_speed: float) -> float:
    """Force (N) once a turn of a wheel as out of balance as it may be delivered.

    Lengths in m, speed in rev/s. The bore is left out: it takes 3 % off a usual wheel.
    Source: form of ISO 6103 and its constant, from memory. Raises OutOfRange.
    """
    mass = math.pi / 4 * diameter**2 * width * DENSITY
    return unbalance_force(delivered_weight(mass) * diameter / 2, turning_speed)


def force_words(force: float, units: str) -> str:
    """The force in words, as one thing that shows a risk."""
    said = show(float(f"{force:.2g}"), "force", units)
    return f"pull of such a wheel as delivered: up to about {said} once a turn"
