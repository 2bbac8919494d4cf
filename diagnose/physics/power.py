"""Depth, crossfeed and table speed against the spindle's power: one decision, not three.

The ceiling is an area: depth x crossfeed <= 0.7 P / (u vw). Handbook depths are a production
ceiling on machines of several kilowatts; they are shown, never recommended.
"""

from __future__ import annotations

from diagnose.physics.arguments import inputs, ranged
from diagnose.physics.catalogue import Answer, Calculation, Line, WordInput, Worked
from diagnose.physics.tables import DEPTHS, METALS
from diagnose.physics.units import show

DEEPEST = 50e-6  # m; only with a tiny crossfeed
TINY_CROSSFEED = 0.4e-3  # m
THIN = 10e-6  # m, rough, with a wide crossfeed
FINISH = 2.5e-6  # m
FINISH_CROSSFEED = 1.5e-3  # m
EFFICIENCY = 0.7


@ranged
def area_ceiling(
    power: float, specific_energy: float, table_speed: float, efficiency: float = EFFICIENCY
) -> float:
    """Largest depth x crossfeed (m2) the spindle's motor (W) pulls at this table speed (m/s).

    Source: power = specific energy (J/m3) x removal rate, Groover chapter 24; 0.7 reaches the cut,
    common practice. Raises OutOfRange.
    """
    return power * efficiency / (specific_energy * table_speed)


@ranged
def depth_ceiling(
    power: float,
    specific_energy: float,
    table_speed: float,
    crossfeed: float,
    efficiency: float = EFFICIENCY,
) -> float:
    """Deepest cut (m) the motor pulls with this crossfeed (m). Source as area_ceiling."""
    return area_ceiling(power, specific_energy, table_speed, efficiency) / crossfeed


@ranged
def crossfeed_ceiling(
    power: float,
    specific_energy: float,
    table_speed: float,
    depth: float,
    efficiency: float = EFFICIENCY,
) -> float:
    """Widest crossfeed (m) the motor pulls at this depth (m). Source as area_ceiling."""
    return area_ceiling(power, specific_energy, table_speed, efficiency) / depth


@ranged
def ceiling_share(
    power: float,
    specific_energy: float,
    table_speed: float,
    depth: float,
    crossfeed: float,
    efficiency: float = EFFICIENCY,
) -> float:
    """The cut as set, depth x crossfeed, over the ceiling. Source as area_ceiling."""
    return depth * crossfeed / area_ceiling(power, specific_energy, table_speed, efficiency)


def working_share(dull: bool, dry: bool, thin: bool) -> float:
    """Share of the ceiling to work at: 0.9, less for a dull wheel, a dry cut, thin work; 0.5 least.

    Source: common practice.
    """
    return max(0.9 - 0.15 * (dull + dry + thin), 0.5)


def deep_way(area: float, deepest: float = DEEPEST) -> tuple[float, float]:
    """(depth, crossfeed) in m: as deep as allowed, the corner does the work, tiny crossfeed."""
    depth = min(DEEPEST, deepest)
    crossfeed = min(TINY_CROSSFEED, area / depth)
    return depth, crossfeed


def thin_way(area: float, widest: float, deepest: float = THIN) -> tuple[float, float]:
    """(depth, crossfeed) in m: a thin cut with a wide crossfeed, no wider than `widest`."""
    depth = min(THIN, deepest)
    return depth, min(widest, area / depth)


def two_ways(
    metal: str,
    power: float,
    table_speed: float,
    wheel_width: float,
    wheel: str = "sharp",
    wet: str = "yes",
    thin: str = "no",
) -> Answer:
    """Two sound ways to set the cut, the finish, and the handbook's ceiling. Raises OutOfRange."""
    ceiling = area_ceiling(power, METALS[metal].energy, table_speed)
    share = working_share(wheel == "dull", wet == "no", thin == "yes")
    row = DEPTHS[metal]
    widest = row.crossfeed * wheel_width
    area = share * ceiling
    lines = (
        Line("ceiling, depth x crossfeed", value=ceiling, dimension="area"),
        Line(f"work at {share:.0%} of it", value=area, dimension="area"),
        _way("deep cut, tiny crossfeed", *deep_way(area, row.rough)),
        _way("thin cut, wide crossfeed", *thin_way(area, widest, row.rough)),
        _way("finish", FINISH, min(area / FINISH, widest, FINISH_CROSSFEED)),
        Line("full width at once, no deeper than", value=area / wheel_width, dimension="length"),
        Line("handbook depth, a production ceiling", value=row.rough, dimension="length"),
    )
    return Answer(lines, _advice(row.rough * widest / ceiling))


