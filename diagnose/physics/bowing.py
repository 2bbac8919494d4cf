"""Plates that bow: from heat through the thickness, and from stress in the skin (Stoney)."""

from __future__ import annotations

from diagnose.physics.arguments import inputs, ranged
from diagnose.physics.catalogue import Calculation
from diagnose.physics.errors import OutOfRange
from diagnose.physics.units import show

STEEL_MODULUS = 205e9  # Pa
STEEL_POISSON = 0.29
THIN_SKIN = 0.2  # of the thickness; Stoney's formula is for thin skins


@ranged
def thermal_bow(
    gradient: float, part_length: float, thickness: float, expansion: float = 12e-6
) -> float:
    """Bow (m) in the middle of a plate whose ground side is so much warmer (K): alpha dT L^2 / 8t.

    Source: curvature alpha dT / t of engineering handbooks (SCIA, Oasys help pages). Raises
    OutOfRange.
    """
    return expansion * gradient * part_length**2 / (8 * thickness)


@ranged
def gradient_from_bow(
    bow: float, part_length: float, thickness: float, expansion: float = 12e-6
) -> float:
    """Difference of temperature (K) through the thickness that gives this bow (m).

    Source: as `thermal_bow`, turned round. Raises OutOfRange.
    """
    return 8 * thickness * bow / (expansion * part_length**2)


@ranged
def stress_from_bow(
    bow: float,
    part_length: float,
    thickness: float,
    skin_depth: float,
    elastic_modulus: float = STEEL_MODULUS,
    poisson: float = STEEL_POISSON,
) -> float:
    """Stress (Pa) in a thin skin that bows a plate so much (m): E t^2 k / (6 h (1 - nu)).

    Source: Stoney's formula as in Feng, Huang & Rosakis, J. Appl. Mech. 2007. Raises OutOfRange,
    also for a skin thicker than a fifth of the plate.
    """
    _thin(skin_depth, thickness)
    curvature = 8 * bow / part_length**2
    return elastic_modulus * thickness**2 * curvature / (6 * skin_depth * (1 - poisson))


@ranged
def bow_from_stress(
    skin_stress: float,
    part_length: float,
    thickness: float,
    skin_depth: float,
    elastic_modulus: float = STEEL_MODULUS,
    poisson: float = STEEL_POISSON,
) -> float:
    """Bow (m) from stress (Pa, tension above zero) in a thin skin; above zero the face is hollow.

    Source: as `stress_from_bow`, turned round. Raises OutOfRange.
    """
    _thin(skin_depth, thickness)
    pull = 6 * skin_stress * skin_depth * (1 - poisson)
    return pull * part_length**2 / (8 * elastic_modulus * thickness**2)


@ranged
def bow_ratio(bow: float, other_bow: float) -> float:
    """One bow (m) over another (m) read the same way: held over free, or free over foretold.

    Source: common practice. Raises OutOfRange; the other bow must be above zero.
    """
    return bow / other_bow


def _thin(skin_depth: float, thickness: float) -> None:
    if skin_depth > THIN_SKIN * thickness:
        raise OutOfRange("skin_depth", skin_depth, "length", 1e-7, THIN_SKIN * thickness)


def _of_bow(_given: dict[str, float], bow: float) -> str:
    return (
        f"The middle rises {show(bow, 'length')} ({show(bow, 'length', 'inch')}) under the wheel "
        "and is cut away: cold, the ground face is hollow by as much. "
        "A magnet holds part of it down."
    )


def _of_gradient(_given: dict[str, float], gradient: float) -> str:
    return (
        f"{show(gradient, 'temperature-difference')} through the thickness is enough; you would "
        "not feel it by hand. Proof: a quarter of the cut, wet, should leave a quarter of the bow."
    )


def _of_stress(_given: dict[str, float], stress: float) -> str:
    return (
        f"{show(stress, 'stress')} in the skin would do it. Hollow ground face: tension, from "
        "heat. Crowned ground face: squeezed, from gentle grinding or from the other side."
    )


def _of_stress_bow(_given: dict[str, float], bow: float) -> str:
    if bow < 0:
        return "The ground face crowns: its skin is squeezed."
    return "The ground face goes hollow: its skin pulls, as heat leaves it."


def _of_ratio(_given: dict[str, float], ratio: float) -> str:
    return (
        f"{ratio:.2f} of the other. Held over free: near 1, the bow was there while it was held; "
        "near 0, it came with the release. Free over foretold: near 1, the magnet explains it."
    )


_HOT = "curvature = expansion x difference / thickness, engineering help pages (SCIA, Oasys)"
_STONEY = "Stoney, as in Feng, Huang & Rosakis, J. Appl. Mech. 2007, doi 10.1115/1.2745392"
_PLATE = ("part_length", "thickness")
_STEEL = {"elastic_modulus": "205 GPa", "poisson": "0.29"}

CALCULATIONS = (
    Calculation(
        "thermal-bow", "bow of a plate warmer on its ground side",
        inputs("gradient", *_PLATE, expansion="12 µm/m/K"), "length", thermal_bow,
        "expansion x difference x length x length / (8 x thickness)", _of_bow, _HOT, "confirmed",
        "Free plate, even gradient. What the magnet holds down stays as stress.",
    ),
    Calculation(
        "gradient-from-bow", "difference of temperature that gives a bow",
        inputs("bow", *_PLATE, expansion="12 µm/m/K"), "temperature-difference",
        gradient_from_bow, "8 x thickness x bow / (expansion x length x length)", _of_gradient,
        _HOT, "confirmed", "If heat bowed it at all; stress in the stock and the magnet do it too.",
    ),
    Calculation(
        "stress-from-bow", "stress in the skin that gives a bow",
        inputs("bow", *_PLATE, "skin_depth", **_STEEL), "stress", stress_from_bow,
        "modulus x thickness^2 x 8 bow / length^2 / (6 x skin depth x (1 - Poisson's ratio))",
        _of_stress, _STONEY, "confirmed", "Thin skin, small bow; the skin depth is mostly a guess.",
    ),
    Calculation(
        "bow-from-stress", "bow from stress in the skin",
        inputs("skin_stress", *_PLATE, "skin_depth", **_STEEL), "deviation", bow_from_stress,
        "6 x stress x skin depth x (1 - Poisson's ratio) x length^2 / (8 x modulus x thickness^2)",
        _of_stress_bow, _STONEY, "confirmed", "Thin skin, small bow.",
    ),
    Calculation(
        "bow-ratio", "one bow against another", inputs("bow", "other_bow"), "ratio", bow_ratio,
        "bow / other bow", _of_ratio, "two readings of one part, shop practice", "common practice",
        "Both against a straightedge or a plate, cool, at the same place; a reading of 0.005 mm "
        "is good to half of itself.",
    ),
)  # fmt: skip
