"""What a person sees who makes a check of a drilled case."""

from __future__ import annotations

from diagnose.book.model import Check
from diagnose.case.entries import UNKNOWN
from diagnose.drill.drawn import Drill
from diagnose.drill.hazards import all_is_well
from diagnose.reasoning.facts import Gathered
from diagnose.reasoning.gates import TURNING

WIPED_BY = frozenset(("wheel-dressed", "wheel-changed"))
NOT_MEASURED = "too little to measure, or nobody can tell"
GONE = "the wheel was dressed or changed since: what it would have shown is gone"


def gone(check: Check, gathered: Gathered) -> bool:
    """True when dressing or another wheel has wiped away what the check looks for."""
    return any(tags & WIPED_BY & set(check.spoiled_by) for _, tags in gathered.changes)


def answer_of(drill: Drill, check: Check, gathered: Gathered, put_right: bool = False) -> str:
    """The answer as an entry of the case; `put_right`: the planted hazard is there no more."""
    if put_right and drill.hazard is not None and drill.hazard.check == check.id:
        return all_is_well(check)
    guarding = any(o.raises or o.clears for o in check.options)
    if gone(check, gathered) and not guarding and check.id not in drill.given:
        return UNKNOWN
    return drill.answers.get(check.id, UNKNOWN)


def in_words(check: Check, answer: str, units: str = "metric") -> str:
    """An answer as a person says it; a number in the units wanted."""
    if answer == UNKNOWN:
        return NOT_MEASURED
    if check.kind == "number":
        return _number(check, answer, units)
    said = [
        check.by_option[o.strip()].say for o in answer.split(",") if o.strip() in check.by_option
    ]
    return "; ".join(said) or answer


def _number(check: Check, answer: str, units: str) -> str:
    if units == "metric" or check.dimension == "count":
        return answer
    from diagnose.physics.quantities import read_quantity
    from diagnose.physics.shown import shown

    quantity = read_quantity(answer, check.dimension)
    text = shown(quantity.value, check.dimension, units)
    if quantity.uncertainty:
        text += f" +- {shown(quantity.uncertainty, check.dimension, units)}"
    return text


def wheel_words(check: Check) -> str:
    """Whether the wheel turns or must stand."""
    if TURNING in check.needs:
        return "wheel turning"
    return "wheel stopped" if "wheel-stopped" in check.needs else ""
