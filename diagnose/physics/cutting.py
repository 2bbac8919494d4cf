"""What one pass does: length of contact, thickness of a chip, volume, energy, power and force."""

from __future__ import annotations

import math

from diagnose.physics.arguments import inputs, ranged
from diagnose.physics.catalogue import Calculation
from diagnose.physics.units import show


@ranged
def contact_length(depth: float, wheel_diameter: float) -> float:
    """Length (m) over which the wheel touches the work: root of depth x diameter (both m).

    Source: Groover eq. 24.4. Raises OutOfRange.
    """
    return math.sqrt(depth * wheel_diameter)


@ranged
def chip_thickness(
    depth: float,
    wheel_diameter: float,
    table_speed: float,
    wheel_speed: float,
    grains_per_area: float,
    chip_ratio: float = 15.0,
) -> float:
    """Thickness (m) of a chip before it is cut; depth and diameter m, speeds m/s, grains per m2.

    Source: t = root(4 v / (V C r) x root(a / D)), Kalpakjian & Schmid. Raises OutOfRange.
    """
    spread = 4 * table_speed / (wheel_speed * grains_per_area * chip_ratio)
    return math.sqrt(spread * math.sqrt(depth / wheel_diameter))


@ranged
def removal_rate(depth: float, width_of_cut: float, table_speed: float) -> float:
    """Volume (m3) removed in a second: depth x width (m) x table speed (m/s). Raises OutOfRange.

    Source: Groover chapter 24.
    """
    return depth * width_of_cut * table_speed


@ranged
def removal_per_width(depth: float, table_speed: float) -> float:
    """Volume removed in a second on each metre of width (m2/s): depth x table speed.

    Source: Q'w of the handbooks. Raises OutOfRange.
    """
    return depth * table_speed


@ranged
def crossfeed_overlap(wheel_width: float, crossfeed: float) -> float:
    """How often the wheel passes over each place of the work: face width / crossfeed (m).

    Source: plain geometry; the shares of the face for a finish are rows of *Machinery's
    Handbook*, 31st ed., p. 1329. Raises OutOfRange.
    """
    return wheel_width / crossfeed


@ranged
def equivalent_chip(depth: float, table_speed: float, wheel_speed: float) -> float:
    """Thickness (m) of the layer that leaves at wheel speed: depth x table speed / wheel speed.

    Source: h_eq of the handbooks. Raises OutOfRange.
    """
    return depth * table_speed / wheel_speed


@ranged
def aggressiveness(
    depth: float, wheel_diameter: float, table_speed: float, wheel_speed: float
) -> float:
    """How hard the wheel is worked, as one number: 10^6 (vw / vs) root(a / d). m and m/s.

    Source: Badger, Drazumeric and Krajnik 2020-21, from memory. Raises OutOfRange.
    """
    return 1e6 * table_speed / wheel_speed * math.sqrt(depth / wheel_diameter)


@ranged
def chips_per_second(wheel_speed: float, width_of_cut: float, grains_per_area: float) -> float:
    """Chips formed in a second: wheel speed (m/s) x width (m) x grains on an area (1/m2).

    Source: Groover chapter 24. Raises OutOfRange.
    """
    return wheel_speed * width_of_cut * grains_per_area


@ranged
def energy_from_force(
    force: float, wheel_speed: float, depth: float, width_of_cut: float, table_speed: float
) -> float:
    """Specific energy (J/m3) from the push along the travel (N): F V / (vw w a).

    Source: Groover chapter 24. Raises OutOfRange.
    """
    return force * wheel_speed / (depth * width_of_cut * table_speed)


@ranged
def cutting_power(
    specific_energy: float, depth: float, width_of_cut: float, table_speed: float
) -> float:
    """Power (W) the cut takes at the wheel: specific energy (J/m3) x removal rate.

    Source: Groover chapter 24. Raises OutOfRange.
    """
    return specific_energy * depth * width_of_cut * table_speed


