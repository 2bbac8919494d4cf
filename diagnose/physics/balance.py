"""Balance of wheel and adapter: what is permissible, what it shakes with, what ways can feel."""

from __future__ import annotations

import math

from diagnose.physics.arguments import inputs, ranged
from diagnose.physics.catalogue import Calculation
from diagnose.physics.units import show

TURN = 2 * math.pi
BEST_WAYS = 5e-6  # m, arm of rolling friction of clean, level, hard ways; common practice
REACHABLE = (2.5e-3, 4e-3)  # m/s, grades that level ways can reach on a surface grinder


@ranged
def permissible_unbalance(balance_grade: float, rotor_mass: float, turning_speed: float) -> float:
    """Permissible residual unbalance (kg m) of a grade (m/s), a mass (kg) and a speed (rev/s).

    Source: U = G m / omega, ISO 21940-11 (was ISO 1940-1). Raises OutOfRange.
    """
    return balance_grade * rotor_mass / (TURN * turning_speed)


@ranged
def grade_reached(unbalance: float, rotor_mass: float, turning_speed: float) -> float:
    """Balance grade (m/s) of an unbalance (kg m): omega U / m. Source: ISO 21940-11."""
    return TURN * turning_speed * unbalance / rotor_mass


@ranged
def unbalance_force(unbalance: float, turning_speed: float) -> float:
    """Force (N) that turns with the wheel: U omega^2. Source: mechanics. Raises OutOfRange."""
    return unbalance * (TURN * turning_speed) ** 2


@ranged
def rim_weight(unbalance: float, rim_radius: float) -> float:
    """Mass (kg) that makes this unbalance (kg m) at this radius (m).

    Source: definition of unbalance, ISO 21940-2 (from memory). Raises OutOfRange.
    """
    return unbalance / rim_radius


@ranged
def eccentric_unbalance(rotor_mass: float, eccentricity: float) -> float:
    """Unbalance (kg m) of a mass (kg) sitting off the spindle's line by so much (m).

    Source: definition of unbalance, ISO 21940-2 (from memory).
    """
    return rotor_mass * eccentricity


@ranged
def felt_by_ways(rotor_mass: float, ways_friction: float = 10e-6) -> float:
    """Least unbalance (kg m) that still rolls on level ways: mass x arm of rolling friction (m).

    Source: mechanics; arm of 5 to 20 um, common practice. Raises OutOfRange.
    """
    return rotor_mass * ways_friction


@ranged
def delivered_weight(wheel_mass: float, delivered_constant: float = 0.25) -> float:
    """Weight (kg) at the rim by which a new wheel may be out as delivered: k root(m), in grams.

    Source: form of ISO 6103, from memory; the constant with low confidence. Raises OutOfRange.
    """
    return delivered_constant * math.sqrt(wheel_mass * 1e3) * 1e-3


def _of_permissible(given: dict[str, float], unbalance: float) -> str:
    felt = felt_by_ways(given["rotor_mass"], BEST_WAYS)
    if unbalance < felt:
        return (
            f"Finer than level ways can feel (about {show(felt, 'unbalance')} here): aim for G "
            "2.5 to 4 instead, and let the cut judge."
        )
    return (
        f"{show(unbalance / 0.09, 'mass')} at 90 mm. Prove the ways first: 0.2 g of putty at the "
        "rim must make them roll."
    )


def _of_grade(_given: dict[str, float], grade: float) -> str:
    if grade <= REACHABLE[1]:
        return "As good as level ways get. If it still shakes, look elsewhere."
    return "Balance it: level ways reach G 2.5 to 4 (2.5 to 4 mm/s)."


def _of_force(_given: dict[str, float], force: float) -> str:
    if force > 50:
        return (
            f"{show(force, 'force')} once every turn: it shakes the machine and marks the work. "
            "Clean, re-mount at the witness line, true, balance. A sudden shake is a stop."
        )
    return f"{show(force, 'force')} once every turn: enough to mark fine work on a light machine."


def _of_rim(_given: dict[str, float], _mass: float) -> str:
    return "Weights must be captive and inside the guard; else do not run."


def _of_eccentric(_given: dict[str, float], unbalance: float) -> str:
    return (
        f"{show(unbalance, 'unbalance')} from the mounting alone: mount at a witness line, same "
        "place each time, true, then balance."
    )


def _of_felt(_given: dict[str, float], unbalance: float) -> str:
    return (
        f"Less than {show(unbalance, 'unbalance')} does not roll: 'it stays anywhere' means no "
        "better than this. Proof: 0.2 g of putty at the rim must make it roll."
    )


def _of_delivered(_given: dict[str, float], mass: float) -> str:
    return (
        f"A new wheel may be {show(mass, 'mass')} out at the rim and still be as the standard "
        "wants it: delivered in tolerance is nowhere near ready to run."
    )


_ISO = "ISO 21940-11 (was ISO 1940-1)"
_ROTOR = ("rotor_mass", "turning_speed")

CALCULATIONS = (
    Calculation(
        "permissible-unbalance", "unbalance a grade permits", inputs("balance_grade", *_ROTOR),
        "unbalance", permissible_unbalance, "grade x mass / (6.2832 x turning speed)",
        _of_permissible, _ISO, "confirmed",
        "One plane: for a thin wheel. G 1 and G 0.4 are for spindles, not reachable on ways.",
    ),
    Calculation(
        "balance-grade", "grade an unbalance amounts to", inputs("unbalance", *_ROTOR),
        "balance-grade", grade_reached, "6.2832 x turning speed x unbalance / mass", _of_grade,
        _ISO, "confirmed", "The grade G is this speed in mm/s.",
    ),
    Calculation(
        "unbalance-force", "force an unbalance shakes with", inputs("unbalance", "turning_speed"),
        "force", unbalance_force, "unbalance x (6.2832 x turning speed)^2", _of_force,
        "mechanics: mass x radius x speed squared", "derived",
        "The force; how far it moves the machine depends on the machine.",
    ),
    Calculation(
        "rim-weight", "weight at a radius for an unbalance", inputs("unbalance", "rim_radius"),
        "mass", rim_weight, "unbalance / radius", _of_rim, "mechanics", "derived",
        "A weight moved, not added, changes twice as much.",
    ),
    Calculation(
        "eccentric-unbalance", "unbalance of a wheel mounted off centre",
        inputs("rotor_mass", "eccentricity"), "unbalance", eccentric_unbalance,
        "mass x distance off centre", _of_eccentric, "mechanics", "derived",
        "Truing makes the rim round; it does not move the mass back.",
    ),
    Calculation(
        "felt-by-ways", "least unbalance level ways can feel",
        inputs("rotor_mass", ways_friction="5..20 µm"), "unbalance", felt_by_ways,
        "mass x arm of the rolling friction", _of_felt, "mechanics; the arm is common practice",
        "common practice", "Clean, level, hard ways and a round arbor.",
    ),
    Calculation(
        "delivered-weight", "how far out a new wheel may be as delivered",
        inputs("wheel_mass", delivered_constant="0.25"), "mass", delivered_weight,
        "constant x root of the wheel's mass, in grams", _of_delivered, "ISO 6103",
        "from memory", "The constant depends on wheel and speed; low confidence.",
    ),
)  # fmt: skip
