"""Worked answers: any number is answered with finite lines or refused with one plain message."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.physics.catalogue import Answer, Input, WordInput, Worked, worked_answers
from diagnose.physics.dimensions import DIMENSIONS
from diagnose.physics.quantities import Quantity
from diagnose.physics.sources_of_vibration import Machine, sources_of_vibration

OF_NUMBERS = [w for w in worked_answers() if all(i.name != "file" for i in w.inputs)]
ANY = st.floats(min_value=5e-324, allow_nan=False, allow_infinity=False)


def drawn(wanted: Input | WordInput, data: st.DataObject) -> Any:
    if isinstance(wanted, WordInput):
        words = wanted.choices or (wanted.example or wanted.default or "",)
        return data.draw(st.sampled_from(words), wanted.name)
    value = data.draw(ANY | st.floats(1e-3, 1e3), wanted.name)
    return Quantity(value, 0.01 * value, wanted.dimension, "drawn") if wanted.whole else value


def answered(worked: Worked, data: st.DataObject) -> Answer | ValueError:
    """The answer for drawn inputs; a number that may be left out sometimes is."""
    handed = {}
    for each in worked.inputs:
        spare = isinstance(each, Input) and each.default == ""
        if not spare or data.draw(st.booleans(), f"give {each.name}"):
            handed[each.name] = drawn(each, data)
    try:
        return worked.function(**handed)
    except ValueError as error:
        return error


@pytest.mark.parametrize("worked", OF_NUMBERS, ids=lambda w: w.id)
@settings(max_examples=60)
@given(data=st.data())
def test_any_number_is_answered_or_refused(worked: Worked, data: st.DataObject) -> None:
    found = answered(worked, data)
    if isinstance(found, ValueError):
        assert str(found)
        return
    assert found.meaning
    for line in found.lines:
        for number in (line.value, line.highest, line.plus_minus):
            if number is not None:
                assert math.isfinite(number)
                assert number >= 0 or DIMENSIONS[line.dimension].signed
        assert line.text or line.value is not None


def test_a_turning_speed_hardly_known_gives_no_source_below_nothing() -> None:
    sources = sources_of_vibration(Machine(pump_speed=1.0, speed_share=2.0))
    assert [(s.lowest, s.highest) for s in sources] == [(0.0, 3.0)]


@pytest.mark.parametrize("worked", worked_answers(), ids=lambda w: w.id)
def test_a_worked_answer_says_where_it_comes_from(worked: Worked) -> None:
    assert worked.standing in {"confirmed", "from memory", "common practice", "derived"}
    assert worked.formula
    assert worked.source
    assert worked.limits
    assert worked.function.__doc__
    for each in worked.inputs:
        if isinstance(each, Input):
            assert each.dimension in DIMENSIONS
        elif not each.choices and each.default is None:
            assert each.example
