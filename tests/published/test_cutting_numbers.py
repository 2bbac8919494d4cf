"""Speeds, chips, energies and forces against textbooks and published worked examples."""

from __future__ import annotations

import pytest

from diagnose.physics.balance import permissible_unbalance, unbalance_force
from diagnose.physics.cutting import (
    chip_thickness,
    chips_per_second,
    contact_length,
    cutting_force,
    cutting_power,
    energy_from_force,
    push_down,
    removal_per_width,
    removal_rate,
)
from diagnose.physics.dressing import diamond_width, speed_for_overlap
from diagnose.physics.grains import grain_diameter
from diagnose.physics.heat import warm_growth
from diagnose.physics.tables import DEPTHS, METALS
from diagnose.physics.units import find_unit
from diagnose.physics.wheel import highest_turning_speed, wheel_speed
from tests.published.checks import Check
from tests.published.sources import (
    BURN,
    CHATTER,
    DRESSING,
    F80,
    FORMULAS,
    GROOVER,
    HANDBOOK,
    HOLDERS,
    HOME_SHOP,
    KALPAKJIAN,
    SPEED_PAGE,
    WARM,
    WAVINESS,
    published,
)


def si(number: float, unit: str, dimension: str) -> float:
    found = find_unit(unit, dimension)
    assert found is not None
    return found.to_si(number)


def read(value: float, unit: str, dimension: str) -> float:
    found = find_unit(unit, dimension)
    assert found is not None
    return found.from_si(value)


IN, FPM, RPM = 0.0254, 0.3048 / 60, 1 / 60
IN3MIN = IN**3 / 60
GRIND, FORCE = "grinding example", "force example"
INCH, MM_250, MM_160 = "problem posed, 8 in wheel", "metric, 250 mm wheel", "metric, 160 mm wheel"
TIP_USED = "tip 0.015 in, depth 0.001 in"
POSED = "problem text confirmed, result worked out by hand"

FORCE_RATE = removal_rate(0.002 * IN, 1 * IN, 60 * IN / 60)
FORCE_POWER = cutting_power(si(15, "hp min/in3", "specific-energy"), 0.002 * IN, IN, IN)
FORCE_FORCE = cutting_force(FORCE_POWER, wheel_speed(10 * IN, 4000 * RPM))
PROBLEM_1 = (7.3 * 4.4482216152605, 5000 * FPM, 0.002 * IN, 0.15 * IN, 20 * FPM)
PROBLEM_2 = (26.0, wheel_speed(0.25, 2600 * RPM), 50e-6, 3.5e-3, 0.1)
TIP, DEPTH = 0.015 * IN, 0.001 * IN

