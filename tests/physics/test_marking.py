"""Wheel markings: read as written, written as read, and faults named by field."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.physics.grains import SIZES, grain_diameter
from diagnose.physics.marking import (
    ABRASIVES,
    BONDS,
    MOST_OPEN,
    Marking,
    MarkingError,
    explained,
    read_marking,
    write_marking,
)
from diagnose.physics.wheel_choice import choice_answer, choose, distances, letters_harder


@pytest.mark.parametrize(
    "text",
    [
        "A46H8V",
        "A46-H8V",
        "a 46 h 8 v",
        "A-46-H-8-V",
        "AF46 H8 V",
        "ISO 603-1 1 N-200x20x31,75 A/F 46 H 8 V",
    ],
)
def test_one_wheel_written_in_many_ways(text: str) -> None:
    assert read_marking(text) == Marking("A", 46, "H", "V", 8)


@pytest.mark.parametrize("text", ["A46H8V-35", "A 46 H 8 V 35 m/s", "1-200x20x32 A46H8V-35"])
def test_the_speed_is_read_from_the_end(text: str) -> None:
    assert read_marking(text).speed == 35.0


def test_structure_and_suffix_may_be_left_out() -> None:
    assert read_marking("C36KV") == Marking("C", 36, "K", "V")


@pytest.mark.parametrize(
    ("text", "field", "said"),
    [
        ("X46H8V", "abrasive", "'X' is not an abrasive"),
        ("46H8V", "abrasive", "before the grit 46 is missing"),
        ("D126", "abrasive", "another scheme"),
        ("A47H8V", "grit", "near it are 46 and 54"),
        ("A H8V", "grit", "a number like 46"),
        ("A46 8V", "grade", "one letter"),
        ("A46H99V", "structure", "outside"),
        ("A46H8Q", "bond", "'Q' is not a bond"),
        ("A46H8", "bond", "the bond is missing"),
        ("", "abrasive", "no letter"),
    ],
)
def test_a_fault_is_named_by_its_field(text: str, field: str, said: str) -> None:
    with pytest.raises(MarkingError, match=re.escape(said)) as caught:
        read_marking(text)
    assert caught.value.field == field


MARKINGS = st.builds(
    Marking,
    abrasive=st.sampled_from(sorted(ABRASIVES)),
    grit=st.sampled_from(SIZES),
    grade=st.sampled_from("ABCDEFGHIJKLMNOPQRSTUVWXYZ"),
    bond=st.sampled_from(sorted(BONDS)),
    structure=st.none() | st.integers(1, MOST_OPEN),
    prefix=st.sampled_from(["", "5", "51", "38"]),
    suffix=st.sampled_from(["", "KC", "9K", "2"]),
    speed=st.none() | st.sampled_from([30.0, 35.0, 40.0]),
)


@given(MARKINGS)
def test_what_is_written_reads_back(marking: Marking) -> None:
    assert read_marking(write_marking(marking)) == marking


@given(st.text(max_size=20))
def test_any_text_is_read_or_refused_by_field(text: str) -> None:
    try:
        said = read_marking(text).bond
    except MarkingError as error:
        said = error.field
    assert said in BONDS or said in ("abrasive", "grit", "grade", "structure", "bond")


def test_every_field_is_explained_and_no_speed_is_a_stop() -> None:
    told = {field: meaning for field, _, meaning in explained(read_marking("A46H8V"))}
    assert list(told) == [
        "prefix", "abrasive", "grit", "grade", "structure", "bond", "suffix", "speed",
    ]  # fmt: skip
    assert "stop" in told["speed"]


def test_a_bench_grinder_grade_is_called_one() -> None:
    told = {field: meaning for field, _, meaning in explained(read_marking("A60Q5V"))}
    assert "bench-grinder" in told["grade"]


def test_a_higher_grit_number_has_smaller_grains() -> None:
    sizes = [grain_diameter(grit) for grit in SIZES]
    assert sizes == sorted(sizes, reverse=True)
    assert grain_diameter(54) < grain_diameter(50) < grain_diameter(46)


def test_green_silicon_carbide_on_hard_steel_is_told() -> None:
    told = dict(distances(choose("hardened-steel"), read_marking("GC60K8V")))
    assert "wears fast on steel" in told["abrasive"]
    assert "3 letters harder" in told["grade"]


@given(st.sampled_from("DEFGHIJKLMNOPQRST"))
def test_a_letter_up_is_never_softer(grade: str) -> None:
    choice = choose("soft-steel")
    now = letters_harder(choice, Marking("A", 46, grade, "V", 8))
    up = letters_harder(choice, Marking("A", 46, chr(ord(grade) + 1), "V", 8))
    assert up >= now


def test_thin_dry_and_broad_work_wants_a_softer_wheel() -> None:
    plain, harsh = choose("hardened-steel"), choose("hardened-steel", "broad", thin=True, wet=False)
    assert harsh.grade < plain.grade
    assert harsh.structure[1] > plain.structure[1]


@pytest.mark.parametrize(
    ("hardness", "row"),
    [("120 HB", "soft-steel"), ("40 HRC", "alloy-steel"), ("62 HRC", "hardened-steel")],
)
def test_the_hardness_chooses_among_the_steels(hardness: str, row: str) -> None:
    told = {line.label: line.text for line in choice_answer("soft-steel", hardness=hardness).lines}
    assert told.get("taken as", row).startswith(row)


def test_no_choice_is_softer_than_any_row_of_the_handbook() -> None:
    assert choose("high-speed-steel", "broad", thin=True, wet=False).grade[0] == "E"
