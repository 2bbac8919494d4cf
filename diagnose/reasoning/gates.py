"""What is not safe, not possible or not relevant: set arithmetic after the rules have run.

A hazard has three states. "Don't know" is not cleared; a calculation may raise a stop and never
clears one; "I think so" clears nothing.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from diagnose.book.conditions import FactValue, holds
from diagnose.book.model import Book, Check, Option, Stop
from diagnose.reasoning.facts import Gathered, stale
from diagnose.reasoning.forward import Deduced

CLEARED, NOT_CLEARED, RAISED = "cleared", "not cleared", "stop"
TURNING = "wheel-turning"
NONE = "none"  # the answer of a list when nothing on it is true


@dataclass(frozen=True)
class Hazard:
    """One stop of the book as it stands in this case, with what raised or cleared it."""

    stop: Stop
    state: str
    why: tuple[str, ...]  # names of the facts or rules that raised it, or "cleared: how"


def hazards(
    book: Book, gathered: Gathered, deduced: Deduced, facts: Mapping[str, FactValue]
) -> tuple[Hazard, ...]:
    """The state of every hazard, by id."""
    basis = _basis(gathered, deduced)
    return tuple(
        _hazard(book, book.stops[s], gathered, deduced, facts, basis) for s in sorted(book.stops)
    )


def may_turn(found: tuple[Hazard, ...]) -> bool:
    """True when every stop of the machine is cleared: only then may the wheel turn."""
    return all(h.state == CLEARED for h in found if h.stop.kind == "stop")


def raised(found: tuple[Hazard, ...]) -> tuple[Hazard, ...]:
    """The stops and holds that stand, stops first."""
    standing = [h for h in found if h.state == RAISED]
    return tuple(sorted(standing, key=lambda h: (h.stop.kind != "stop", h.stop.id)))


def safety_checks(
    book: Book, found: tuple[Hazard, ...], gathered: Gathered, later: frozenset[str] = frozenset()
) -> tuple[Check, ...]:
    """The checks that could still clear what is not cleared, the gate question first."""
    names = {h.stop.asked_by for h in found if h.state == NOT_CLEARED}
    checks = [book.checks[n] for n in names if n in book.checks]
    open_ = [c for c in checks if _open(c, gathered) and c.id not in later]
    return tuple(sorted(open_, key=lambda c: (not c.gate, c.minutes, c.id)))


def askable(
    book: Book,
    gathered: Gathered,
    facts: Mapping[str, FactValue],
    tools: tuple[str, ...] | None = None,
) -> tuple[Check, ...]:
    """Checks that could be made now, whatever they are worth and whether or not the wheel turns.

    Out: answered and not spoiled, "don't know", put off, gated off, wanting a tool that is not
    at hand when nothing else will do, or of no use without a reading that is not known. What was
    looked for once is not looked for again: a trial does not undo what was seen. A gate on a fact
    nobody asked about yet leaves the check in; on one that nobody knows it does not.
    """
    out = []
    for name in sorted(book.checks):
        check = book.checks[name]
        if not _open(check, gathered) or name in gathered.read.later:
            continue
        if holds(check.asked_when, facts) == 0.0 or _never_to_be_known(check, gathered, facts):
            continue
        if missing_tools(check, tools) and not check.no_instrument:
            continue
        if name in gathered.told and _looks_for_a_sign(book, check):
            continue
        if gathered.unknown & set(check.together_with):
            continue  # the reading could not be completed
        out.append(check)
    return tuple(out)


def begun(book: Book, gathered: Gathered) -> str | None:
    """The reading still wanted by the one the last answers began, or None.

    Bars were counted: the table speed is asked next, while the person is there. None as soon as
    something else was answered in between or one of the readings is not known.
    """
    names: set[str] = set()
    began: Check | None = None
    for entry in reversed(gathered.read.answers):
        check = book.checks.get(entry.check)
        if check is None or entry.entry <= 0:
            break
        if check.together_with and names <= set(check.together_with):
            began = check  # the earliest: what completes its reading begins none of its own
        names.add(entry.check)
    if began is None:
        return None
    wanted = [n for n in began.together_with if n not in gathered.told]
    off = gathered.unknown | set(gathered.read.later)
    if off & {*wanted, began.id} or not wanted:
        return None
    return wanted[0] if wanted[0] in book.checks else None


def turns(check: Check) -> bool:
    """True when the wheel must turn for this check."""
    return TURNING in check.needs


def missing_tools(check: Check, tools: tuple[str, ...] | None) -> tuple[str, ...]:
    """What the check wants and is not at hand; nothing when nobody said what is."""
    return () if tools is None else tuple(t for t in check.tools if t not in tools)


def _never_to_be_known(check: Check, gathered: Gathered, facts: Mapping[str, FactValue]) -> bool:
    """True when the check hangs on a question that was answered "don't know" or put off."""
    off = gathered.unknown | set(gathered.read.later)
    return any(name in off and name not in facts for name in check.asked_when.facts)


def _open(check: Check, gathered: Gathered) -> bool:
    if check.id in gathered.told:
        return stale(check, gathered)
    return check.id not in gathered.unknown


def _looks_for_a_sign(book: Book, check: Check) -> bool:
    named = {*check.settles, *(f for o in check.options for f in o.means)}
    return any(book.findings[f].kind == "sign" for f in named if f in book.findings)


def _basis(gathered: Gathered, deduced: Deduced) -> dict[str, int]:
    """For each fact, the last entry it stands on."""
    entry = {name: told.entry for name, told in gathered.told.items()}
    for step in deduced.trace:  # sorted by depth: what it stands on is already there
        last = max((entry.get(f, 0) for f in step.from_facts), default=0)
        entry[step.concluded] = max(last, entry.get(step.concluded, 0))
    return entry


def _hazard(
    book: Book,
    stop: Stop,
    gathered: Gathered,
    deduced: Deduced,
    facts: Mapping[str, FactValue],
    basis: Mapping[str, int],
) -> Hazard:
    up: list[tuple[int, str]] = []
    down: list[tuple[int, str]] = []
    computed = stop.id in deduced.stops  # a quick "all is well" does not outweigh a sum
    for name in sorted(gathered.told):
        told, check = gathered.told[name], book.checks[name]
        chosen = told.value if isinstance(told.value, frozenset) else {told.value}
        for option in check.options:
            if option.id in chosen and stop.id in option.raises:
                up.append((told.entry, name))
            said = option.id in chosen or _left_out(check, option, chosen)
            if said and stop.id in option.clears and told.sure and not computed:
                down.append((told.entry, name))
    if computed:
        label = f"stop:{stop.id}"
        rules = [s.rule for s in deduced.trace if s.concluded == label]
        up += [(basis.get(label, 0), rule) for rule in rules]
    down += [(n, f"cleared: {how}") for n, name, how in gathered.read.cleared if name == stop.id]
    return _settle(stop, up, down, gathered, facts)


def _left_out(check: Check, option: Option, chosen: Collection[FactValue]) -> bool:
    """True for "none of these" where dangers were named: the ones not named were not true."""
    return check.kind == "any" and option.id == NONE and bool(chosen) and NONE not in chosen


def _settle(
    stop: Stop,
    up: list[tuple[int, str]],
    down: list[tuple[int, str]],
    gathered: Gathered,
    facts: Mapping[str, FactValue],
) -> Hazard:
    last_up = max((n for n, _ in up), default=-1)
    last_down = max((n for n, _ in down), default=-1)
    if up and last_up >= last_down:
        return Hazard(stop, RAISED, tuple(sorted({name for _, name in up})))
    lapsed = any(n > last_down and tags & set(stop.renewed_by) for n, tags in gathered.changes)
    if down and not lapsed:
        return Hazard(stop, CLEARED, tuple(name for n, name in down if n == last_down))
    if holds(stop.applies_when, facts) == 0.0:
        return Hazard(stop, CLEARED, ("does not apply here",))
    return Hazard(stop, NOT_CLEARED, ())
