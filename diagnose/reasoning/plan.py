"""The plan, in the order the person needs it: the part, first aid for tonight, the cure.

Fixes come in the order of least expected minutes (chance of curing a minute, best first). A step
that needs the wheel turning is withheld, by name only, until every hazard is cleared.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from diagnose.book.advice import Aid, PartAdvice
from diagnose.book.conditions import FactValue, holds
from diagnose.book.model import Book, Fix
from diagnose.reasoning.belief import Belief
from diagnose.reasoning.fixes import (
    EXACT_ORDER,
    LAST_RESORT,
    Cures,
    FixTable,
    best_order,
    cost_of_order,
    minutes_range,
)
from diagnose.reasoning.gates import TURNING
from diagnose.reasoning.next_check import Valued

MOST_STEPS = 5
AID_FROM = 0.1  # chance of acting from which a cause's first aid is offered
SMALL = 0.02  # a fix with less chance than this is not worth a line


@dataclass(frozen=True)
class FixStep:
    """One fix of the cure, with the causes it mends and what it may cure."""

    fix: Fix
    causes: tuple[str, ...]  # those it mends, most likely first
    cures_alone: float
    cautions: tuple[str, ...]
    withheld: bool


@dataclass(frozen=True)
class AidStep:
    """One first-aid step and where it comes from (a cause or a symptom)."""

    aid: Aid
    origin: str
    withheld: bool


@dataclass(frozen=True)
class Plan:
    """What to do, in order. `leave` is True when the advice is to leave the part as it is.

    `expected_minutes` counts the last resort for what no listed fix cures; one case in ten is
    cured by `quick_minutes`, nine in ten by `slow_minutes`.
    """

    part: tuple[PartAdvice, ...]
    first_aid: tuple[AidStep, ...]
    cure: tuple[FixStep, ...]
    expected_minutes: float
    quick_minutes: float
    slow_minutes: float
    leave: bool


def make_plan(
    book: Book,
    complaint: tuple[str, ...],
    belief: Belief,
    valued: Valued,
    fixes: FixTable,
    facts: Mapping[str, FactValue],
    safe: bool,
    first: str = "",
) -> Plan:
    """The plan for the belief as it stands; it begins with the fix `first`, when one is named."""
    part = tuple(
        advice
        for symptom in complaint
        if symptom in book.symptoms
        for advice in _of_one(book.symptoms[symptom].the_part, facts)
    )
    chosen, cures, faults = _order(valued, fixes, first)
    cure = _cure(book, belief, valued, fixes, chosen, safe)
    done = tuple(range(len(chosen)))
    quick, slow = minutes_range(done, cures, faults, LAST_RESORT)
    return Plan(
        _once(part),
        _first_aid(book, complaint, belief, safe),
        cure,
        cost_of_order(done, cures, faults, LAST_RESORT),
        quick,
        slow,
        bool(part) and part[0].action == "leave",
    )


def _order(
    valued: Valued, fixes: FixTable, first: str
) -> tuple[list[int], Cures, tuple[float, ...]]:
    """The fixes worth trying, what they cost and cure: `first`, then by least expected minutes."""
    likely = [i for i in fixes.order(valued.now) if valued.now[i] >= SMALL][:EXACT_ORDER]
    likely = likely or fixes.order(valued.now)[:1]
    named = [fixes.ids.index(first)] if first in fixes.ids else []
    likely += [i for i in named if i not in likely]
    faults = tuple(float(valued.now[i]) for i in likely)
    rest = max(0.0, 1.0 - sum(faults))

    def cures(of: list[int]) -> Cures:
        chance = [(*(float(fixes.cures[i]) if i == j else 0.0 for j in likely), 0.0) for i in of]
        return Cures(tuple(float(fixes.minutes[i]) for i in of), tuple(chance))

    order = [likely[a] for a in best_order(cures(likely), (*faults, rest), LAST_RESORT)]
    order = named + [i for i in order if i not in named] or likely[:1]
    return order, cures(order), (*faults, rest)


def _of_one(listed: tuple[PartAdvice, ...], facts: Mapping[str, FactValue]) -> Iterator[PartAdvice]:
    """What one complaint says of the part. Seen to be harmless, it is not put aside as well."""
    held = [a for a in listed if (holds(a.when, facts) or 0.0) >= 0.5]
    harmless = bool(held) and held[0].action == "leave" and bool(held[0].when.facts)
    return (a for a in held if not harmless or a.action in ("leave", "measure"))


def _once(part: tuple[PartAdvice, ...]) -> tuple[PartAdvice, ...]:
    seen: dict[str, PartAdvice] = {}
    for advice in part:
        seen.setdefault(advice.say, advice)
    return tuple(seen.values())


def _cure(
    book: Book, belief: Belief, valued: Valued, fixes: FixTable, order: list[int], safe: bool
) -> tuple[FixStep, ...]:
    by_fix: dict[str, list[str]] = {}
    for ranked in belief.ranked:
        fix = book.causes[ranked.cause].fix.id
        if ranked.acts >= 0.01 or not by_fix.get(fix):
            by_fix.setdefault(fix, []).append(ranked.cause)
    return tuple(
        _fix_step(book, tuple(by_fix[fixes.ids[i]]), float(valued.now[i]), safe)
        for i in order[:MOST_STEPS]
    )


def _fix_step(book: Book, causes: tuple[str, ...], chance: float, safe: bool) -> FixStep:
    fix = book.causes[causes[0]].fix
    cautions = [c for name in causes[:1] for c in book.causes[name].cautions]
    return FixStep(
        fix, causes, chance, tuple(dict.fromkeys(cautions)), TURNING in fix.needs and not safe
    )


def _first_aid(
    book: Book, complaint: tuple[str, ...], belief: Belief, safe: bool
) -> tuple[AidStep, ...]:
    origins = [
        (r.cause, book.causes[r.cause].first_aid) for r in belief.ranked if r.acts > AID_FROM
    ]
    origins += [(s, book.symptoms[s].first_aid) for s in complaint if s in book.symptoms]
    steps: dict[str, AidStep] = {}
    for origin, aids in origins:
        for aid in aids:
            withheld = TURNING in aid.needs and not safe
            steps.setdefault(aid.do, AidStep(aid, origin, withheld))
    return tuple(list(steps.values())[:3])