@ranged
def cutting_force(power: float, wheel_speed: float) -> float:
    """Push (N) along the travel from the power at the wheel (W) and its speed (m/s): P / V.

    Source: Kalpakjian & Schmid, force example. Raises OutOfRange.
    """
    return power / wheel_speed


@ranged
def push_down(force: float, force_ratio: float = 1.3) -> float:
    """Push (N) away from the wheel, from the push along the travel (N) and their ratio.

    Source: ratio 1.3 in the force example of Kalpakjian & Schmid. Raises OutOfRange.
    """
    return force * force_ratio


def _of_contact(_given: dict[str, float], length: float) -> str:
    return (
        f"Real contact is 1.5 to 3 times as long ({show(1.5 * length, 'length')} to "
        f"{show(3 * length, 'length')}), for wheel and work give. Longer contact is hotter and "
        "wants a softer, more open wheel."
    )


def _of_chip(_given: dict[str, float], thickness: float) -> str:
    return (
        f"Chips of {show(thickness, 'length')}: thinner ones rub and heat, thicker ones pull "
        "grains out. A faster table makes them thicker and the wheel freer."
    )


def _of_rate(_given: dict[str, float], rate: float) -> str:
    return f"{show(60 * rate, 'volume')} of metal in a minute while the wheel is in the cut."


def _of_rate_per_width(_given: dict[str, float], rate: float) -> str:
    if rate > 5e-6:
        return "A production rate: more than a light machine without strong coolant can carry."
    return "Within what toolroom grinding does; the spindle's power still sets the ceiling."


def _of_overlap(_given: dict[str, float], passes: float) -> str:
    if passes < 4:
        return "Few for a finish: lines one crossfeed apart are likely. Take a quarter of the face."
    if passes < 10:
        return "Enough for soft steel and iron; hardened work wants ten passes over each place."
    return "Enough for a fine finish, hardened work too."


def _of_equivalent(_given: dict[str, float], layer: float) -> str:
    if layer < 5e-8:
        return (
            "Thin enough to rub, as every toolroom finish pass is. It means nothing alone; with a "
            "shiny wheel or dying sparks it speaks for a fuller cut or a fresh dress."
        )
    return "Thick enough to cut rather than rub, if the wheel is sharp."


def _of_aggressiveness(_given: dict[str, float], _number: float) -> str:
    return "Compare it with your own good jobs: lower acts harder and rubs, higher acts softer."


def _of_chips(_given: dict[str, float], rate: float) -> str:
    return f"{60 * rate:.3g} chips a minute, so each takes away almost nothing."


def _of_energy(_given: dict[str, float], energy: float) -> str:
    if energy > 80e9:
        return "High: the wheel rubs more than it cuts. Dull, glazed, closed or too hard."
    return "In the range the handbooks give for grinding; a rising figure says the wheel dulls."


def _of_power(_given: dict[str, float], power: float) -> str:
    return (
        "A motor gives about 0.7 of its plate to the cut, so this wants "
        f"{show(power / 0.7, 'power')} on the plate. "
        "A motor that labours or belts that slip say it is too much."
    )


def _of_force(_given: dict[str, float], force: float) -> str:
    return (
        f"The chuck, by friction alone, must hold more than {show(force, 'force')} sideways, "
        "and a snag multiplies it: stops on both ends."
    )


def _of_push_down(_given: dict[str, float], force: float) -> str:
    return (
        f"{show(force, 'force')} lifts the wheelhead and bends thin work; it grows as the "
        "wheel dulls, so size wanders and spark-out gets longer."
    )


_GROOVER = "Groover, Fundamentals of Modern Manufacturing, chapter 24"
_FORCES = "Kalpakjian & Schmid, grinding force example"

