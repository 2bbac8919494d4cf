"""The hazard of every fourth drill: something a person must see before the wheel turns."""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.book.conditions import FactValue, holds
from diagnose.book.model import Book, Check, Stop

EVERY = 4
NOT_PLANTED = frozenset(("tall-not-blocked", "metal-unknown"))  # the story would give them away


@dataclass(frozen=True)
class Planted:
    """A hazard of the case: the stop, the check that shows it, the answer it then gets."""

    stop: str
    check: str
    option: str


def has_hazard(seed: int) -> bool:
    """True for one drill of each four that follow each other, which one nobody can foresee."""
    block = seed // EVERY
    return random.Random(f"hazard {block}").randrange(EVERY) == seed % EVERY


def plant(
    draw: random.Random,
    book: Book,
    facts: Mapping[str, FactValue],
    told: frozenset[str],
    gate_only: bool,
) -> Planted | None:
    """One hazard that can be here; only those of the gate question for a beginner.

    `told` are checks whose answer stands in the story. None when the book has no such hazard.
    """
    able = [
        Planted(stop.id, check.id, option.id)
        for stop in sorted(book.stops.values(), key=lambda s: s.id)
        for check in [book.checks.get(stop.asked_by)]
        if check is not None and check.id not in told and _can_be(stop, check, facts)
        for option in check.options
        if stop.id in option.raises and option.id not in NOT_PLANTED
        if check.gate or not gate_only
    ]
    return draw.choice(able) if able else None


def _can_be(stop: Stop, check: Check, facts: Mapping[str, FactValue]) -> bool:
    return holds(stop.applies_when, facts) != 0.0 and holds(check.asked_when, facts) != 0.0


def all_is_well(check: Check) -> str:
    """The answer of a check about hazards when nothing is wrong; "" when it has none."""
    calm = [o for o in check.options if not o.raises]
    best = [o for o in calm if o.clears] or calm
    return best[0].id if best else ""
