"""How a number is written back: the unit a machinist would choose, and no more digits than help."""

from __future__ import annotations

import math

_Steps = tuple[tuple[float, str], ...]  # smallest size for which the unit is used, largest first

_METRIC: dict[str, _Steps] = {
    "length": ((10.0, "m"), (1e-5, "mm"), (0.0, "µm")),
    "deviation": ((1e-5, "mm"), (0.0, "µm")),
    "roughness": ((0.0, "µm"),),
    "area": ((1e-3, "cm2"), (0.0, "mm2")),
    "volume": ((1e-5, "cm3"), (0.0, "mm3")),
    "speed": ((3.0, "m/s"), (0.02, "m/min"), (1e-4, "mm/min"), (0.0, "mm/s")),
    "turning-speed": ((0.0, "rpm"),),
    "frequency": ((1e3, "kHz"), (0.0, "Hz")),
    "acceleration": ((0.0, "m/s2"),),
    "time": ((7200.0, "h"), (120.0, "min"), (0.1, "s"), (0.0, "ms")),
    "force": ((1e4, "kN"), (0.0, "N")),
    "power": ((100.0, "kW"), (0.0, "W")),
    "energy": ((1e4, "kJ"), (0.0, "J")),
    "pressure": ((1e10, "GPa"), (1e7, "MPa"), (0.0, "N/cm2")),
    "stress": ((1e10, "GPa"), (0.0, "MPa")),
    "mass": ((1.0, "kg"), (0.0, "g")),
    "unbalance": ((0.0, "g mm"),),
    "balance-grade": ((0.0, "mm/s"),),
    "temperature": ((0.0, "C"),),
    "temperature-difference": ((0.0, "K"),),
    "hardness": ((238.0, "HRC"), (0.0, "HB")),
    "angle": ((0.0, "deg"),),
    "slope": ((1e-4, "mm/m"), (0.0, "µm/m")),
    "ratio": ((0.0, ""),),
    "number": ((0.0, ""),),
    "count": ((0.0, ""),),
    "turns": ((0.0, "turns"),),
    "count-per-length": ((200.0, "/mm"), (0.0, "/m")),
    "count-per-area": ((1e6, "/mm2"), (0.0, "/cm2")),
    "removal-rate": ((1e-9, "mm3/s"), (0.0, "mm3/min")),
    "removal-per-width": ((0.0, "mm2/s"),),
    "specific-energy": ((0.0, "J/mm3"),),
    "expansion": ((0.0, "µm/m/K"),),
    "conductivity": ((0.0, "W/m/K"),),
    "diffusivity": ((0.0, "mm2/s"),),
}

_INCH: dict[str, _Steps] = {
    "length": ((10.0, "ft"), (1.27e-3, "in"), (2.5e-5, "thou"), (1.2e-6, "tenths"), (0.0, "µin")),
    "deviation": ((1.27e-3, "in"), (2.5e-5, "thou"), (1.2e-6, "tenths"), (0.0, "µin")),
    "roughness": ((0.0, "µin"),),
    "area": ((0.0, "in2"),),
    "volume": ((0.0, "in3"),),
    "speed": ((0.02, "ft/min"), (0.0, "in/min")),
    "force": ((0.0, "lbf"),),
    "power": ((0.0, "hp"),),
    "pressure": ((0.0, "psi"),),
    "stress": ((7e6, "ksi"), (0.0, "psi")),
    "mass": ((0.45, "lb"), (0.0, "oz")),
    "temperature": ((0.0, "F"),),
    "temperature-difference": ((0.0, "F"),),
    "slope": ((0.0, "thou/ft"),),
    "count-per-length": ((0.0, "/in"),),
    "count-per-area": ((0.0, "/in2"),),
    "removal-rate": ((0.0, "in3/min"),),
    "removal-per-width": ((0.0, "in2/min"),),
    "specific-energy": ((0.0, "hp min/in3"),),
}

_WHOLE = frozenset({"turning-speed", "hardness", "count", "temperature"})


def digits(number: float, significant: int = 3) -> str:
    """The number rounded to so many figures, without an exponent where it can be avoided."""
    if number == 0 or not math.isfinite(number):
        return f"{number:.0f}"
    size = math.floor(math.log10(abs(number)))
    if size >= 7 or size < -6:
        return f"{number:.{significant - 1}e}"
    places = max(significant - 1 - size, 0)
    text = f"{number:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def unit_for(value: float, dimension: str, system: str) -> str:
    """Name of the unit in which a value of this size is best read."""
    steps = _METRIC[dimension]
    if system == "inch":
        steps = _INCH.get(dimension, steps)
    size = abs(value)
    return next(name for least, name in steps if size >= least or least == 0.0)


def shown(value: float, dimension: str, system: str = "metric") -> str:
    """`0.05 mm`, `2 thou`, `2850 rpm`, `60 HRC`: the value with the unit that suits its size."""
    from diagnose.physics.units import find_unit

    if value == 0 and dimension in ("length", "deviation"):
        return "0 in" if system == "inch" else "0 mm"
    name = unit_for(value, dimension, system)
    unit = find_unit(name, dimension)
    assert unit is not None
    number = unit.from_si(value)
    text = f"{number:.0f}" if dimension in _WHOLE and abs(number) >= 10 else digits(number)
    return f"{text} {name}".strip()
