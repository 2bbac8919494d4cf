"""The wheel as a turning thing: how fast its rim goes, how worn it is, how hard it acts."""

from __future__ import annotations

import math

from diagnose.physics.arguments import inputs, ranged
from diagnose.physics.catalogue import Calculation
from diagnose.physics.errors import OutOfRange
from diagnose.physics.grains import grain_diameter
from diagnose.physics.units import show

COMMON_LIMIT = 33.0  # m/s, top of the vitrified straight-wheel classes; from memory, ANSI B7.1
_STOP = "Running faster than the wheel is marked for is a stop: wheels burst."


@ranged
def wheel_speed(wheel_diameter: float, turning_speed: float) -> float:
    """Rim speed in m/s of a wheel of this diameter (m) at this turning speed (rev/s): pi D n.

    Source: plain geometry; ANSI B7.1 uses the same. Raises OutOfRange.
    """
    return math.pi * wheel_diameter * turning_speed


@ranged
def highest_turning_speed(marked_speed: float, wheel_diameter: float) -> float:
    """Turning speed (rev/s) at which a wheel of this diameter (m) reaches its marked speed (m/s).

    Source: v / (pi D); worked example of a wheel-speed page, 6 in at 6500 ft/min.
    Raises OutOfRange.
    """
    return marked_speed / (math.pi * wheel_diameter)


@ranged
def over_marked_speed(wheel_diameter: float, turning_speed: float, marked_speed: float) -> float:
    """Rim speed over marked speed; above 1 is a stop. Lengths m, rev/s, m/s.

    Source: definition; the limit is the mark, ANSI B7.1. Raises OutOfRange.
    """
    return math.pi * wheel_diameter * turning_speed / marked_speed


@ranged
def worn_speed_share(worn_diameter: float, new_diameter: float) -> float:
    """Rim speed of the worn wheel over that of the new one at the same turning speed.

    Source: speed goes with the diameter. Raises OutOfRange, also when it grew with wear.
    """
    if worn_diameter > new_diameter:
        raise OutOfRange("worn_diameter", worn_diameter, "length", 0.01, new_diameter)
    return worn_diameter / new_diameter


@ranged
def acts_softer(
    table_speed_change: float = 1.0,
    wheel_speed_change: float = 1.0,
    depth_change: float = 1.0,
    wheel_diameter_change: float = 1.0,
) -> float:
    """Force on one grain after a change of settings, over that before; each argument new / old.

    Source: F' = K (vw / V)^0.5 (a / D)^0.25, Groover eq. 24.8. Raises OutOfRange.
    """
    speeds = table_speed_change / wheel_speed_change
    return math.sqrt(speeds) * math.pow(depth_change / wheel_diameter_change, 0.25)


def _of_speed(_given: dict[str, float], speed: float) -> str:
    if speed > COMMON_LIMIT:
        return (
            f"That is above {show(COMMON_LIMIT, 'speed')} ({show(COMMON_LIMIT, 'speed', 'inch')}), "
            f"the top for common vitrified wheels: stop unless this wheel is marked for it. {_STOP}"
        )
    return f"The speed marked on this wheel decides, not this sum. {_STOP}"


def _of_turning(_given: dict[str, float], _turning: float) -> str:
    return f"The spindle running free must stay below it, and below the rpm on the label. {_STOP}"


def _of_over(_given: dict[str, float], over: float) -> str:
    if over > 1.0:
        return (
            "STOP: the rim runs above its marked speed. Do not start; a wheel that ran so is scrap."
        )
    return f"Below the mark by this sum, which clears nothing: read the label again. {_STOP}"


def _of_worn(_given: dict[str, float], share: float) -> str:
    if share > 0.9:
        return "Hardly worn: the wheel acts as when new."
    return (
        f"The rim runs at {share:.0%} of its first speed, so the wheel acts softer, sheds faster "
        "and cuts rougher. Fit a full-size wheel or accept it; never raise "
        "the rpm to make up for it."
    )


