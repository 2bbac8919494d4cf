"""What a machinist writes is understood, and what cannot be is answered with the mend."""

from __future__ import annotations

import subprocess
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.physics.dimensions import DIMENSIONS
from diagnose.physics.quantities import QuantityError, read_quantity

READS = [
    ("0.002 in", "length", 5.08e-5),
    ("2 thou", "length", 5.08e-5),
    ('.0005"', "length", 1.27e-5),
    ("1/4 in", "length", 6.35e-3),
    ("1 1/2 in", "length", 38.1e-3),
    ("1-1/2 in", "length", 38.1e-3),
    ("1½ in", "length", 38.1e-3),
    ("0,05 mm", "length", 5e-5),
    ("5 tenths", "length", 1.27e-5),
    ("2 hundredths of a mm", "length", 2e-5),
    ("5 ft 3 in", "length", 1.6002),
    ("50 ft/min", "speed", 0.254),
    ("15 m/min", "speed", 0.25),
    ("6500 sfpm", "speed", 33.02),
    ("3450 rpm", "turning-speed", 57.5),
    ("2 850 rpm", "turning-speed", 47.5),
    ("57.5 Hz", "turning-speed", 57.5),
    ("60 HRC", "hardness", 697.0),
    ("200 HB", "hardness", 210.526),
    ("8 s", "time", 8.0),
    ("1 min 20 s", "time", 80.0),
    ("16 µin", "roughness", 4.064e-7),
    ("16 uin", "roughness", 4.064e-7),
    ("8 in 25 mm", "count-per-length", 320.0),
    ("20 in 1 in", "count-per-length", 787.4016),
    ("8 bars in 25 mm", "count-per-length", 320.0),
    ("2 per in", "count-per-length", 78.74016),
    ("4 turns", "turns", 4.0),
    ("2.5", "turns", 2.5),
    ("1/4 turn", "turns", 0.25),
    ("25 %", "ratio", 0.25),
    ("1:20", "ratio", 0.05),
    ("1/3", "ratio", 1 / 3),
    ("12 g·mm", "unbalance", 1.2e-5),
    ("75 N/cm²", "pressure", 7.5e5),
    ("68 F", "temperature", 20.0),
    ("-0.005 mm", "deviation", -5e-6),
    ("1/2 hp", "power", 372.85),
    ("1,234.5 rpm", "turning-speed", 20.575),
    ("1.234,5 rpm", "turning-speed", 20.575),
]


@pytest.mark.parametrize(("text", "dimension", "value"), READS)
def test_it_reads(text: str, dimension: str, value: float) -> None:
    assert read_quantity(text, dimension).value == pytest.approx(value, rel=1e-5)


@pytest.mark.parametrize(
    ("text", "dimension", "value", "spread"),
    [
        ("3.3 +- 0.2 mm", "length", 3.3e-3, 2e-4),
        ("3.3 ± 0.2 mm", "length", 3.3e-3, 2e-4),
        ("3.3 mm +/- 200 µm", "length", 3.3e-3, 2e-4),
        ("12..15 m/min", "speed", 0.225, 0.025),
        ("12-15 m/min", "speed", 0.225, 0.025),
        ("12 to 15 m/min", "speed", 0.225, 0.025),
        ("800 mm/min to 1 m/min", "speed", 0.015, 1 / 600),
        ("10 m/min +- 10 %", "speed", 1 / 6, 1 / 60),
        ("8 +- 0.5 in 25 mm", "count-per-length", 320.0, 20.0),
        ("60 +- 2 HRC", "hardness", 697.0, 46.5),
    ],
)
def test_it_reads_give_or_take_and_ranges(
    text: str, dimension: str, value: float, spread: float
) -> None:
    found = read_quantity(text, dimension)
    assert found.value == pytest.approx(value, rel=1e-6)
    assert found.uncertainty == pytest.approx(spread, rel=1e-6)
    assert found.lowest < found.value < found.highest


@pytest.mark.parametrize(
    ("text", "dimension", "message"),
    [
        ("0.05", "length", "write the unit, for example 0.05 mm"),
        ("0.05 mm", "speed", "this wants a speed; mm is a length"),
        ("5 fpmm", "speed", "did you mean fpm?"),
        ("3,450 rpm", "turning-speed", "could be 3450 or 3.450"),
        ("nan mm", "length", "not a number that can be measured"),
        ("inf rpm", "turning-speed", "not a number that can be measured"),
        ("1e400 mm", "length", "too large"),
        ("-3 mm", "length", "below zero; a length cannot be"),
        ("3 mil", "length", "means thou to some and mm to others"),
        ("", "length", "nothing is written"),
        ("8 in 25 mm", "length", "holds two numbers"),
        ("1/0 in", "length", "divides by nothing"),
        ("3 .. 2 mm", "length", "runs backwards"),
        ("-300 C", "temperature", "colder than anything can be"),
        ("8 in 0 mm", "count-per-length", "no length"),
        ("quick", "speed", "does not begin with a number"),
    ],
)
def test_it_says_what_is_wrong_and_how_to_mend_it(text: str, dimension: str, message: str) -> None:
    with pytest.raises(QuantityError) as caught:
        read_quantity(text, dimension)
    assert message in str(caught.value)


def test_a_bare_number_takes_the_unit_it_is_told_to_take() -> None:
    assert read_quantity("0.05", "length", "mm").value == pytest.approx(5e-5)
    assert read_quantity("2", "length", "thou").value == pytest.approx(5.08e-5)
    assert read_quantity("2 mm", "length", "thou").value == pytest.approx(2e-3)


@given(st.text(max_size=24), st.sampled_from(sorted(DIMENSIONS)))
def test_any_text_gives_a_finite_quantity_or_a_plain_message(text: str, dimension: str) -> None:
    try:
        said: float | str = read_quantity(text, dimension).value
    except QuantityError as error:
        said = str(error)
    assert said if isinstance(said, str) else abs(said) < float("inf")


@given(
    st.floats(1e-4, 1e4, allow_subnormal=False), st.sampled_from(["mm", "in", "thou", "µm", "ft"])
)
def test_point_and_comma_read_alike(number: float, unit: str) -> None:
    point = f"{number:.4f} {unit}"
    assert (
        read_quantity(point, "length").value
        == read_quantity(point.replace(".", ","), "length").value
    )


def test_reading_a_quantity_loads_nothing_heavy() -> None:
    code = (
        "import sys, diagnose.physics.quantities;"
        "print([m for m in ('numpy', 'pint', 'scipy', 'click', 'yaml') if m in sys.modules])"
    )
    said = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert said.stdout.strip() == "[]"
