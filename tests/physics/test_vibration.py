"""Marks and running parts: no sum gives NaN or a length below nothing, each fault is clear."""

from __future__ import annotations

import math
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.physics import bearings, grades, running_parts, sampling, trials, vibration
from diagnose.physics.bearings import Bearing
from diagnose.physics.catalogue import Calculation
from diagnose.physics.errors import OutOfRange
from diagnose.physics.sources_of_vibration import (
    Kind,
    Machine,
    match_sources,
    sources_of_vibration,
)
from diagnose.physics.trials import (
    Chatter,
    Drive,
    Fixed,
    fixed_in,
    forced_or_self_excited,
    table_speed_trial,
    wheel_speed_trial,
)

ROOM = (vibration, running_parts, sampling, trials, bearings, grades)
CALCULATIONS = tuple(each for module in ROOM for each in module.CALCULATIONS)


@pytest.mark.parametrize("calculation", CALCULATIONS, ids=lambda c: c.id)
@settings(max_examples=80, deadline=None)
@given(data=st.data())
def test_no_calculation_gives_nan_or_a_negative_magnitude(
    calculation: Calculation, data: st.DataObject
) -> None:
    size = st.one_of(st.floats(1e-9, 1e4), st.floats(0.01, 100.0), st.just(1.0))
    inputs = {each.name: data.draw(size, each.name) for each in calculation.inputs}
    try:
        result = calculation.function(**inputs)
    except OutOfRange as fault:
        assert fault.argument in inputs  # noqa: PT017 - either way may end
        assert fault.argument.replace("_", " ") in str(fault)  # noqa: PT017 - either way may end
    else:
        assert math.isfinite(result)
        assert result >= 0
        assert calculation.meaning(inputs, result).endswith((".", "?"))


@pytest.mark.parametrize("calculation", CALCULATIONS, ids=lambda c: c.id)
@pytest.mark.parametrize("bad", [math.nan, math.inf, -1.0])
def test_every_calculation_refuses_what_is_no_measure(calculation: Calculation, bad: float) -> None:
    for name in (each.name for each in calculation.inputs):
        inputs = {each.name: 1.0 for each in calculation.inputs} | {name: bad}
        with pytest.raises(OutOfRange):
            calculation.function(**inputs)


@pytest.mark.parametrize("calculation", CALCULATIONS, ids=lambda c: c.id)
def test_every_calculation_says_where_it_comes_from_and_ends(calculation: Calculation) -> None:
    assert calculation.standing in ("confirmed", "from memory", "common practice", "derived")
    assert calculation.source
    assert calculation.limits.endswith(".")
    for text in (calculation.name, calculation.formula, calculation.limits):
        text.encode("cp1252")


FULL = Machine(
    drive=Drive.BELT,
    turning_speed=57.5,
    motor_speed=28.75,
    line_frequency=60,
    pulley_diameter=0.07,
    belt_length=0.9,
    pump_speed=24.0,
    pump_elements=9,
    rack_pitch=4.712e-3,
    roller_pitch=12e-3,
    bearings=(Bearing(9, 7.94e-3, 38.5e-3),),
    auxiliaries=(("the extractor fan", 48.0),),
)


def _fits(lowest: float, highest: float, machine: Machine, table: float | None = None) -> set[str]:
    return {source.id for source in match_sources(lowest, highest, machine, table).fits}


def test_every_source_that_is_known_is_listed_and_no_other() -> None:
    ids = {source.id for source in sources_of_vibration(FULL, table_speed=0.2)}

    assert ids == {
        "wheel-1x", "wheel-2x", "wheel-3x", "motor-1x", "belt-1x", "belt-2x", "line-2x",
        "pump-1x", "pump-pulses", "auxiliary-the extractor fan", "bearing-1-outer-race",
        "bearing-1-inner-race", "bearing-1-ball", "bearing-1-cage", "rack", "rollers",
    }  # fmt: skip
    assert sources_of_vibration(Machine()) == ()
    assert not any("bearing" in s.id for s in sources_of_vibration(Machine(turning_speed=50.0)))


def test_a_direct_drive_has_no_belt_and_wheel_and_motor_are_one() -> None:
    direct = Machine(drive=Drive.DIRECT, turning_speed=47.5, pulley_diameter=0.07, belt_length=0.9)
    sources = sources_of_vibration(direct)

    assert {source.id for source in sources} == {"wheel-1x", "wheel-2x", "wheel-3x"}
    assert "turn together" in sources[0].name


def test_the_belt_is_slower_than_both_pulleys() -> None:
    belt = next(s for s in sources_of_vibration(FULL) if s.id == "belt-1x")
    assert belt.highest < FULL.motor_speed  # type: ignore[operator]  # FULL has it