CHECKS = [
    Check("highest rpm of a 6 in wheel at 6500 ft per min",
          60 * highest_turning_speed(6500 * FPM, 6 * IN), 4138, 0.5,
          SPEED_PAGE, "confirmed"),
    Check("16 in wheel at 12000 ft per min", 60 * highest_turning_speed(12000 * FPM, 16 * IN),
          2866, 2, CHATTER, "confirmed"),
    Check("500 mm wheel at 40 m per s", 60 * highest_turning_speed(40, 0.5), 1528, 0.5,
          WAVINESS, "confirmed"),
    Check("350 mm wheel at 40 m per s", 60 * highest_turning_speed(40, 0.35), 2182, 1,
          WAVINESS, "confirmed"),
    Check("contact length, 200 mm and 0.05 mm", 1e3 * contact_length(50e-6, 0.2), 3.2, 0.05,
          KALPAKJIAN, "from memory", GRIND),
    Check("chip thickness, 30 m per min under 1800", 1e3 * chip_thickness(
          50e-6, 0.2, 0.5, 30.0, 2e6, 15.0), 0.006, 0.0005, KALPAKJIAN, "from memory", GRIND),
    Check("removal rate of the force example", FORCE_RATE / IN3MIN, 0.12, 0.001, FORMULAS,
          "confirmed", FORCE),
    Check("power of the force example", read(FORCE_POWER, "hp", "power"), 1.8, 0.01, FORMULAS,
          "confirmed", FORCE),
    Check("push along of the force example", read(FORCE_FORCE, "lbf", "force"), 5.7, 0.05, FORMULAS,
          "confirmed", FORCE),
    Check("push down of the force example", read(push_down(FORCE_FORCE), "lbf", "force"), 7.4,
          0.05, FORMULAS, "confirmed", FORCE),
    Check("contact length, 8 in and 0.002 in", contact_length(0.002 * IN, 8 * IN) / IN, 0.1265,
          5e-5, GROOVER, POSED, INCH),
    Check("removal rate, 8 in problem", removal_rate(0.002 * IN, 0.15 * IN, 20 * FPM) / IN3MIN,
          0.072, 5e-7, GROOVER, POSED, INCH),
    Check("chips a minute, 8 in problem", 60e-6 * chips_per_second(
          5000 * FPM, 0.15 * IN, 300 / IN**2), 2.7, 0.005, GROOVER, POSED, INCH),
    Check("specific energy, 8 in problem", read(energy_from_force(
          *PROBLEM_1), "hp min/in3", "specific-energy"), 15.4, 0.05, GROOVER, POSED, INCH),
    Check("wheel speed, 250 mm problem", 60 * PROBLEM_2[1], 2042, 0.5, GROOVER, POSED, MM_250),
    Check("contact length, 250 mm problem", 1e3 * contact_length(50e-6, 0.25), 3.54, 0.005,
          GROOVER, POSED, MM_250),
    Check("removal rate, 250 mm problem", 60e9 * removal_rate(50e-6, 3.5e-3, 0.1), 1050, 0.5,
          GROOVER, POSED, MM_250),
    Check("chips a minute, 250 mm problem", 60e-6 * chips_per_second(
          PROBLEM_2[1], 3.5e-3, 64e4), 4.57, 0.005, GROOVER, POSED, MM_250),
    Check("specific energy, 250 mm problem", 1e-9 * energy_from_force(
          *PROBLEM_2), 50.6, 0.05, GROOVER, POSED, MM_250),
    Check("contact length, 160 mm problem", 1e3 * contact_length(30e-6, 0.16), 2.19, 0.005,
          GROOVER, POSED, MM_160),
    Check("removal rate, 160 mm problem", 60e9 * removal_rate(30e-6, 4e-3, 0.25), 1800, 0.5,
          GROOVER, POSED, MM_160),
    Check("chips a minute, 160 mm problem", 60e-6 * chips_per_second(25.0, 4e-3, 35e4), 2.1,
          0.005, GROOVER, POSED, MM_160),
    Check("removal per width from inches", 1e6 * removal_per_width(0.001 * IN, 100 * IN / 60),
          10.75 * 0.1, 0.0005, BURN, "confirmed", "10.75 x in x ipm"),
    Check("half width of the diamond", 1e3 * diamond_width(TIP, DEPTH) / 2, 0.137, 0.0005, DRESSING,
          "confirmed", TIP_USED),
    Check("width of the diamond in inches", diamond_width(TIP, DEPTH) / IN, 0.0108, 5e-5, DRESSING,
          "confirmed", TIP_USED),
    Check("rpm of a 406 mm wheel at 30 m per s", 60 * highest_turning_speed(30.0, 0.406), 1410,
          2, DRESSING, "confirmed", TIP_USED),
    Check("dress speed for overlap 2", 60e3 * speed_for_overlap(2.0, 1410 * RPM, TIP, DEPTH),
          192.5, 0.5, DRESSING, "confirmed", TIP_USED),
    Check("dress speed for overlap 4", 60e3 * speed_for_overlap(4.0, 1410 * RPM, TIP, DEPTH),
          96.25, 0.25, DRESSING, "confirmed", TIP_USED),
    Check("unbalance, 2 kg at G 6.3 and 10000 rpm", 1e6 * permissible_unbalance(
          6.3e-3, 2.0, 10000 * RPM), 12, 0.05, HOLDERS,
          "confirmed"),
    Check("weight of 1 g on the rim of a 6 in wheel at 3400 rpm, in gf", unbalance_force(
          1e-3 * 3 * IN, 3400 * RPM) / 9.80665e-3, 970, 20, HOME_SHOP, "confirmed"),
    Check("a metre of steel, one degree warmer", 1e6 * warm_growth(1.0, 1.0), 11, 1.01,
          WARM, "confirmed"),
    Check("grain of F80", 1e6 * grain_diameter(80), 180, 6, F80,
          "confirmed"),
]  # fmt: skip


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_we_compute_what_was_printed(check: Check) -> None:
    assert check.holds, (
        f"{check.ours} not {check.printed}: {check.source.title} {check.place} ({check.standing})"
    )


@published(FORMULAS, "confirmed")
@pytest.mark.parametrize(
    ("metal", "horsepowers", "joules"),
    [
        ("aluminium", (2.5, 10), (7, 27)),
        ("grey-iron", (4.5, 22), (12, 60)),
        ("soft-steel", (5, 25), (14, 68)),
        ("titanium", (6, 20), (16, 55)),
        ("hardened-steel", (6.5, 30), (18, 82)),
    ],
)
def test_the_energy_table_is_the_printed_one_in_both_units(
    metal: str, horsepowers: tuple[float, float], joules: tuple[float, float]
) -> None:
    """Source: specific-energy table of the formula sheet; confirmed."""
    for ours, printed, in_joules in zip(METALS[metal].energies, horsepowers, joules, strict=True):
        assert ours == pytest.approx(in_joules * 1e9)
        assert si(printed, "hp min/in3", "specific-energy") == pytest.approx(ours, rel=0.04)


@published(HANDBOOK, "confirmed")
@pytest.mark.parametrize(
    ("metal", "rough", "finish", "crossfeed"),
    [("soft-steel", 0.003, 0.0005, 1 / 4), ("alloy-steel", 0.003, 0.001, 1 / 4)],
)
def test_the_handbook_depths_are_the_printed_ones(
    metal: str, rough: float, finish: float, crossfeed: float
) -> None:
    """Source: Machinery's Handbook 31st ed. p. 1329 Table 3, first rows; confirmed."""
    row = DEPTHS[metal]
    assert (row.rough / IN, row.finish / IN) == pytest.approx((rough, finish))
    assert row.crossfeed == crossfeed
    assert row.standing == "confirmed"
