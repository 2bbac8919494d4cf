"""Heat in the cut, as indices with their spread: a margin to burn and a temperature rise.

Neither is a guarantee: a part can be damaged without any colour, and coloured without damage.
"""

from __future__ import annotations

import math

from diagnose.physics.arguments import inputs, ranged
from diagnose.physics.catalogue import Answer, Calculation, Line, WordInput, Worked
from diagnose.physics.tables import TEMPER_COLOURS
from diagnose.physics.units import show

STEADY = 6.2e9  # J/m3, part of the energy the chips carry off; Malkin, from memory
STEEL = 7.2  # J mm-2 s-1/2, plain carbon and bearing steels; Malkin, from memory
CONDUCTIVITY = 34.0  # W/m/K
DIFFUSIVITY = 9e-6  # m2/s
COLOUR_BEGINS = 230.0  # K above a shop at 20 C
DAMAGE_BEGINS = 580.0  # K


@ranged
def burn_threshold(
    depth: float,
    wheel_diameter: float,
    table_speed: float,
    steady_energy: float = STEADY,
    burn_constant: float = STEEL,
) -> float:
    """Specific energy (J/m3) at which burn begins: u0 + B d^1/4 a^-3/4 vw^-1/2.

    Depth and diameter m, speed m/s; B in J mm-2 s-1/2. Source: Malkin, CIRP Annals 27/1 (1978),
    from memory. Raises OutOfRange.
    """
    millimetres = math.pow(wheel_diameter * 1e3, 0.25) * math.pow(depth * 1e3, -0.75)
    return steady_energy + 1e9 * burn_constant * millimetres / math.sqrt(table_speed * 1e3)


@ranged
def burn_margin(
    specific_energy: float,
    depth: float,
    wheel_diameter: float,
    table_speed: float,
    steady_energy: float = STEADY,
    burn_constant: float = STEEL,
) -> float:
    """Burn threshold over the energy of the cut (J/m3); below 1 it should burn.

    Source: Malkin, CIRP Annals 27/1 (1978), from memory.
    """
    limit = burn_threshold(depth, wheel_diameter, table_speed, steady_energy, burn_constant)
    return limit / specific_energy


@ranged
def temperature_rise(
    specific_energy: float,
    depth: float,
    wheel_diameter: float,
    table_speed: float,
    heat_share: float = 0.72,
    conductivity: float = CONDUCTIVITY,
    diffusivity: float = DIFFUSIVITY,
) -> float:
    """Highest rise (K) of the ground face under a moving band of heat.

    1.13 q root(alpha lc / vw) / k with q = share x u a vw / lc. Source: Jaeger's moving source,
    from memory. Raises OutOfRange.
    """
    contact = math.sqrt(depth * wheel_diameter)
    flux = heat_share * specific_energy * depth * table_speed / contact
    return 1.13 * flux * math.sqrt(diffusivity * contact / table_speed) / conductivity


@ranged
def warm_growth(size: float, warmth: float, expansion: float = 12e-6) -> float:
    """How much larger (m) a part reads while so much warmer (K) than the gauge.

    Source: alpha L dT; 1 m of steel grows 11 um a degree in a published article. Raises OutOfRange.
    """
    return expansion * size * warmth


def colour_answer(colour: str) -> Answer:
    """The temperature of a temper colour on carbon steel, as a range."""
    low, high = TEMPER_COLOURS[colour]
    lines = (
        Line(
            "furnace temperature of that colour", value=low, highest=high, dimension="temperature"
        ),
        Line("in the cut", "hotter than that: the heat lasted milliseconds, not minutes"),
    )
    return Answer(lines, _COLOUR)


_COLOUR = (
    "Taking the colour off does not take the damage off, and there can be damage without colour. "
    "Rust and dried coolant look alike: they wipe or stone off. A hardened part with colour is put "
    "aside for inspection."
)


