"""The kinds of number a machinist measures: what each is called and which values make sense."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Dimension:
    """One kind of quantity.

    `noun` names it in a sentence ("a length"); `si` is the unit its floats are kept in;
    `example` shows how to write one; values below zero are refused unless `signed`;
    a `bare` number needs no unit.
    """

    id: str
    noun: str
    si: str
    example: str
    signed: bool = False
    bare: bool = False


_ALL = (
    Dimension("length", "a length", "m", "0.05 mm"),
    Dimension("deviation", "a deviation (may be below zero)", "m", "-0.005 mm", signed=True),
    Dimension("roughness", "a roughness", "m", "0.8 µm"),
    Dimension("area", "an area", "m2", "0.02 mm2"),
    Dimension("volume", "a volume", "m3", "20 mm3"),
    Dimension("speed", "a speed", "m/s", "12 m/min"),
    Dimension("turning-speed", "a turning speed", "rev/s", "2850 rpm"),
    Dimension("frequency", "a frequency", "Hz", "50 Hz"),
    Dimension("acceleration", "an acceleration", "m/s2", "9.8 m/s2"),
    Dimension("time", "a time", "s", "8 s"),
    Dimension("force", "a force", "N", "25 N"),
    Dimension("power", "a power", "W", "0.75 kW"),
    Dimension("energy", "an energy", "J", "265 J"),
    Dimension("pressure", "a pressure or pull", "Pa", "75 N/cm2"),
    Dimension("stress", "a stress (may be below zero)", "Pa", "-200 MPa", signed=True),
    Dimension("mass", "a mass", "kg", "1.5 kg"),
    Dimension("unbalance", "an unbalance", "kg m", "12 g mm"),
    Dimension("balance-grade", "a balance grade", "m/s", "2.5 mm/s", bare=True),
    Dimension("temperature", "a temperature", "deg C", "20 C", signed=True),
    Dimension("temperature-difference", "a difference of temperature", "K", "5 K", signed=True),
    Dimension("hardness", "a hardness", "HV", "60 HRC"),
    Dimension("angle", "an angle", "rad", "10 deg", signed=True),
    Dimension("slope", "a slope", "m/m", "0.01 mm/m", signed=True),
    Dimension("ratio", "a share or a ratio", "", "25 %", bare=True),
    Dimension("number", "a plain number", "", "2", signed=True, bare=True),
    Dimension("count", "a count", "", "8", bare=True),
    Dimension("turns", "turns of a handle", "turns", "2.5 turns", bare=True),
    Dimension("count-per-length", "a count of marks in a length", "1/m", "8 in 25 mm"),
    Dimension("count-per-area", "a count on an area", "1/m2", "2 /mm2"),
    Dimension("removal-rate", "a removal rate", "m3/s", "20 mm3/s"),
    Dimension("removal-per-width", "a removal rate per width", "m2/s", "2 mm2/s"),
    Dimension("specific-energy", "an energy per volume removed", "J/m3", "40 J/mm3"),
    Dimension("expansion", "an expansion coefficient", "1/K", "12 µm/m/K"),
    Dimension("conductivity", "a heat conductivity", "W/m/K", "34 W/m/K"),
    Dimension("diffusivity", "a heat diffusivity", "m2/s", "9 mm2/s"),
)

DIMENSIONS: dict[str, Dimension] = {each.id: each for each in _ALL}

_ALIKE = (
    frozenset({"turning-speed", "frequency"}),
    frozenset({"length", "deviation", "roughness"}),
    frozenset({"pressure", "stress"}),
    frozenset({"speed", "balance-grade"}),
    frozenset({"ratio", "number", "count", "turns"}),
)


def comparable(one: str, other: str) -> bool:
    """Whether values of the two dimensions may be set side by side: a frequency and a turn."""
    return one == other or any({one, other} <= family for family in _ALIKE)
