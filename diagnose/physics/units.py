"""The units of the shop with exact factors, and how a number is written back."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache

from diagnose.physics.dimensions import DIMENSIONS, comparable
from diagnose.physics.hardness import (
    brinell_of,
    rockwell_of,
    vickers_of_brinell,
    vickers_of_rockwell,
)

__all__ = ["DIMENSIONS", "UNITS", "Unit", "comparable", "find_unit", "show", "unit_key", "units_of"]

INCH = 0.0254
FOOT = 12 * INCH
POUND = 0.45359237
GRAVITY = 9.80665
POUND_FORCE = POUND * GRAVITY
HORSEPOWER = 550 * FOOT * POUND_FORCE
TURN = 2 * math.pi


@dataclass(frozen=True)
class Unit:
    """One unit: `name` as we write it, `also` as others do; SI = written * factor + offset.

    Hardness scales are not straight lines; they go through `diagnose.physics.hardness`.
    """

    dimension: str
    name: str
    factor: float
    also: tuple[str, ...] = ()
    offset: float = 0.0

    def to_si(self, written: float) -> float:
        """The SI value of a number written in this unit."""
        if self.name == "HRC":
            return vickers_of_rockwell(written)
        if self.name == "HB":
            return vickers_of_brinell(written)
        return written * self.factor + self.offset

    def from_si(self, value: float) -> float:
        """The number to write in this unit for an SI value."""
        if self.name == "HRC":
            return rockwell_of(value)
        if self.name == "HB":
            return brinell_of(value)
        return (value - self.offset) / self.factor


_LENGTHS: tuple[tuple[str, float, tuple[str, ...]], ...] = (
    ("mm", 1e-3, ("millimetre", "millimetres", "millimeter", "millimeters")),
    ("cm", 1e-2, ("centimetre", "centimetres", "centimeter", "centimeters")),
    ("m", 1.0, ("metre", "metres", "meter", "meters")),
    ("µm", 1e-6, ("um", "micron", "microns", "micrometre", "micrometres", "micrometer")),
    ("nm", 1e-9, ()),
    ("in", INCH, ('"', "inch", "inches", "in.")),
    ("ft", FOOT, ("'", "foot", "feet")),
    ("thou", INCH / 1000, ("thous", "thousandth", "thousandths", "thousandths of an inch")),
    ("tenths", INCH / 10000, ("tenth", "tenths of a thou", "tenth of a thou")),
    ("hundredths of a mm", 1e-5, ("hundredths", "hundredth", "hundredths mm")),
    ("µin", INCH / 1e6, ("uin", "microinch", "micro-inch", "microinches", "micro inch")),
)

_REST: tuple[tuple[str, tuple[tuple[str, float, tuple[str, ...]], ...]], ...] = (
    ("area", (
        ("mm2", 1e-6, ("sq mm",)), ("cm2", 1e-4, ("sq cm",)), ("m2", 1.0, ()),
        ("in2", INCH**2, ("sq in",)), ("µm2", 1e-12, ("um2",)),
    )),
    ("volume", (
        ("mm3", 1e-9, ()), ("cm3", 1e-6, ("cc", "ml")), ("m3", 1.0, ()),
        ("in3", INCH**3, ("cu in",)),
    )),
    ("speed", (
        ("m/min", 1 / 60, ("metres per minute", "meters per minute", "m/minute")),
        ("m/s", 1.0, ("metres per second", "meters per second", "m/sec")),
        ("mm/s", 1e-3, ("mm/sec",)), ("mm/min", 1e-3 / 60, ()),
        ("ft/min", FOOT / 60, ("fpm", "sfpm", "sfm", "feet per minute", "feet/min", "ft/minute")),
        ("in/min", INCH / 60, ("ipm", "inches per minute", "in/minute")),
        ("in/s", INCH, ("ips", "in/sec")), ("ft/s", FOOT, ("fps", "ft/sec")),
    )),
    ("turning-speed", (
        ("rpm", 1 / 60, ("rev/min", "r/min", "1/min", "turns/min", "revs", "u/min")),
        ("rev/s", 1.0, ("hz", "1/s", "r/s", "rps", "turns/s")),
        ("rad/s", 1 / TURN, ()),
    )),
    ("frequency", (
        ("Hz", 1.0, ("1/s", "cycles/s", "cps", "per second", "hertz")),
        ("kHz", 1e3, ()), ("1/min", 1 / 60, ("per minute", "cpm", "rpm", "/min")),
    )),
    ("acceleration", (("m/s2", 1.0, ()), ("mm/s2", 1e-3, ()), ("g", GRAVITY, ("gn",)))),
    ("time", (
        ("s", 1.0, ("sec", "secs", "second", "seconds")), ("ms", 1e-3, ()),
        ("min", 60.0, ("mins", "minute", "minutes")), ("h", 3600.0, ("hr", "hrs", "hour", "hours")),
    )),
    ("force", (
        ("N", 1.0, ("newton", "newtons")), ("kN", 1e3, ()), ("mN", 1e-3, ()),
        ("lbf", POUND_FORCE, ("lb", "lbs", "pound", "pounds")),
        ("kgf", GRAVITY, ("kp", "kg")), ("gf", GRAVITY / 1000, ()),
    )),
    ("power", (
        ("kW", 1e3, ()), ("W", 1.0, ("watt", "watts")), ("hp", HORSEPOWER, ("horsepower",)),
    )),
    ("energy", (
        ("J", 1.0, ("joule", "joules")), ("kJ", 1e3, ()), ("ft lbf", FOOT * POUND_FORCE, ()),
    )),
    ("mass", (
        ("kg", 1.0, ()), ("g", 1e-3, ("gram", "grams", "gramme", "grammes")), ("mg", 1e-6, ()),
        ("lb", POUND, ("lbs", "pound", "pounds")), ("oz", POUND / 16, ("ounce", "ounces")),
    )),
    ("unbalance", (
        ("g mm", 1e-6, ("gmm", "g-mm", "mm g")), ("g cm", 1e-5, ("gcm",)), ("kg m", 1.0, ()),
        ("kg mm", 1e-3, ()), ("g in", 1e-3 * INCH, ()), ("oz in", POUND / 16 * INCH, ("oz-in",)),
    )),
    ("balance-grade", (("mm/s", 1e-3, ("",)), ("m/s", 1.0, ()))),
    ("angle", (
        ("deg", TURN / 360, ("°", "degree", "degrees")), ("rad", 1.0, ("radian", "radians")),
        ("arcmin", TURN / 21600, ("'", "minutes of arc")),
        ("arcsec", TURN / 1296000, ('"', "seconds of arc")),
    )),
    ("slope", (
        ("mm/m", 1e-3, ("mm per m",)), ("µm/m", 1e-6, ("um/m",)), ("mm/mm", 1.0, ("m/m",)),
        ("in/ft", 1 / 12, ()), ("thou/ft", 1 / 12000, ("thou/foot", "thou per foot")),
        ("in/in", 1.0, ()), ("%", 0.01, ()),
    )),
    ("ratio", (("", 1.0, ("times", "x", "to 1")), ("%", 0.01, ("percent", "per cent", "pct")))),
    ("number", (("", 1.0, ()),)),
    ("count", (
        ("", 1.0, ("passes", "pass", "strokes", "stroke", "marks", "bars", "pieces", "parts")),
    )),
    ("turns", (("turns", 1.0, ("", "turn", "turns of the handle", "rev", "revs")),)),
    ("count-per-length", (
        ("/mm", 1e3, ("1/mm", "per mm")), ("/m", 1.0, ("1/m", "per m")),
        ("/cm", 1e2, ("1/cm", "per cm")),
        ("/in", 1 / INCH, ("1/in", "per in", "per inch", "/inch")),
    )),
    ("count-per-area", (
        ("/mm2", 1e6, ("1/mm2", "per mm2", "grits/mm2")),
        ("/cm2", 1e4, ("1/cm2", "per cm2", "grits/cm2")),
        ("/m2", 1.0, ("1/m2", "per m2")),
        ("/in2", 1 / INCH**2, ("1/in2", "per in2", "grits/in2")),
    )),
    ("removal-rate", (
        ("mm3/s", 1e-9, ()), ("mm3/min", 1e-9 / 60, ()), ("m3/s", 1.0, ()),
        ("cm3/min", 1e-6 / 60, ()),
        ("in3/min", INCH**3 / 60, ()),
    )),
    ("removal-per-width", (
        ("mm2/s", 1e-6, ("mm3/mm/s",)), ("m2/s", 1.0, ()), ("in2/min", INCH**2 / 60, ()))),
    ("specific-energy", (
        ("J/mm3", 1e9, ("W s/mm3", "GJ/m3", "Ws/mm3")), ("J/m3", 1.0, ()),
        ("hp min/in3", HORSEPOWER * 60 / INCH**3, ("hp-min/in3", "hp/in3/min")),
        ("in lbf/in3", POUND_FORCE / INCH**2, ("in lb/in3",)),
    )),
    ("expansion", (("µm/m/K", 1e-6, ("um/m/K", "ppm/K", "µm/m/C")), ("1/K", 1.0, ("/K",)))),
    ("conductivity", (("W/m/K", 1.0, ("W/mK", "W/(m K)")),)),
    ("diffusivity", (("mm2/s", 1e-6, ()), ("m2/s", 1.0, ()))),
)  # fmt: skip

_PRESSURES: tuple[tuple[str, float, tuple[str, ...]], ...] = (
    ("N/cm2", 1e4, ()), ("MPa", 1e6, ("N/mm2",)), ("GPa", 1e9, ()), ("kPa", 1e3, ()),
    ("Pa", 1.0, ()), ("bar", 1e5, ()), ("psi", POUND_FORCE / INCH**2, ("lb/in2", "lbf/in2")),
    ("ksi", 1000 * POUND_FORCE / INCH**2, ()), ("kgf/cm2", GRAVITY * 1e4, ()),
)  # fmt: skip


def _table() -> dict[str, tuple[Unit, ...]]:
    shared = [(name, _LENGTHS) for name in ("length", "deviation", "roughness")]
    shared += [(name, _PRESSURES) for name in ("pressure", "stress")]
    table = {
        dimension: tuple(Unit(dimension, *row) for row in rows)
        for dimension, rows in (*shared, *_REST)
    }
    table["temperature"] = (
        Unit("temperature", "C", 1.0, ("°C", "deg C", "degC", "celsius")),
        Unit("temperature", "F", 5 / 9, ("°F", "deg F", "degF", "fahrenheit"), -32 * 5 / 9),
        Unit("temperature", "K", 1.0, ("kelvin",), -273.15),
    )
    table["temperature-difference"] = (
        Unit("temperature-difference", "K", 1.0, ("C", "°C", "deg C", "kelvin")),
        Unit("temperature-difference", "F", 5 / 9, ("°F", "deg F")),
    )
    table["hardness"] = (
        Unit("hardness", "HRC", 1.0, ("rc", "rockwell c")),
        Unit("hardness", "HB", 1.0, ("hbw", "bhn", "brinell")),
        Unit("hardness", "HV", 1.0, ("vickers",)),
    )
    return table


UNITS: dict[str, tuple[Unit, ...]] = _table()

_SAME_SIGN = str.maketrans(
    {"²": "2", "³": "3", "^": "", "·": " ", "*": " ", "⋅": " ", "μ": "µ", "″": '"', "“": '"',
     "”": '"', "′": "'", "’": "'", "\u00a0": " ", "\u202f": " ", "\u2009": " "}
)  # fmt: skip


def unit_key(text: str) -> str:
    """A unit as typed, with the many ways of writing one sign made one."""
    words = " ".join(text.translate(_SAME_SIGN).replace("''", '"').split())
    return words.replace(" / ", "/").replace("/ ", "/").replace(" /", "/").rstrip(".")


def units_of(dimension: str) -> tuple[Unit, ...]:
    """The units a quantity of this dimension may be written in. KeyError for an unknown one."""
    return UNITS[dimension]


@cache
def _spellings(dimension: str) -> tuple[dict[str, Unit], dict[str, Unit]]:
    exact: dict[str, Unit] = {}
    for unit in UNITS[dimension]:
        for name in (unit.name, *unit.also):
            exact.setdefault(unit_key(name), unit)
    folded: dict[str, Unit] = {}
    for name, unit in exact.items():
        folded.setdefault(name.casefold(), unit)
    return exact, folded


def find_unit(text: str, dimension: str) -> Unit | None:
    """The unit of the dimension written so, or None; capitals matter only to tell two apart."""
    exact, folded = _spellings(dimension)
    key = unit_key(text)
    return exact.get(key) or folded.get(key.casefold())


def spellings(dimension: str) -> list[str]:
    """Every way of writing a unit of the dimension."""
    return list(_spellings(dimension)[0])


def show(value: float, dimension: str, system: str = "metric") -> str:
    """An SI value as a machinist would write it, unit always with it.

    `system` is "metric" or "inch". KeyError for an unknown dimension.
    """
    from diagnose.physics.shown import shown

    return shown(value, dimension, system)