@pytest.mark.parametrize(("line", "wheel"), [(50, 47.5), (60, 57.5)])
def test_a_hand_fed_table_cannot_tell_the_hum_from_twice_the_wheel(
    line: float, wheel: float
) -> None:
    machine = Machine(drive=Drive.BELT, turning_speed=wheel, line_frequency=line)
    match = match_sources(1.9 * wheel, 1.57 * 1.9 * wheel, machine)

    assert {s.id for s in match.fits} >= {"wheel-2x", "line-2x"}
    assert not match.told_apart
    assert "cannot tell" in match.said
    assert any(text.startswith("Coast-down") for text in match.experiments)
    assert all("clear of the work" in text for text in match.experiments if "Coast" in text)


def test_a_good_recording_can_tell_the_hum_from_twice_the_wheel() -> None:
    machine = Machine(drive=Drive.BELT, turning_speed=47.5, line_frequency=50, speed_share=0.003)
    assert _fits(99.9, 100.1, machine) == {"line-2x"}
    assert _fits(94.9, 95.1, machine) == {"wheel-2x"}


def test_a_rack_tooth_on_top_of_one_wheel_turn_asks_for_a_second_table_speed() -> None:
    machine = Machine(drive=Drive.BELT, turning_speed=47.5, rack_pitch=4.712e-3)
    match = match_sources(46, 49, machine, table_speed=0.225)

    assert {s.id for s in match.fits} == {"wheel-1x", "rack"}
    assert any(text.startswith("Table half as fast") for text in match.experiments)


@pytest.mark.parametrize(
    ("drive", "said", "never"),
    [
        (Drive.BELT, "belts off", "bare spindle"),
        (Drive.DIRECT, "bare spindle", "belt"),
        (Drive.INVERTER, "never faster", "belt"),
        (None, "how the wheel is driven", "belts off"),
    ],
)
def test_experiments_are_gated_by_the_drive(drive: Drive | None, said: str, never: str) -> None:
    machine = Machine(drive=drive, turning_speed=47.5, motor_speed=48.0)
    match = match_sources(46, 50, machine)
    text = " ".join(match.experiments)

    assert len(match.fits) == 2
    assert said in text
    assert never not in text


def test_what_fits_nothing_says_so_and_what_is_missing() -> None:
    nothing = match_sources(300, 310, Machine(turning_speed=47.5))
    assert nothing.fits == ()
    assert "none of the sources" in nothing.said
    assert "how the wheel is driven" in nothing.experiments[0]
    assert "no source is known" in match_sources(10, 12, Machine()).said


def test_a_wider_range_never_fits_fewer_sources() -> None:
    for low, wide in product((12.0, 47.0, 95.0, 119.0), (1.0, 1.1, 1.57)):
        assert _fits(low, 1.01 * low, FULL, 0.2) <= _fits(low, 1.01 * low * wide, FULL, 0.2)


def test_a_range_that_is_upside_down_is_refused() -> None:
    with pytest.raises(OutOfRange):
        match_sources(50, 40, FULL)


def test_every_source_has_a_kind_and_a_range_round_its_middle() -> None:
    for source in sources_of_vibration(FULL, 0.2):
        assert source.kind in Kind
        assert 0 < source.lowest <= source.frequency <= source.highest


@pytest.mark.parametrize(
    ("followed", "said"),
    [(1.1, Fixed.IN_TIME), (0.7, Fixed.IN_TIME), (0.5, Fixed.UNDECIDED), (0.0, Fixed.IN_PLACE)],
)
def test_the_table_speed_trial_decides_only_when_clear(followed: float, said: Fixed) -> None:
    assert fixed_in(followed) is said


def test_two_speeds_too_close_decide_nothing() -> None:
    with pytest.raises(OutOfRange) as fault:
        table_speed_trial(3e-3, 0.2, 3.3e-3, 0.22)
    assert fault.value.argument == "speed_fast"
    with pytest.raises(OutOfRange):
        wheel_speed_trial(47, 47.5, 47, 50)


def test_forced_and_self_excited_by_what_was_seen() -> None:
    assert forced_or_self_excited(shakes_while_idling=True).verdict is Chatter.FORCED
    grown = forced_or_self_excited(shakes_while_idling=False, gone_after_dress_then_back=True)
    assert grown.verdict is Chatter.SELF_EXCITED
    assert len(grown.because) == 2


def test_signs_that_contradict_or_are_missing_leave_it_open() -> None:
    both = forced_or_self_excited(at_once_after_dress=True, follows_wheel_speed=0.0)
    assert both.verdict is Chatter.UNDECIDED
    assert len(both.because) == 2
    assert forced_or_self_excited().verdict is Chatter.UNDECIDED


@pytest.mark.parametrize("drive", [Drive.DIRECT, None])
def test_a_wheel_of_one_speed_is_never_told_to_change_it(drive: Drive | None) -> None:
    assert "slower" not in forced_or_self_excited(drive=drive).next_look
    assert "belt step" not in forced_or_self_excited(drive=drive).next_look


@pytest.mark.parametrize("drive", [Drive.BELT, Drive.INVERTER])
def test_the_wheel_is_only_ever_slowed_for_a_trial(drive: Drive) -> None:
    look = forced_or_self_excited(drive=drive).next_look
    assert "never a higher one" in look or "never faster" in look
