"""Every calculation of the catalogue: finite, never below zero, or refused with one clear error."""

from __future__ import annotations

import math
import re
import subprocess
import sys

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.physics.arguments import ARGUMENTS
from diagnose.physics.catalogue import Calculation, calculation, calculations, worked_answers
from diagnose.physics.dimensions import DIMENSIONS
from diagnose.physics.errors import OutOfRange
from diagnose.physics.evaluate import InputError, evaluate

ALL = calculations()
OURS = [c for c in ALL if all(i.name in ARGUMENTS for i in c.inputs)]
STANDINGS = {"confirmed", "from memory", "common practice", "derived"}
ANY = st.floats(min_value=5e-324, allow_nan=False, allow_infinity=False)
SAID_BY_ALL = "must lie between"


def _work_out(what: Calculation, values: dict[str, float]) -> float | OutOfRange:
    try:
        return what.function(**values)
    except OutOfRange as error:
        return error


@pytest.mark.parametrize("what", ALL, ids=lambda c: c.id)
@settings(max_examples=40)
@given(data=st.data())
def test_any_positive_number_is_worked_out_or_refused(
    what: Calculation, data: st.DataObject
) -> None:
    result = _work_out(what, {i.name: data.draw(ANY, i.name) for i in what.inputs})
    if isinstance(result, OutOfRange):
        assert result.argument
        assert result.lowest <= result.highest
    else:
        assert math.isfinite(result)
        assert result >= 0


@pytest.mark.parametrize("what", OURS, ids=lambda c: c.id)
@settings(max_examples=40)
@given(data=st.data())
def test_sensible_numbers_give_a_finite_answer_with_a_meaning(
    what: Calculation, data: st.DataObject
) -> None:
    values = {}
    for each in what.inputs:
        rule = ARGUMENTS[each.name]
        low = math.log(max(rule.lowest, 1e-9))
        values[each.name] = min(
            max(math.exp(data.draw(st.floats(low, math.log(rule.highest)))), rule.lowest),
            rule.highest,
        )
    result = _work_out(what, values)
    if not isinstance(result, OutOfRange):
        assert math.isfinite(result)
        assert result >= 0
        assert what.meaning(values, result)


@pytest.mark.parametrize("what", OURS, ids=lambda c: c.id)
@pytest.mark.parametrize("bad", [math.nan, math.inf, -math.inf, -1e30, 1e300])
def test_a_number_out_of_range_is_refused_by_name(what: Calculation, bad: float) -> None:
    middles = {
        i.name: math.sqrt(max(ARGUMENTS[i.name].lowest, 1e-9) * ARGUMENTS[i.name].highest)
        for i in what.inputs
    }
    for each in what.inputs:
        with pytest.raises(OutOfRange) as caught:
            what.function(**(middles | {each.name: bad}))
        assert caught.value.argument == each.name
        assert SAID_BY_ALL in str(caught.value)
        assert each.name.replace("_", " ") in str(caught.value)


@pytest.mark.parametrize("what", ALL, ids=lambda c: c.id)
def test_a_calculation_says_where_it_comes_from(what: Calculation) -> None:
    assert what.gives in DIMENSIONS
    assert what.standing in STANDINGS
    assert what.formula
    assert what.source
    assert what.limits
    assert re.search("[Ss]ource|[Dd]erived|from memory", what.function.__doc__ or "")
    for each in what.inputs:
        assert each.dimension in DIMENSIONS


def test_there_are_more_than_twenty_five() -> None:
    assert len(ALL) + len(worked_answers()) >= 25


def test_the_defaults_can_be_read() -> None:
    from diagnose.physics.quantities import read_quantity

    defaults = [(i.default, i.dimension) for c in ALL for i in c.inputs if i.default is not None]
    assert defaults
    assert all(math.isfinite(read_quantity(text, kind).value) for text, kind in defaults)


def test_a_misspelt_id_is_answered_with_a_near_one() -> None:
    with pytest.raises(KeyError, match="wheel-speed"):
        calculation("weel-speed")


def test_give_or_take_is_carried_to_the_ends() -> None:
    result = evaluate(
        calculation("wheel-speed"),
        {"wheel_diameter": "200 +- 10 mm", "turning_speed": "2850..3000 rpm"},
    )
    assert result.lowest == pytest.approx(math.pi * 0.19 * 47.5)
    assert result.highest == pytest.approx(math.pi * 0.21 * 50)
    assert result.lowest < result.value < result.highest


def test_a_wrong_key_and_a_missing_one_are_named() -> None:
    with pytest.raises(InputError, match="did you mean depth"):
        evaluate(calculation("contact-length"), {"deph": "1 mm"})
    with pytest.raises(InputError, match="still needs:\n  wheel_diameter"):
        evaluate(calculation("contact-length"), {"depth": "0.01 mm"})


@pytest.mark.parametrize("word", ["is safe", "held well", "looks held", "nothing to fear"])
def test_no_sum_about_holding_reassures(word: str) -> None:
    from diagnose.physics.holding import ALWAYS, CALCULATIONS

    for what in CALCULATIONS:
        values = {i.name: ARGUMENTS[i.name].lowest or 1e-6 for i in what.inputs}
        for result in (0.0, 1e-3, 0.5, 2.0):
            assert word not in what.meaning(values, result)
    ratios = [c for c in CALCULATIONS if c.gives == "ratio"]
    assert ratios
    assert all(ALWAYS in c.meaning({}, 0.01) for c in ratios)


@pytest.mark.parametrize("name", ["slide-ratio", "tip-ratio", "over-marked-speed"])
def test_a_sum_raises_a_stop_and_never_clears_one(name: str) -> None:
    what = calculation(name)
    assert what.meaning({}, 1.2).startswith("STOP")
    assert "clear" not in what.meaning({}, 0.1) or "clears nothing" in what.meaning({}, 0.1)


def test_the_catalogue_loads_nothing_heavy() -> None:
    code = (
        "import sys; from diagnose.physics.catalogue import calculations; calculations();"
        "print([m for m in ('numpy', 'pint', 'scipy', 'click', 'yaml') if m in sys.modules])"
    )
    said = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert said.stdout.strip() == "[]"
