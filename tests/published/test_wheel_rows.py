"""Markings and first choices against the rows of the handbook and a public course text."""

from __future__ import annotations

import pytest

from diagnose.physics.marking import BONDS, read_marking
from diagnose.physics.wheel import acts_softer
from diagnose.physics.wheel_choice import choose, distances
from tests.published.sources import B74, COURSE, HANDBOOK, published

# Machinery's Handbook 31st ed. p. 1328 Table 2a, makers' prefixes removed; from memory
TABLE_2A = [
    ("grey-iron", "ordinary", "C36K8V"),
    ("grey-iron", "ordinary", "A46I8V"),
    ("soft-steel", "ordinary", "A46J8V"),
    ("hardened-steel", "broad", "A46H8V"),
    ("hardened-steel", "broad", "A60F12V"),
    ("hardened-steel", "narrow", "A46I8V"),
    ("mixed-work", "ordinary", "A46H8V"),
    ("brass", "ordinary", "C36K8V"),
]


@published(HANDBOOK, "from memory")
@pytest.mark.parametrize(("metal", "contact", "marking"), TABLE_2A)
def test_the_handbook_wheel_lies_in_our_range(metal: str, contact: str, marking: str) -> None:
    off = [
        d for d in distances(choose(metal, contact), read_marking(marking)) if d[1] != "as wanted"
    ]
    assert off == []


@published(HANDBOOK, "confirmed")
@pytest.mark.parametrize(
    ("marking", "metal"),
    [("A46K8V", "austenitic-stainless"), ("A60M5V", "soft-steel"), ("A60K5V", "hardened-steel")],
)
def test_a_wheel_for_cylindrical_grinding_is_harder_than_ours(marking: str, metal: str) -> None:
    """Source: Machinery's Handbook 31st ed. p. 1317 Table 2, cylindrical rows; confirmed."""
    assert "harder" in dict(distances(choose(metal), read_marking(marking)))["grade"]


@published(HANDBOOK, "confirmed")
def test_the_bond_letters_are_the_handbook_ones() -> None:
    """Source: Machinery's Handbook 31st ed. p. 1283; confirmed."""
    assert {"V", "S", "E", "R", "RF", "B", "BF", "O", "P"} <= set(BONDS)


@published(B74, "confirmed")
def test_the_example_marking_is_read_field_by_field() -> None:
    """Source: ANSI B74.13 example 51 A 46 H 8 V BE; order of fields confirmed."""
    read = read_marking("51-A-46-H-8-V-BE")
    assert (read.prefix, read.abrasive, read.grit, read.grade) == ("51", "A", 46, "H")
    assert (read.structure, read.bond, read.suffix) == (8, "V", "BE")


@published(COURSE, "confirmed")
@pytest.mark.parametrize(
    ("change", "softer"),
    [
        ({"table_speed_change": 1.5}, True),
        ({"depth_change": 2.0}, True),
        ({"wheel_speed_change": 0.8}, True),
        ({"wheel_diameter_change": 0.8}, True),
        ({"table_speed_change": 0.5}, False),
        ({"wheel_speed_change": 1.2}, False),
    ],
)
def test_what_makes_a_wheel_act_softer(change: dict[str, float], softer: bool) -> None:
    """Source: Engineer On a Disk, grinding notes, and Groover eq. 24.8; confirmed."""
    assert (acts_softer(**change) > 1) is softer
