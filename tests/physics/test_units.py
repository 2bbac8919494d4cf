"""The units of the shop, judged by a general unit library over its whole registry."""

from __future__ import annotations

import math
import re
from functools import cache
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.physics.dimensions import DIMENSIONS, comparable
from diagnose.physics.units import UNITS, Unit, find_unit, show, spellings

SPOKEN = {
    "in": "inch", "thou": "thou", "tenths": "1e-4 inch", "hundredths of a mm": "0.01 mm",
    "µin": "1e-6 inch", "m/min": "meter/minute", "ft/min": "foot/minute", "in/min": "inch/minute",
    "rpm": "turn/minute", "rev/s": "turn/second", "1/min": "1/minute", "min": "minute",
    "h": "hour", "kgf": "kilogram_force", "lbf": "pound_force", "gf": "gram_force",
    "hp": "horsepower", "ft lbf": "foot*pound_force", "lb": "pound", "oz": "ounce",
    "deg": "degree", "arcmin": "arcminute", "arcsec": "arcsecond", "%": "percent",
    "µm/m/K": "1e-6/kelvin", "N/cm2": "newton/cm**2", "mm3/min": "mm**3/minute",
    "kgf/cm2": "kilogram_force/cm**2", "cm3/min": "cm**3/minute", "in3/min": "inch**3/minute",
    "in2/min": "inch**2/minute", "hp min/in3": "horsepower*minute/inch**3",
    "in lbf/in3": "inch*pound_force/inch**3", "J/mm3": "joule/mm**3", "J/m3": "joule/m**3",
    "in/ft": "inch/foot", "thou/ft": "thou/foot", "in/in": "inch/inch", "mm/min": "mm/minute",
    "g in": "gram*inch", "oz in": "ounce*inch", "W/m/K": "watt/meter/kelvin",
}  # fmt: skip
BASES = {"deg C": "degC", "rev/s": "turn/second", "turns": "", "HV": ""}
UNJUDGED = {"hardness", "turns", "count"}  # no scale of hardness in the library, no unit at all


@cache
def registry() -> Any:
    import pint

    return pint.UnitRegistry()


def judge_of(unit: Unit) -> str:
    if unit.dimension == "acceleration" and unit.name == "g":
        return "standard_gravity"
    if unit.dimension.startswith("temperature"):
        prefix = "delta_" if unit.dimension == "temperature-difference" else ""
        return {"K": "kelvin"}.get(unit.name, f"{prefix}deg{unit.name}")
    words = SPOKEN.get(unit.name, unit.name)
    words = re.sub(r"^/", "1/", words).replace(" ", "*") if unit.name not in SPOKEN else words
    return re.sub(r"(?<=[mnts])([23])(?![a-z\d])", r"**\1", words).replace("in**", "inch**")


JUDGED = [u for units in UNITS.values() for u in units if u.dimension not in UNJUDGED and u.name]


@pytest.mark.parametrize("unit", JUDGED, ids=lambda u: f"{u.dimension}-{u.name}")
def test_a_unit_agrees_with_the_unit_library(unit: Unit) -> None:
    ureg = registry()
    si = BASES.get(DIMENSIONS[unit.dimension].si, DIMENSIONS[unit.dimension].si)
    si = re.sub(r"(?<=[ms])([23])", r"**\1", si).replace("kg m", "kg*m")
    for written in (1.0, 37.5):
        theirs = ureg.Quantity(*_scaled(judge_of(unit), written)).to(si).magnitude
        assert unit.to_si(written) == pytest.approx(theirs, rel=1e-14, abs=1e-13)


def _scaled(words: str, written: float) -> tuple[float, str]:
    number, _, rest = words.partition(" ") if re.match(r"^[\d.e-]+ ", words) else ("1", "", words)
    if match := re.match(r"^(1e-6)/(.*)$", rest):
        return written * float(match.group(1)), f"1/{match.group(2)}"
    return written * float(number), rest


def test_every_dimension_has_units_and_a_unit_of_its_own_base() -> None:
    assert set(UNITS) == set(DIMENSIONS)
    for dimension, units in UNITS.items():
        assert any(u.to_si(1.0) == 1.0 for u in units), dimension


def test_no_spelling_means_two_units_of_one_dimension() -> None:
    for dimension, units in UNITS.items():
        written = [name for u in units for name in (u.name, *u.also)]
        distinct = {(name, find_unit(name, dimension).name) for name in written}  # type: ignore[union-attr]  # written is known
        for u in units:
            for name in (u.name, *u.also):
                assert (name, u.name) in distinct, f"{name} is taken by another unit"


def test_the_inch_is_exact() -> None:
    inch, thou, tenth = (find_unit(n, "length") for n in ("in", "thou", "tenths"))
    assert inch is not None
    assert thou is not None
    assert tenth is not None
    assert inch.to_si(1) == 0.0254
    assert thou.to_si(1000) == pytest.approx(inch.to_si(1), rel=1e-15)
    assert tenth.to_si(10) == pytest.approx(thou.to_si(1), rel=1e-15)


@pytest.mark.parametrize(
    ("value", "dimension", "metric", "inch"),
    [
        (5e-5, "length", "0.05 mm", "1.97 thou"),
        (6e-6, "length", "6 µm", "2.36 tenths"),
        (0.1778, "length", "178 mm", "7 in"),
        (0.25, "speed", "15 m/min", "49.2 ft/min"),
        (32.1, "speed", "32.1 m/s", "6319 ft/min"),
        (57.5, "turning-speed", "3450 rpm", "3450 rpm"),
        (4.064e-7, "roughness", "0.406 µm", "16 µin"),
        (750.0, "power", "0.75 kW", "1.01 hp"),
        (75e4, "pressure", "75 N/cm2", "109 psi"),
        (1.2e-5, "unbalance", "12 g mm", "12 g mm"),
        (697.0, "hardness", "60 HRC", "60 HRC"),
        (0.0, "length", "0 mm", "0 in"),
    ],
)
def test_a_number_is_shown_in_the_unit_a_machinist_would_choose(
    value: float, dimension: str, metric: str, inch: str
) -> None:
    assert show(value, dimension) == metric
    assert show(value, dimension, "inch") == inch


@given(
    st.sampled_from(sorted(set(DIMENSIONS) - {"hardness", "temperature"})),
    st.floats(1e-9, 1e9),
    st.sampled_from(["metric", "inch"]),
)
def test_what_is_shown_reads_back_within_its_digits(
    dimension: str, value: float, system: str
) -> None:
    from diagnose.physics.quantities import read_quantity

    back = read_quantity(show(value, dimension, system).replace("e+", "e"), dimension).value
    coarse = 0.5 if dimension == "count" else 0.5 / 60 if dimension == "turning-speed" else 0.0
    assert math.isclose(back, value, rel_tol=6e-3, abs_tol=coarse + 6e-8)


def test_shown_text_survives_a_terminal_of_windows() -> None:
    for dimension in DIMENSIONS:
        for spelling in spellings(dimension):
            if find_unit(spelling, dimension).name == spelling:  # type: ignore[union-attr]  # written is known
                spelling.encode("cp1252")


def test_a_frequency_may_be_compared_with_a_turning_speed_but_not_with_a_length() -> None:
    assert comparable("frequency", "turning-speed")
    assert not comparable("frequency", "length")
