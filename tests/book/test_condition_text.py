"""Conditions as a machinist writes them, read against the facts that there are."""

from __future__ import annotations

import pytest

from diagnose.book.condition_text import read_condition
from diagnose.book.conditions import Condition, Number, holds
from diagnose.book.fact_names import FactName
from diagnose.book.nodes import Page
from diagnose.book.shapes import Reading
from diagnose.book.yaml_nodes import compose

FACTS = {
    "drive": FactName(("belt", "direct", "inverter")),
    "shiny": FactName(("no", "yes")),
    "wheel-turns": FactName(dimension="turning-speed"),
    "bar-rate": FactName(dimension="frequency"),
    "thickness": FactName(dimension="length"),
    "sound-file": FactName(),
}


def read(text: str) -> tuple[Condition, list[str]]:
    node, problems = compose(Page("a.yaml", text))
    reading = Reading()
    reading.problems += problems
    return read_condition(node, FACTS, reading), [p.what for p in reading.problems]


def turns(rpm: float) -> Number:
    return Number(rpm / 60, rpm / 60, rpm / 60)


@pytest.mark.parametrize(
    ("text", "facts", "degree"),
    [
        ("{drive: belt}", {"drive": "belt"}, 1),
        ("{drive: belt}", {"drive": "direct"}, 0),
        ("{drive: [belt, direct]}", {"drive": "direct"}, 1),
        ("{shiny: no}", {"shiny": "no"}, 1),
        ("{wheel-turns: {above: 3000 rpm}}", {"wheel-turns": turns(3100)}, 1),
        ("{wheel-turns: {above: 50 rev/s}}", {"wheel-turns": turns(2900)}, 0),
        ("{thickness: {below: 0.25 in}}", {"thickness": Number(0.006, 0.006, 0.006)}, 1),
        ("{thickness: {between: [2 mm, 4 mm]}}", {"thickness": Number(0.003, 0.002, 0.004)}, 1),
        ("{thickness: {below: 3 mm}}", {"thickness": Number(0.003, 0.002, 0.004)}, 0.5),
        (
            "{bar-rate: {within: 10 %, of: wheel-turns}}",
            {"bar-rate": Number(48, 48, 48), "wheel-turns": turns(3000)},
            1,
        ),
        (
            "{bar-rate: {within: 0.02, of: wheel-turns}}",
            {"bar-rate": Number(48, 48, 48), "wheel-turns": turns(3000)},
            0,
        ),
        ("[{drive: belt}, {shiny: yes}]", {"drive": "belt", "shiny": "no"}, 0),
        ("{drive: belt, shiny: yes}", {"drive": "belt", "shiny": "yes"}, 1),
        ("{drive: belt}", {}, None),
        ("[{drive: belt}, {shiny: yes}]", {"shiny": "no"}, 0),
        ("{}", {}, 1),
    ],
)
def test_a_condition_holds_as_it_reads(text: str, facts: dict, degree: float | None) -> None:  # type: ignore[type-arg]  # any facts
    condition, faults = read(text)
    assert faults == []
    assert holds(condition, facts) == (pytest.approx(degree) if degree is not None else None)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("drive", "this is not a condition"),
        ("[[drive]]", "this is not a condition"),
        ("{driv: belt}", "there is no fact 'driv'"),
        ("{drive: chain}", "drive is never 'chain'"),
        ("{drive: {above: 3 mm}}", "drive is not a number"),
        ("{sound-file: {above: 3 mm}}", "sound-file is not a number"),
        ("{drive: [[belt]]}", "one of the answers should stand here"),
        ("{thickness: thin}", "thickness is a number"),
        ("{thickness: {over: 3 mm}}", "compared by one of"),
        ("{thickness: {above: 3 mm, below: 4 mm}}", "compared by one of"),
        ("{thickness: {above: 3}}", "'3' has no unit"),
        ("{thickness: {above: 3 kg}}", "this wants a length"),
        ("{thickness: {between: 3 mm}}", "between needs two numbers"),
        ("{thickness: {between: [4 mm, 3 mm]}}", "from the lower number to the higher"),
        ("{bar-rate: {within: 150 %, of: wheel-turns}}", "a share between 0 and 100 %"),
        ("{bar-rate: {within: 10 %, of: weel-turns}}", "there is no fact 'weel-turns'"),
        ("{bar-rate: {within: 10 %, of: thickness}}", "cannot be compared"),
        ("{bar-rate: {within: 10 %}}", "compared by one of"),
        ("{sound-file: loud}", "sound-file is a number, not one of some words"),
    ],
)
def test_a_slip_in_a_condition_is_said(text: str, says: str) -> None:
    _, faults = read(text)
    assert len(faults) == 1
    assert says in faults[0]
