"""A grid of readings as a person writes it: typed in rows, or the name of a file."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.physics.grid_reading import UNITS, read_grid_reading
from diagnose.physics.readings import BadReadings
from diagnose.physics.reference import Against, Setting, Surface

PLATE = Setting(Against.PLATE)
NINE = "0 1 2 / 3 4 5 / 6 7 8"


def test_rows_lie_across_and_readings_along() -> None:
    found = read_grid_reading(f"{NINE} um", PLATE).split()
    assert found.term("tilt-along").value == pytest.approx(2e-6)
    assert found.term("tilt-across").value == pytest.approx(6e-6)
    assert found.term("crown-along").value == pytest.approx(0.0, abs=1e-12)


@pytest.mark.parametrize(("unit", "metres"), UNITS.items())
def test_every_unit_is_that_unit(unit: str, metres: float) -> None:
    found = read_grid_reading(f"{NINE} {unit}", PLATE).split()
    assert found.term("tilt-along").value == pytest.approx(2 * metres)


def test_a_file_beside_gives_its_numbers_and_not_its_name(tmp_path: Path) -> None:
    (tmp_path / "my plate.csv").write_text("0;1,5;2\n3;-;5\n6;7;8\n", encoding="utf-8")
    found = read_grid_reading("my plate.csv um", PLATE, tmp_path)
    assert found.text == "0 1.5 2 / 3 - 5 / 6 7 8 um"


def test_what_was_other_than_usual_is_said_after_a_comma() -> None:
    said = "against machine travel, on part, magnet on, ground here, repeats within 0.5 um"
    found = read_grid_reading(f"{NINE} um, {said}", PLATE)
    assert found.setting == Setting(Against.TRAVEL, Surface.PART, True, True)
    assert found.repeatability == pytest.approx(0.5e-6)
    assert read_grid_reading(found.text, PLATE) == found


cells = st.floats(-500, 500).map(lambda v: round(v, 2)) | st.just(math.nan)


@settings(deadline=None)
@given(st.lists(st.lists(cells, min_size=4, max_size=4), min_size=4, max_size=6))
def test_what_a_case_keeps_reads_back_the_same(rows: list[list[float]]) -> None:
    text = " / ".join(" ".join("-" if math.isnan(v) else f"{v:g}" for v in r) for r in rows)
    try:
        found = read_grid_reading(f"{text} um", PLATE)
    except BadReadings:
        return  # too many gaps
    assert read_grid_reading(found.text, PLATE).text == found.text


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (NINE, "no unit"),
        ("um", "no reading before the unit"),
        ("0 1 / 2 um", "Row 2 has 1 readings"),
        ("no-such.csv um", "no such file"),
        ("0 1 / 2 3 um", "too few readings"),
        (f"{NINE} um, aganst surface-plate", "Did you mean 'against surface-plate'"),
        (f"{NINE} um, division 1 rpm", "division 1 um"),
        (" / ".join(["1 2 3 4 5 6 7 8 9 10"] * 41) + " um", "at most 400"),
    ],
)
def test_what_cannot_be_used_says_why_and_what_to_do(text: str, says: str) -> None:
    with pytest.raises(BadReadings) as caught:
        read_grid_reading(text, PLATE)
    assert says in str(caught.value)
