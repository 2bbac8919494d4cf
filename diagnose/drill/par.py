"""The same case in other hands: the tool's own policy, and the best there can be.

The tool plays with `reason_from` alone and learns an answer only by asking. The best possible
knows the hidden cause: the safety questions, then its cure. Between them lies the shortest way
that was found to prove it: checks, with what they do show here, until the tool itself would do
the right cure first.
"""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.book.model import Book, Check
from diagnose.case.entries import UNKNOWN, Entry
from diagnose.drill.clock import Clock, guards
from diagnose.drill.drawn import Drill
from diagnose.drill.game import put_right
from diagnose.drill.quick import read_quickly
from diagnose.drill.showing import answer_of
from diagnose.reasoning.belief import Impossible, within_width
from diagnose.reasoning.fixes import fix_table
from diagnose.reasoning.gates import RAISED, askable, safety_checks
from diagnose.reasoning.next_check import Candidate, Outcome, value_all
from diagnose.reasoning.reason import Read, reason_from
from diagnose.reasoning.trials import network_of

MOST_STEPS = 60
WIDE, DEEP = 2, 3  # how many ways are followed, and how far, in the search for a proof


@dataclass(frozen=True)
class Played:
    """How one way went: minutes to the cure, what was asked, what was tried, help called."""

    minutes: float
    asked: tuple[str, ...]
    tried: tuple[str, ...]
    helped: bool


@dataclass(frozen=True)
class Proof:
    """The checks that prove the cause here, and the minutes with the cure; None when not found."""

    minutes: float
    checks: tuple[str, ...]


def tool_plays(book: Book, drill: Drill) -> Played:
    """The tool's own policy on the hidden case."""
    clock, entries = Clock(book), list[Entry]()
    asked: list[str] = []
    tried: list[str] = []
    right = book.causes[drill.cause].fix.id
    for _ in range(MOST_STEPS):
        read = _cleared(book, drill, entries)
        try:
            step = reason_from(read).step
        except Impossible:
            break
        if step.kind in ("ask", "safety"):
            check = book.checks[step.name]
            clock.check(check)
            asked += [] if guards(book, check) else [check.id]
            entries.append(_answered(drill, check, read))
        elif step.kind == "fix":
            cause = next(c for c in sorted(book.causes) if book.causes[c].fix.id == step.name)
            clock.fix(book.causes[cause].fix)
            tried.append(cause)
            if step.name == right:
                return Played(clock.spent, tuple(asked), tuple(tried), False)
            entries.append(Entry("tried", cause, outcome="same"))
        else:
            break
    clock.call_for_help()
    return Played(clock.spent, tuple(asked), tuple(tried), True)


def best_possible(book: Book, drill: Drill) -> float:
    """Minutes of one who knows the cause: every safety question, then the cure."""
    clock, entries = Clock(book), list[Entry]()
    for _ in range(MOST_STEPS):
        read = _cleared(book, drill, entries)
        done = frozenset(e.name for e in entries)
        open_ = [c for c in safety_checks(book, read.hazards, read.gathered, done)
                 if c.id in drill.answers]  # fmt: skip
        if not open_:
            break
        clock.check(open_[0])
        entries.append(_answered(drill, open_[0], read))
    clock.fix(book.causes[drill.cause].fix)
    return clock.spent


def shortest_proof(book: Book, drill: Drill) -> Proof | None:
    """The cheapest checks found after which the tool would do the right cure first."""
    floor = best_possible(book, drill)
    found: Proof | None = None
    ways: list[tuple[Entry, ...]] = [()]
    for _ in range(DEEP + 1):
        after: list[tuple[float, float, tuple[Entry, ...]]] = []
        for way in ways:
            proved, more = _looked_at(book, drill, way)
            if proved is not None and (found is None or floor + proved[0] < found.minutes):
                found = Proof(floor + proved[0], proved[1])
            after += more
        after.sort(key=lambda a: (-a[0], a[1]))
        ways = [way for _, _, way in after[:WIDE]]
        if found is not None or not ways:
            break
    return found


def most_telling(book: Book, drill: Drill, entries: tuple[Entry, ...]) -> str:
    """The check not yet made that speaks most for the right cure a minute; "" when none does."""
    try:
        _, ways = _looked_at(book, drill, entries, stop_early=False)
    except Impossible:
        return ""
    best = max(ways, key=lambda w: (w[0], -w[1]), default=None)
    return best[2][len(entries)].name if best is not None and best[0] > 0.0 else ""


def _looked_at(
    book: Book, drill: Drill, way: tuple[Entry, ...], stop_early: bool = True
) -> tuple[
    tuple[float, tuple[str, ...]] | None, list[tuple[float, float, tuple[Entry, ...]]]
]:  # fmt: skip
    """The cheapest proof one check on, and every way on by how far it tells of the cause."""
    read = read_quickly(book, drill.case(way))
    network, _ = network_of(book, read.case.complaint, read.gathered, read.deduced)
    network = within_width(network)
    fixes = fix_table(book, network, {}, False)
    right = fixes.ids.index(book.causes[drill.cause].fix.id)
    done = tuple(e.name for e in way if e.name in book.checks)
    spent = sum(Clock(book).price(book.checks[n]) for n in done)
    checks = [c for c in askable(book, read.gathered, read.facts) if c.id in drill.answers]
    valued = value_all(book, network, checks, read.facts, fixes)
    if stop_early and fixes.order(valued.now)[:1] == [right]:
        return (spent, done), []
    proved: tuple[float, tuple[str, ...]] | None = None
    more = []
    for candidate in valued.candidates:
        outcome = _comes_out(book, drill, candidate)
        if outcome is None:
            continue
        check = book.checks[candidate.check]
        names = (check.id, *(n for n in check.together_with if n in drill.answers
                             and n not in drill.given and n not in done))  # fmt: skip
        minutes = spent + sum(Clock(book).price(book.checks[n]) for n in names)
        if fixes.order(outcome.shares)[:1] == [right]:
            proved = min(proved or (minutes, (*done, *names)), (minutes, (*done, *names)))
        gain = float(outcome.shares[right]) - float(valued.now[right])
        answered = tuple(_answered(drill, book.checks[n], read) for n in names)
        if answered:
            more.append((gain / (minutes - spent), minutes, (*way, *answered)))
    return proved, more


def _comes_out(book: Book, drill: Drill, candidate: Candidate) -> Outcome | None:
    """The outcome that a check has in this case."""
    check = book.checks[candidate.check]
    answer = drill.answers.get(check.id, UNKNOWN)
    says = {o.say for o in check.options if o.id == answer}
    reports = [c for cause in book.causes.values() for c in cause.be_sure if c.check == check.id]
    says.add("yes" if any(c.option == answer for c in reports) else "no")
    for finding in (*check.settles, *(f for o in check.options for f in o.means)):
        value = drill.signs.get(finding)
        if value is not None:
            says = {v.name for v in book.findings[finding].values if v.id == value}
            break
    return next((o for o in candidate.outcomes if o.label in says), None)


def _cleared(book: Book, drill: Drill, entries: list[Entry]) -> Read:
    """The case read; a hazard that was seen is put right at once, as the tool says."""
    read = read_quickly(book, drill.case(tuple(entries)))
    standing = [h for h in read.hazards if h.state == RAISED]
    if not standing:
        return read
    entries += put_right(book, drill, standing)
    return read_quickly(book, drill.case(tuple(entries)))


def _answered(drill: Drill, check: Check, read: Read) -> Entry:
    put_right = bool(read.gathered.read.cleared)
    return Entry("answer", check.id, answer_of(drill, check, read.gathered, put_right), "measured")