def _of_softer(_given: dict[str, float], ratio: float) -> str:
    if 0.95 < ratio < 1.05:
        return "The wheel acts about as hard as before."
    if ratio > 1:
        return (
            "More force on each grain: the wheel acts softer, sharpens itself and wears faster. "
            "Right for a wheel that glazes or burns."
        )
    return (
        "Less force on each grain: the wheel acts harder, holds its grains longer and glazes "
        "sooner. Right for a wheel that sheds or loses its corner."
    )


def _of_grain(_given: dict[str, float], grain: float) -> str:
    return (
        f"A chip must be far thinner than a grain of {show(grain, 'length')}; grains of this "
        "size set the room for chips and, with the dress, the finish."
    )


_SPEED_LIMITS = "The free turning speed must be measured; a nameplate is not a measurement."

CALCULATIONS = (
    Calculation(
        id="wheel-speed",
        name="speed of the wheel's rim",
        inputs=inputs("wheel_diameter", "turning_speed"),
        gives="speed",
        function=wheel_speed,
        formula="rim speed = 3.1416 x diameter x turning speed",
        meaning=_of_speed,
        source="plain geometry, as in ANSI B7.1-2000 section 7",
        standing="confirmed",
        limits=_SPEED_LIMITS,
    ),
    Calculation(
        id="highest-turning-speed",
        name="highest turning speed a marked wheel may have",
        inputs=inputs("marked_speed", "wheel_diameter"),
        gives="turning-speed",
        function=highest_turning_speed,
        formula="turning speed = marked speed / (3.1416 x diameter)",
        meaning=_of_turning,
        source="worked example of a wheel-speed page: 6 in at 6500 ft/min gives 4138 rpm",
        standing="confirmed",
        limits="The rpm on the label holds too; the lower of the two counts. " + _SPEED_LIMITS,
    ),
    Calculation(
        id="over-marked-speed",
        name="rim speed against the speed marked on the wheel",
        inputs=inputs("wheel_diameter", "turning_speed", "marked_speed"),
        gives="ratio",
        function=over_marked_speed,
        formula="3.1416 x diameter x turning speed / marked speed",
        meaning=_of_over,
        source="29 CFR 1910.215(d)(1): the spindle speed must not exceed the wheel's",
        standing="confirmed",
        limits="It can raise a stop; it can never clear one. " + _SPEED_LIMITS,
    ),
    Calculation(
        id="worn-wheel-speed",
        name="what a worn diameter leaves of the rim speed",
        inputs=inputs("worn_diameter", "new_diameter"),
        gives="ratio",
        function=worn_speed_share,
        formula="share of the speed = worn diameter / new diameter",
        meaning=_of_worn,
        source="plain geometry; wheels below 4500 ft/min wear fast: a railway shop note of 1928",
        standing="confirmed",
        limits="For a spindle of one speed.",
    ),
    Calculation(
        id="acts-softer",
        name="how a change of settings makes the wheel act softer or harder",
        inputs=inputs(
            table_speed_change="1",
            wheel_speed_change="1",
            depth_change="1",
            wheel_diameter_change="1",
        ),
        gives="ratio",
        function=acts_softer,
        formula="root of (table change / wheel speed change) x fourth root of (depth / diameter)",
        meaning=_of_softer,
        source="Groover, Fundamentals of Modern Manufacturing, eq. 24.8",
        standing="confirmed",
        limits="A direction and a size, not a number of letters; the wheel itself stays as marked.",
    ),
    Calculation(
        id="grain-diameter",
        name="mean diameter of the grains of a grit number",
        inputs=inputs("grit"),
        gives="length",
        function=grain_diameter,
        formula="table of the F series; between two sizes by proportion",
        meaning=_of_grain,
        source="ISO 8486 / FEPA F series",
        standing="from memory",
        limits="Bonded wheels only, F8 to F400; the P numbers of coated papers are another scale.",
    ),
)
