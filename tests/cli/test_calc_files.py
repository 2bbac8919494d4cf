"""`diagnose calc` on files and machines: grid, trace, roughness, match-marks, kind of chatter."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from click.testing import CliRunner, Result

from diagnose.cli.calc import calc

READINGS = Path(__file__).parents[1] / "readings"
PLATE, PROFILE, COLUMN = (READINGS / f"{name}.csv" for name in ("plate", "profile", "column"))
ON_THE_PLATE = "against=surface-plate"


def run(*args: str) -> Result:
    return CliRunner().invoke(calc, args)


def lines(*args: str) -> list[dict[str, Any]]:
    told = run(*args, "--json")
    assert told.exit_code == 0, told.stderr
    found: list[dict[str, Any]] = json.loads(told.stdout)["lines"]
    return found


def starting(found: list[dict[str, Any]], label: str) -> dict[str, Any]:
    return next(each for each in found if each["label"].startswith(label))


def saved(path: Path, heights: Any) -> str:
    path.write_text("\n".join(",".join(f"{v:.4f}" for v in row) for row in heights))
    return str(path)


def plate(rise: float, dish: float, seed: int) -> Any:
    y, x = np.meshgrid(np.linspace(-1, 1, 5), np.linspace(-1, 1, 9), indexing="ij")
    noise = np.random.default_rng(seed).normal(0, 0.2, x.shape)
    return rise * x / 2 + dish * x * x + 0 * y + noise


def test_a_dished_plate_is_split_with_its_uncertainty() -> None:
    # Readings made with a dish of 6 um along, a rise of 3 um across, noise of 0.4 um.
    found = lines("grid", f"file={PLATE}", ON_THE_PLATE)
    dish, rise = starting(found, "middle above the ends along"), starting(found, "tilt across")
    assert abs(dish["value"] + 6e-6) < dish["plus_minus"] < 0.5e-6
    assert abs(rise["value"] - 3e-6) < rise["plus_minus"] < 0.5e-6
    assert "dished along" in run("grid", f"file={PLATE}", ON_THE_PLATE).stdout


@pytest.mark.parametrize(
    ("more", "refused"),
    [
        (("against=surface-plate", "magnet=on"), "the part is flat when free"),
        (("against=micrometer",), "the part is flat when free"),
        (("against=machine-travel",), "the machine's ways are straight"),
        (("against=straightedge",), "the part is of even thickness"),
    ],
)
def test_what_the_reference_cannot_show_is_refused(more: tuple[str, ...], refused: str) -> None:
    found = lines("grid", f"file={PLATE}", *more)
    assert starting(found, f"cannot show that {refused}")["text"]


def test_the_change_from_magnet_on_to_off_is_the_spring_back(tmp_path: Path) -> None:
    held, free = (saved(tmp_path / f"{d}.csv", plate(4, d, int(d))) for d in (0, 8))
    found = lines("grid", f"file={free}", ON_THE_PLATE, f"before={held}")
    dish = starting(found, "middle above the ends along")
    assert dish["value"] == pytest.approx(-8e-6, abs=2 * dish["plus_minus"])
    assert starting(found, "tilt along")["text"] == "(not clear of the noise)"


def test_a_turn_end_for_end_gives_the_taper_to_the_part(tmp_path: Path) -> None:
    one, other = (saved(tmp_path / f"{n}.csv", plate(r, 0, n)) for n, r in ((1, 7), (2, -3)))
    found = lines("grid", f"file={one}", f"turned={other}", "against=machine-travel")
    for owner, rise in (("the part", 5e-6), ("the machine", 2e-6)):
        tilt = starting(found, f"{owner}: tilt along")
        assert tilt["value"] == pytest.approx(rise, abs=2 * tilt["plus_minus"])
    assert starting(found, "cannot be split by this turn")


def test_a_recording_on_the_column_gives_the_wheel_and_the_hum() -> None:
    machine = ("drive=belt", "turning_speed=2850rpm", "line_frequency=50Hz")
    found = lines("trace", f"file={COLUMN}", "pickup=accelerometer", "rate=400Hz", *machine)
    waves = [each for each in found if each["label"].startswith("wave")]
    assert [w["value"] for w in waves] == pytest.approx([47.5, 100.0], rel=1e-3)
    fits = [each["text"] for each in found if each["label"] == "fits"]
    assert fits == ["the wheel (one turn)", "the motor's hum (twice the line frequency)"]
    assert starting(found, "read up to")["value"] == pytest.approx(0.4 * 400)


def test_a_profile_gives_the_spacing_and_with_a_table_speed_its_sources() -> None:
    basic = ("trace", f"file={PROFILE}", "pickup=profile", "step=5um")
    assert starting(lines(*basic), "wave 1")["value"] == pytest.approx(0.25e-3, rel=0.01)
    asked = lines(*basic, "turning_speed=2850rpm")
    assert "table_speed" in starting(asked, "sources")["text"]
    known = lines(*basic, "turning_speed=2850rpm", "table_speed=0.7125 m/min +- 2 %")
    assert starting(known, "fits")["text"] == "the wheel (one turn)"


def test_a_profile_gives_its_roughness_and_grade() -> None:
    # A sine of 0.6 um and noise of 0.15 um: Rq by adding squares.
    found = lines("roughness", f"file={PROFILE}", "step=5um")
    assert starting(found, "Rq")["value"] == pytest.approx(0.45e-6, rel=0.03)
    assert starting(found, "cut-off")["value"] == pytest.approx(0.8e-3)
    assert starting(found, "grade")["text"] == "N5"


def test_what_arithmetic_cannot_split_is_refused_with_the_experiment_that_can() -> None:
    machine = ("drive=direct", "turning_speed=2950rpm", "line_frequency=50Hz")
    told = run("match-marks", "frequency=99 +- 3 Hz", *machine)
    assert "arithmetic cannot tell these apart" in told.stdout
    assert "Coast-down" in told.stdout


def test_marks_are_matched_by_spacing_and_table_speed() -> None:
    found = lines("match-marks", "spacing=3.3 +- 0.1 mm", "table_speed=9.5 +- 0.4 m/min",
                  "turning_speed=2850rpm", "rack_pitch=5mm")  # fmt: skip
    assert starting(found, "fits")["text"] == "the wheel (one turn)"
    assert "the teeth of the rack" in {e["text"] for e in found if e["label"] == "does not fit"}


@pytest.mark.parametrize(
    ("seen", "verdict"),
    [
        (("idling=yes",), "forced"),
        (("idling=no", "comes_back=yes"), "self-excited"),
        (("idling=yes", "comes_back=yes"), "undecided"),
        ((), "undecided"),
        (("followed=0.95",), "forced"),
    ],
)
def test_forced_or_self_excited(seen: tuple[str, ...], verdict: str) -> None:
    assert starting(lines("forced-or-self-excited", *seen), "verdict")["text"] == verdict


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        (("grid", "file=nowhere.csv", ON_THE_PLATE), "nowhere.csv: There is no such file"),
        (("grid", f"file={PROFILE}", ON_THE_PLATE), "profile.csv: The grid has 1200 rows"),
        (("grid", f"file={PLATE}", "against=plate"), "did you mean surface-plate"),
        (("grid", f"file={PLATE}", ON_THE_PLATE, "before=a", "turned=b"), "one of the two"),
        (("trace", f"file={COLUMN}", "pickup=microphone"), "rate=8000Hz"),
        (("trace", f"file={PROFILE}", "pickup=profile"), "step=0.5um"),
        (("trace", f"file={PLATE}", "pickup=profile", "step=1um"), "plate.csv: A trace needs 64"),
        (("trace", f"file={PROFILE}", "pickup=profile", "step=1um", "column=3"), "no column 3"),
        (("trace", f"file={PROFILE}", "pickup=profile", "step=1um", "balls=8"), "in part"),
        (("roughness", f"file={PROFILE}", "step=1mm"), "profile.csv: The profile is too short"),
        (("match-marks",), "There is no frequency"),
        (("match-marks", "frequency=9Hz", "spacing=1mm"), "one of the two"),
        (("match-marks", "frequency=9Hz", "turning_speed=0rpm"), "not above 0"),
        (("match-marks", "spacing=0mm", "table_speed=9m/min"), "not above 0"),
    ],
)
def test_a_bad_file_or_value_is_one_clear_message(typed: tuple[str, ...], said: str) -> None:
    told = run(*typed)
    assert told.exit_code == 1
    assert said in told.stderr
    assert len(told.stderr.strip().splitlines()) == 1


@pytest.mark.parametrize("raw", [b"", b"\xff\xfe\x00", b"a,b\n1,2\n3\n", b"1,x\0,3\n", b"#\n,\n"])
@pytest.mark.parametrize("name", ["grid", "trace", "roughness"])
def test_rubbish_in_a_file_names_the_file(tmp_path: Path, raw: bytes, name: str) -> None:
    path = tmp_path / "rubbish.csv"
    path.write_bytes(raw)
    more = {"grid": [ON_THE_PLATE], "trace": ["pickup=profile", "step=1um"]}
    told = run(name, f"file={path}", *more.get(name, ["step=1um"]))
    assert told.exit_code == 1
    assert "rubbish.csv" in told.stderr