def _of_threshold(_given: dict[str, float], energy: float) -> str:
    return (
        f"A cut that takes more than {show(energy, 'specific-energy')} should burn. Dull, closed "
        "or dry wheels take the most; a thinner cut and a faster table raise the limit."
    )


def _of_margin(_given: dict[str, float], margin: float) -> str:
    if margin < 1:
        return "Expect burn. Dress open, take a quarter of the depth, quicken the table, wet it."
    if margin < 2:
        return "Near the limit: a wheel half dull, or coolant that misses, will burn it."
    return "Far from the limit while the wheel is sharp. It falls as the wheel dulls; look at it."


def _of_rise(_given: dict[str, float], rise: float) -> str:
    if rise > DAMAGE_BEGINS:
        return "Hot enough to harm hardened steel, with or without colour. Take less, dress, wet."
    if rise > COLOUR_BEGINS:
        return "Hot enough to colour steel and soften a hardened skin. Take less, dress, wet."
    return "Below where steel takes colour, by this index; a dull wheel doubles it."


def _of_growth(_given: dict[str, float], growth: float) -> str:
    return (
        f"It reads {show(growth, 'deviation')} ({show(growth, 'deviation', 'inch')}) large while "
        "warm: on size warm is undersize cold. Let it cool on an iron plate, then measure."
    )


_CUT = ("depth", "wheel_diameter", "table_speed")
_MALKIN = "Malkin, CIRP Annals 27/1 (1978); Malkin & Guo, Grinding Technology, 2nd ed., chapter 6"
_INDEX = "An index for comparing settings, right to about half or double; never a guarantee."

CALCULATIONS = (
    Calculation(
        "burn-threshold", "energy at which burn begins",
        inputs(*_CUT, steady_energy="6.2 J/mm3", burn_constant="7.2"), "specific-energy",
        burn_threshold,
        "6.2 + 7.2 x diameter^1/4 / (depth^3/4 x root of table speed), in J, mm and s",
        _of_threshold, _MALKIN, "from memory", "Plain carbon and bearing steels. " + _INDEX,
    ),
    Calculation(
        "burn-margin", "how far a cut is from burn",
        inputs(*_CUT, specific_energy="40 +- 20 J/mm3", steady_energy="6.2 J/mm3",
               burn_constant="7.2"),
        "ratio", burn_margin, "energy at which burn begins / energy of the cut", _of_margin,
        _MALKIN, "from memory", "Plain carbon and bearing steels. " + _INDEX,
    ),
    Calculation(
        "temperature-rise", "how hot the ground face gets for a moment",
        inputs(*_CUT, specific_energy="40 +- 20 J/mm3", heat_share="0.6..0.85",
               conductivity="34 W/m/K", diffusivity="9 mm2/s"),
        "temperature-difference", temperature_rise,
        "1.13 x heat flow x root of (diffusivity x contact / table speed) / conductivity",
        _of_rise, "Jaeger's moving source of heat, in every grinding text", "from memory",
        "Dry alumina on steel; good coolant takes the share to 0.3 to 0.6. " + _INDEX,
    ),
    Calculation(
        "warm-growth", "how much large a warm part reads",
        inputs("size", "warmth", expansion="12 µm/m/K"), "length", warm_growth,
        "expansion x size x warmth", _of_growth,
        "thermal expansion; 11 µm a metre and degree for steel in a published article",
        "confirmed", "The gauge at shop temperature; the reference is 20 C (ISO 1).",
    ),
)  # fmt: skip

WORKED = (
    Worked(
        id="temper-colour",
        name="how hot a temper colour says it was",
        inputs=(WordInput("colour", "the colour seen on the steel", tuple(TEMPER_COLOURS)),),
        function=colour_answer,
        formula="table of temper colours",
        source="tables of temper colours on carbon steel, minutes in a furnace",
        standing="from memory",
        limits="Carbon steel. Alloy and stainless colour at other temperatures.",
    ),
)
