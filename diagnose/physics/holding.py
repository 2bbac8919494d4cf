"""Holding on the magnetic chuck. These sums may frighten; they never say that a part is held.

Always: stops at both ends, poles bridged, a tug by hand and a tap with a soft block, wheel up
and clear.
"""

from __future__ import annotations

from diagnose.physics.arguments import inputs, ranged
from diagnose.physics.catalogue import Calculation
from diagnose.physics.errors import within
from diagnose.physics.units import show

FULL_THICKNESS = 0.5  # of the pole pitch; common practice
FLATTENED = 0.3  # of the pull; below this the magnet pulls a bow flat
STRIP = 6.4  # 384 / 5 / 12: strip on its ends under even pressure
STEEL_MODULUS = 205e9
ALWAYS = "Always: stops at both ends, a tug and a tap before the wheel comes near."


@ranged
def pull_left(
    pull: float, thickness: float, pole_pitch: float, material_share: float = 1.0
) -> float:
    """Pull (Pa) on a part of this thickness (m) and steel, on poles of this pitch (m).

    Full pull from half the pole pitch up, in proportion below. Source: common practice.
    Raises OutOfRange.
    """
    return pull * material_share * min(1.0, thickness / (FULL_THICKNESS * pole_pitch))


@ranged
def flattening_pressure(
    bow: float, part_length: float, thickness: float, elastic_modulus: float = STEEL_MODULUS
) -> float:
    """Even pressure (Pa) that pulls a bow (m) flat: 6.4 E t^3 d / L^4, a strip on its ends.

    Source: beam theory. Raises OutOfRange.
    """
    return STRIP * elastic_modulus * thickness**3 * bow / part_length**4


@ranged
def bow_returned(
    pull: float,
    bow: float,
    part_length: float,
    thickness: float,
    elastic_modulus: float = STEEL_MODULUS,
) -> float:
    """Part of the bow (m) the magnet presses out, and which comes back when it lets go.

    Source: beam theory. Raises OutOfRange.
    """
    stiffness = STRIP * elastic_modulus * thickness**3 / part_length**4
    return min(bow, pull / stiffness)


@ranged
def thickness_pulled_flat(
    pull: float, bow: float, part_length: float, elastic_modulus: float = STEEL_MODULUS
) -> float:
    """Thickest plate (m) whose bow (m) 0.3 of the pull (Pa) takes out. Source: beam theory.

    Raises OutOfRange; a plate without bow has none, so the bow must be above zero.
    """
    within("bow", bow, "length", 1e-7, 0.02)
    force = FLATTENED * pull * part_length**4
    return float((force / (STRIP * elastic_modulus * bow)) ** (1 / 3))


@ranged
def slide_hold(pull: float, part_length: float, part_width: float, friction: float = 0.1) -> float:
    """Force (N) by which friction resists a push: friction x pull (Pa) x area (m x m).

    Source: Coulomb friction. Raises OutOfRange.
    """
    return friction * pull * part_length * part_width


@ranged
def slide_ratio(
    force: float, pull: float, part_length: float, part_width: float, friction: float = 0.1
) -> float:
    """Push along (N) over what friction resists; from 1 up it slides.

    Source: Coulomb's law of friction, any text (from memory). Raises OutOfRange.
    """
    within("pull", pull, "pressure", 1.0, 1e7)
    return force / slide_hold(pull, part_length, part_width, friction)


@ranged
def tip_ratio(force: float, pull: float, base: float, part_width: float, height: float) -> float:
    """Tipping moment over the moment that holds it down; from 1 up it tips.

    F h / (pull x base x width x base / 2). Source: mechanics. Raises OutOfRange.
    """
    within("pull", pull, "pressure", 1.0, 1e7)
    return force * height / (pull * base * part_width * base / 2)


@ranged
def height_ratio(height: float, base: float) -> float:
    """Height over the shorter side of the base. Source: common practice. Raises OutOfRange."""
    return height / base


@ranged
def wheel_energy(wheel_mass: float, wheel_speed: float) -> float:
    """Energy (J) stored in a turning wheel (kg, rim m/s): a quarter m v^2, a plain disc.

    Source: mechanics of a plain disc, any text (from memory).
    """
    return 0.25 * wheel_mass * wheel_speed**2


def _of_pull(given: dict[str, float], _pull: float) -> str:
    if given["thickness"] < FULL_THICKNESS * given["pole_pitch"]:
        said = (
            "Too thin for these poles: part of the pull is lost. A fine-pole plate holds it better."
        )
    else:
        said = "Thick enough to carry the field of these poles."
    return f"{said} Edges, a dead patch or a lever half over take more away. {ALWAYS}"


def _of_flattening(_given: dict[str, float], pressure: float) -> str:
    if pressure < FLATTENED * 75e4:
        return (
            "An ordinary chuck (50 to 100 N/cm2) pulls it flat: ground so, it springs back "
            "bowed. Shim the hollow, least magnet that holds, stops all round."
        )
    return (
        "Too stiff for an ordinary chuck to pull quite flat: it rocks or bridges instead. Shim it."
    )


def _of_returned(given: dict[str, float], back: float) -> str:
    share = back / given["bow"] if given["bow"] > 0 else 0.0
    return (
        f"{show(back, 'length')} ({show(back, 'length', 'inch')}), {share:.0%} of the bow, is "
        "pressed out and comes back when the magnet lets go, whatever was ground. "
        "Shim the hollow side down."
    )