def _way(label: str, depth: float, crossfeed: float) -> Line:
    text = f"{show(depth, 'length')} ({show(depth, 'length', 'inch')}) deep, "
    return Line(
        label, text + f"{show(crossfeed, 'length')} ({show(crossfeed, 'length', 'inch')}) across"
    )


def _advice(over: float) -> str:
    return (
        "Both ways are sound; never both at once. Feed across with the wheel clear of the work. "
        f"The handbook pair of depth and crossfeed asks {over:.2g} times what this motor gives."
    )


def _of_area(given: dict[str, float], area: float) -> str:
    depth, crossfeed = deep_way(0.7 * area)
    return (
        f"Work at 50 to 90 % of it, less when dull, dry or thin: {show(depth, 'length')} deep with "
        f"{show(crossfeed, 'length')} across, or {show(THIN, 'length')} with "
        f"{show(0.7 * area / THIN, 'length')}, table at {show(given['table_speed'], 'speed')}."
    )


def _of_depth(_given: dict[str, float], depth: float) -> str:
    if depth > DEEPEST:
        return (
            f"The motor would pull it; a light machine and the part would not. "
            f"{show(DEEPEST, 'length')} is plenty, and only with a tiny crossfeed."
        )
    return (
        "Stay below: 50 to 90 % of it, less when the wheel is dull, the cut dry or the work thin."
    )


def _of_crossfeed(_given: dict[str, float], _crossfeed: float) -> str:
    return "Stay below, and below a quarter of the face (a tenth on hardened work) in any case."


def _of_share(_given: dict[str, float], share: float) -> str:
    if share > 1:
        return (
            f"{share:.1f} times what the motor gives: it slows, the wheel rubs and burns. "
            "Take less depth or less crossfeed."
        )
    if share > 0.9:
        return "At the ceiling: nothing left for a dull wheel or a high spot. Take less."
    if share < 0.1:
        return "A light cut. With a shiny wheel it may be too light to let the wheel sharpen."
    return "The motor pulls it. That says nothing of heat in thin work or of hold on the chuck."


_SOURCE = "power = specific energy x removal rate, Groover chapter 24; 0.7 is common practice"
_LIMITS = (
    "Specific energy spreads fourfold; a dull wheel doubles it. Take 60 J/mm3 for hard steel, 40 "
    "for soft. A ceiling, not a recommendation."
)
_AREA = "0.7 x power / (specific energy x table speed)"
_BASE = ("power", "specific_energy", "table_speed")

CALCULATIONS = (
    Calculation(
        "area-ceiling", "largest depth x crossfeed the motor pulls",
        inputs(*_BASE, efficiency="0.7"), "area", area_ceiling, _AREA, _of_area, _SOURCE,
        "derived", _LIMITS,
    ),
    Calculation(
        "depth-ceiling", "deepest cut the motor pulls with a crossfeed",
        inputs(*_BASE, "crossfeed", efficiency="0.7"), "length", depth_ceiling,
        f"{_AREA} / crossfeed", _of_depth, _SOURCE, "derived", _LIMITS,
    ),
    Calculation(
        "crossfeed-ceiling", "widest crossfeed the motor pulls at a depth",
        inputs(*_BASE, "depth", efficiency="0.7"), "length", crossfeed_ceiling,
        f"{_AREA} / depth", _of_crossfeed, _SOURCE, "derived", _LIMITS,
    ),
    Calculation(
        "ceiling-share", "the cut as set against what the motor pulls",
        inputs(*_BASE, "depth", "crossfeed", efficiency="0.7"), "ratio", ceiling_share,
        f"depth x crossfeed / ({_AREA})", _of_share, _SOURCE, "derived", _LIMITS,
    ),
)  # fmt: skip

WORKED = (
    Worked(
        id="two-ways",
        name="two sound ways to set depth and crossfeed on this machine",
        inputs=(
            WordInput("metal", "what is ground", tuple(METALS)),
            *inputs("power", "table_speed", "wheel_width"),
            WordInput("wheel", "state of the wheel", ("sharp", "dull"), "sharp"),
            WordInput("wet", "coolant on the contact", ("yes", "no"), "yes"),
            WordInput("thin", "thin work", ("no", "yes"), "no"),
        ),
        function=two_ways,
        formula=f"depth x crossfeed at 50 to 90 % of {_AREA}",
        source=_SOURCE + "; Machinery's Handbook 31st ed. p. 1329 Table 3 as a ceiling",
        standing="derived",
        limits=_LIMITS,
    ),
)
