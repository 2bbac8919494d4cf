"""`diagnose calc`: what is typed, what is printed, and what a mistake is answered with."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from diagnose.cli.calc import calc
from diagnose.physics.arguments import example_of
from diagnose.physics.catalogue import Calculation, WordInput, Worked, calculations, worked_answers
from diagnose.physics.dimensions import DIMENSIONS

EVERY: list[Calculation | Worked] = [*calculations(), *worked_answers()]
READINGS = Path(__file__).parents[1] / "readings"
OWN_CHOICE = {"trace": ["step=5um"], "match-marks": ["frequency=47.5Hz", "turning_speed=2850rpm"]}
WHEEL = ("wheel-speed", "wheel_diameter=7in", "turning_speed=3450rpm")


def run(*args: str) -> Result:
    return CliRunner().invoke(calc, args)


def written(what: Calculation | Worked) -> list[str]:
    pairs = []
    for each in what.inputs:
        if each.default is None and isinstance(each, WordInput):
            word = each.choices[0] if each.choices else each.example
            pairs.append(f"{each.name}={READINGS / word if word.endswith('.csv') else word}")
        elif each.default is None and not isinstance(each, WordInput):
            pairs.append(f"{each.name}={example_of(each.name, each.dimension)}")
    return pairs + OWN_CHOICE.get(what.id, [])


def test_the_list_names_every_calculation() -> None:
    said = run("--list").stdout
    assert len(EVERY) >= 25
    for what in EVERY:
        assert f"{what.id}: {what.name}" in said
    listed = json.loads(run("--list", "--json").stdout)["calculations"]
    assert [each["id"] for each in listed] == sorted(what.id for what in EVERY)


def test_it_prints_inputs_formula_result_meaning_source_and_limits() -> None:
    said = run(*WHEEL).stdout
    for part in (
        "178 mm",
        "3450 rpm",
        "formula:",
        "32.1 m/s",
        "wheels burst",
        "source:",
        "limits:",
    ):
        assert part in said


def test_inch_is_shown_when_asked_for() -> None:
    assert "6322 ft/min" in run(*WHEEL, "--units", "inch").stdout


@pytest.mark.parametrize("what", EVERY, ids=lambda w: w.id)
def test_every_one_works_from_an_example_and_its_json_is_whole(what: Calculation | Worked) -> None:
    told = run(what.id, *written(what))
    assert told.exit_code in (0, 3), told.stderr
    assert told.stdout.encode("cp1252")
    facts = json.loads(run(what.id, *written(what), "--json").stdout)
    assert facts["id"] == what.id
    assert facts["standing"] == what.standing
    assert {i.name for i in what.inputs if i.default is None} <= set(facts["inputs"])
    on_one_line = " ".join(told.stdout.split())
    said = (f"formula: {what.formula}", facts["meaning"], f"source: {what.source}", what.limits)
    for part in (*(f"{name} = " for name in facts["inputs"]), *said):
        assert part
        assert unbroken(part) in unbroken(on_one_line)


def unbroken(text: str) -> str:
    """The text without blanks: a line may have been broken after a hyphen."""
    return "".join(text.split())


@pytest.mark.parametrize("what", calculations(), ids=lambda w: w.id)
def test_the_result_is_printed_with_its_unit(what: Calculation) -> None:
    facts = json.loads(run(what.id, *written(what), "--json").stdout)["result"]
    assert f"{what.name}: {facts['shown']}" in " ".join(run(what.id, *written(what)).stdout.split())
    bare = DIMENSIONS[what.gives].bare and DIMENSIONS[what.gives].si == ""
    assert bare or any(sign.isalpha() or sign == "%" for sign in facts["shown"])


def test_json_carries_numbers_in_si() -> None:
    facts = json.loads(run(*WHEEL, "--json").stdout)
    assert facts["result"]["value"] == pytest.approx(32.119, abs=1e-3)
    assert facts["result"]["unit"] == "m/s"
    assert facts["inputs"]["wheel_diameter"]["value"] == pytest.approx(0.1778)


def test_a_give_or_take_widens_the_result() -> None:
    said = run("wheel-speed", "wheel_diameter=200 +- 10 mm", "turning_speed=2850rpm").stdout
    assert "from 28.4 m/s to 31.3 m/s" in said


def test_a_value_with_blanks_needs_no_quotes() -> None:
    assert run("wheel-speed", "wheel_diameter=7", "in", "turning_speed=3450", "rpm").exit_code == 0


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        (("weel-speed",), "did you mean wheel-speed"),
        (("contact-length", "deph=1mm"), "did you mean depth"),
        (("contact-length", "depth=1mm", "depth=2mm"), "depth is given twice"),
        (("contact-length", "1mm"), "is not key=value"),
        (("contact-length", "depth=1mm"), 'like wheel_diameter="178 mm"'),
        (("contact-length", "depth=1", "wheel_diameter=7in"), "write the unit"),
        (("contact-length", "depth=1rpm", "wheel_diameter=7in"), "this wants a length"),
        (("contact-length", "depth=1m", "wheel_diameter=7in"), "out of range: it must lie between"),
        (("wheel-marking", "marking=A47H8V"), "grit: 47 is not a size"),
        (("temper-colour", "colour=blu"), "did you mean blue"),
        (("temper-colour", "colour=zzz"), "it may be pale straw"),
    ],
)
def test_a_mistake_is_answered_in_one_message(typed: tuple[str, ...], said: str) -> None:
    told = run(*typed)
    assert told.exit_code == 1
    assert said in told.stderr
    assert told.stdout == ""


def test_without_a_name_it_says_what_to_type() -> None:
    told = run()
    assert told.exit_code == 2
    assert "--list" in told.stderr


def test_a_stop_has_its_own_exit_code_and_the_output_is_complete() -> None:
    told = run("over-marked-speed", "wheel_diameter=8in", "turning_speed=3450rpm",
               "marked_speed=33m/s")  # fmt: skip
    assert told.exit_code == 3
    assert "STOP" in told.stdout
    assert "limits:" in told.stdout


def test_two_ways_agree_with_the_motor_and_show_the_handbook_as_a_ceiling() -> None:
    told = run("two-ways", "metal=hardened-steel", "power=1/2hp", "table_speed=12m/min",
               "wheel_width=13mm")  # fmt: skip
    assert "production ceiling" in told.stdout
    assert "deep cut, tiny crossfeed: 0.05 mm" in told.stdout


def test_strokes_are_a_range_and_learn_from_the_shop() -> None:
    shape = ("wheel_diameter=178mm", "wheel_width=13mm", "crossfeed=0.3mm", "part_length=150mm")
    prior = json.loads(run("dress-due", "metal=soft-steel", *shape, "--json").stdout)["lines"]
    told = run("dress-due", "metal=soft-steel", *shape, "strokes_had=200", "--json").stdout
    learned = json.loads(told)["lines"]
    assert prior[0]["highest"] > 4 * prior[0]["value"]
    assert learned[0]["value"] < 200 < learned[0]["highest"]
    assert "no history" in prior[1]["text"]
    assert "learned" in learned[1]["text"]