CALCULATIONS = (
    Calculation(
        "contact-length", "length of contact", inputs("depth", "wheel_diameter"), "length",
        contact_length, "root of (depth x wheel diameter)", _of_contact, _GROOVER + ", eq. 24.4",
        "confirmed", "For a stiff wheel and flat work.",
    ),
    Calculation(
        "chip-thickness", "thickness of a chip",
        inputs("depth", "wheel_diameter", "table_speed", "wheel_speed",
               grains_per_area="2 /mm2", chip_ratio="15"),
        "length", chip_thickness,
        "root of (4 x table speed / (wheel speed x grains x ratio) x root of (depth / diameter))",
        _of_chip, "Kalpakjian & Schmid, Manufacturing Engineering and Technology", "from memory",
        "Cutting grains on an area are hardly ever known; compare settings, do not quote it.",
    ),
    Calculation(
        "removal-rate", "metal removed in a time",
        inputs("depth", "width_of_cut", "table_speed"), "removal-rate", removal_rate,
        "depth x width x table speed", _of_rate, _GROOVER, "confirmed",
        "The depth is what the wheel really cuts, not what the dial says.",
    ),
    Calculation(
        "removal-per-width", "metal removed on each mm of width", inputs("depth", "table_speed"),
        "removal-per-width", removal_per_width, "depth x table speed", _of_rate_per_width,
        _GROOVER, "confirmed", "The depth is what the wheel really cuts, not what the dial says.",
    ),
    Calculation(
        "crossfeed-overlap", "how often the wheel passes over each place",
        inputs("wheel_width", "crossfeed"), "ratio", crossfeed_overlap,
        "face width / crossfeed", _of_overlap,
        "Machinery's Handbook, 31st ed., table 3, p. 1329: a quarter of the face, hardened a tenth",
        "confirmed", "For a finish; a thin cut with a wide crossfeed roughs well.",
    ),
    Calculation(
        "equivalent-chip", "equivalent chip thickness",
        inputs("depth", "table_speed", "wheel_speed"), "length", equivalent_chip,
        "depth x table speed / wheel speed", _of_equivalent, "common grinding texts",
        "from memory", "Never a finding by itself: every toolroom finish pass is thin.",
    ),
    Calculation(
        "aggressiveness", "how hard the wheel is worked",
        inputs("depth", "wheel_diameter", "table_speed", "wheel_speed"), "number", aggressiveness,
        "a million x table speed / wheel speed x root of (depth / diameter)", _of_aggressiveness,
        "Badger, Drazumeric and Krajnik, 2020-21", "from memory",
        "For comparing settings on one wheel and one metal.",
    ),
    Calculation(
        "chips-per-second", "chips in a second",
        inputs("wheel_speed", "width_of_cut", "grains_per_area"), "frequency", chips_per_second,
        "wheel speed x width of cut x grains on an area", _of_chips, _GROOVER, "confirmed",
        "Counts every grain as cutting.",
    ),
    Calculation(
        "specific-energy", "energy to remove a volume, from the force",
        inputs("force", "wheel_speed", "depth", "width_of_cut", "table_speed"), "specific-energy",
        energy_from_force, "force x wheel speed / (depth x width x table speed)", _of_energy,
        _GROOVER, "confirmed", "Needs a measured force or power.",
    ),
    Calculation(
        "cutting-power", "power the cut takes",
        inputs("depth", "width_of_cut", "table_speed", specific_energy="40 J/mm3"), "power",
        cutting_power, "specific energy x depth x width x table speed", _of_power, _GROOVER,
        "confirmed", "Specific energy spreads fourfold; a dull wheel is at the top of it.",
    ),
    Calculation(
        "cutting-force", "push along the travel", inputs("power", "wheel_speed"), "force",
        cutting_force, "power at the wheel / wheel speed", _of_force, _FORCES, "confirmed",
        "A steady push; a snag or a grab is many times more.",
    ),
    Calculation(
        "push-down", "push between wheel and work, square to the face",
        inputs("force", force_ratio="1.3"), "force", push_down, "push along x ratio",
        _of_push_down, _FORCES, "confirmed", "The ratio goes from about 1.3 sharp to 3 dull.",
    ),
)  # fmt: skip