def _of_thickness(_given: dict[str, float], thickness: float) -> str:
    return (
        f"Plates up to about {show(thickness, 'length')} are pulled flat at this length and come "
        "off bowed as they went on. Check with the magnet off."
    )


def _of_hold(_given: dict[str, float], hold: float) -> str:
    return f"A push above {show(hold, 'force')} moves it, and a snag multiplies the push. {ALWAYS}"


def _of_slide(_given: dict[str, float], ratio: float) -> str:
    if ratio >= 1:
        return f"STOP: on friction alone it slides. Block it before the wheel turns. {ALWAYS}"
    if ratio > 0.2:
        return f"Thin: a grab or a wet face uses this up. Block it. {ALWAYS}"
    return f"This sum cannot tell that the part is held. {ALWAYS}"


def _of_tip(_given: dict[str, float], ratio: float) -> str:
    if ratio >= 1:
        return f"STOP: the push tips it over. Block it to half its height or more. {ALWAYS}"
    if ratio > 0.2:
        return f"Thin: a grab tips it. Block it to half its height or more. {ALWAYS}"
    return f"This sum cannot tell that the part stays up. {ALWAYS}"


def _of_height(_given: dict[str, float], ratio: float) -> str:
    if ratio > 1.5:
        return (
            f"Never on the magnet alone: block it, clamp it to an angle plate or a vice. {ALWAYS}"
        )
    if ratio > 1:
        return f"Taller than its base: blocks on both sides, half its height or more. {ALWAYS}"
    return f"Not tall for its base; that alone does not hold it. {ALWAYS}"


def _of_stored(_given: dict[str, float], energy: float) -> str:
    return (
        f"{show(energy, 'energy')} stands behind every snag, as much as {energy / 9.81:.0f} kg "
        f"falling a metre. {ALWAYS}"
    )


_BEAM = "beam theory: strip on its ends under even pressure"
_NEVER = "It may raise a stop; it never clears one. Pull varies over the face and with contact."
_STEEL = {"elastic_modulus": "205 GPa"}
_SHAPE = ("bow", "part_length", "thickness")
_PULL = {"pull": "75 N/cm2"}

CALCULATIONS = (
    Calculation(
        "pull-left", "pull left on a thin part",
        inputs("thickness", "pole_pitch", pull="50..100 N/cm2", material_share="1"), "pressure",
        pull_left, "pull x share for the steel x thickness / half the pole pitch, full above",
        _of_pull, "rule of half the pole pitch", "common practice",
        "Hardened steel 0.5 to 0.6, cast iron 0.4 to 0.5; a gap of 0.1 mm halves it. " + _NEVER,
    ),
    Calculation(
        "flattening-pressure", "pressure that pulls a bow flat", inputs(*_SHAPE, **_STEEL),
        "pressure", flattening_pressure, "6.4 x modulus x thickness^3 x bow / length^4",
        _of_flattening, _BEAM, "derived", "Bowed along one direction only, on its two ends.",
    ),
    Calculation(
        "bow-returned", "bow that comes back when the magnet lets go",
        inputs(*_SHAPE, **_PULL, **_STEEL), "length", bow_returned,
        "the smaller of the bow and pull x length^4 / (6.4 x modulus x thickness^3)", _of_returned,
        _BEAM, "derived", "The pull over a gap is less than the pull on contact.",
    ),
    Calculation(
        "thickness-pulled-flat", "thickest plate the magnet pulls flat",
        inputs("bow", "part_length", **_PULL, **_STEEL), "length", thickness_pulled_flat,
        "cube root of (0.3 x pull x length^4 / (6.4 x modulus x bow))", _of_thickness, _BEAM,
        "derived", "Goes with the length to the power 4/3.",
    ),
    Calculation(
        "slide-hold", "push that friction resists",
        inputs("part_length", "part_width", **_PULL, friction="0.1"), "force", slide_hold,
        "friction x pull x area", _of_hold, "friction of steel on a wet chuck, 0.1 to 0.2",
        "from memory", _NEVER,
    ),
    Calculation(
        "slide-ratio", "push along over what friction resists",
        inputs("force", "part_length", "part_width", **_PULL, friction="0.1"), "ratio",
        slide_ratio, "push / (friction x pull x area)", _of_slide,
        "friction of steel on a wet chuck, 0.1 to 0.2", "from memory", _NEVER,
    ),
    Calculation(
        "tip-ratio", "tipping over holding down",
        inputs("force", "base", "part_width", "height", **_PULL), "ratio", tip_ratio,
        "push x height / (pull x base x width x base / 2)", _of_tip, "mechanics", "derived", _NEVER,
    ),
    Calculation(
        "height-ratio", "height over the shorter side of the base", inputs("height", "base"),
        "ratio", height_ratio, "height / base", _of_height, "rule of the shop", "common practice",
        _NEVER,
    ),
    Calculation(
        "wheel-energy", "energy stored in the turning wheel", inputs("wheel_mass", "wheel_speed"),
        "energy", wheel_energy, "a quarter x mass x rim speed x rim speed", _of_stored,
        "mechanics: a plain disc", "derived", "The motor and pulleys store more.",
    ),
)  # fmt: skip
