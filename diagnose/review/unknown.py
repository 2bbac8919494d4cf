"""What is not known: what to ask, and how far the answer could move the heaviest risk on it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from diagnose.book.conditions import Condition, FactValue, Number, Test, holds
from diagnose.book.model import Book, Cause, Check
from diagnose.reasoning.gates import TURNING
from diagnose.reasoning.ground import prior_facts
from diagnose.reasoning.network import impossible, prior_of
from diagnose.reasoning.reason import Read
from diagnose.review.choices import PART
from diagnose.review.metals import MATERIAL
from diagnose.review.risks import MINOR, Weighed, harmful_of

MOST = 8
# a set-up is reviewed before the cut: what only a cut can show is not asked
BEFORE = ("history", "machine", "wheel", "part", "bench")
# of a part and at the bench only this is there to be known: no face is ground, nothing measured
OF_THE_PART = (PART - {"metal-beside-the-opening"}) | {"rock-on-the-plate"}
OF_HARDENING, HARD = ("how-hardened", "temper-record"), "hardened-steel"
AT_THE_BENCH = frozenset({"diamond-tip", "diamond-wiggle"})
# these tell of a fault that was seen, or of passes that were made
AFTER = frozenset(
    {"clean-until-altered", "good-cold-or-warm", "how-bars-come-and-go", "how-edges-broken",
     "how-it-moved", "how-long-a-dress-helps", "how-size-taken", "how-the-sparks-look",
     "measured-already", "pattern-after-remounting", "rust-when", "stream-steady",
     "table-in-the-cut", "what-it-goes-with", "what-the-last-dress-did", "what-you-hear",
     "when-it-shows", "which-face-measured", "which-way-size-went", "grit-in-the-tray",
     "quicker-table-speed", "slower-wheel-speed", "feel-the-chuck", "loosen-under-the-indicator"}
)  # fmt: skip
DEEPEST = 5


@dataclass(frozen=True)
class Unknown:
    """One check not answered: the cause it moves most, and that cause's chance at either end."""

    check: str
    cause: str
    complaint: str
    least: float
    most: float
    weight: float  # what the worst answer would add, as the weight of a risk


def unknowns(book: Book, read: Read, weighed: Weighed) -> tuple[Unknown, ...]:
    """The open checks whose answers matter most to this set-up, the heaviest first."""
    best: dict[str, Unknown] = {}
    roads = _roads(book, read)
    for node in weighed.network.nodes:
        cause = book.causes[node.id]
        harmful = harmful_of(book, node, read.facts)
        if harmful is None:
            continue
        harm, complaint = harmful
        for fact in prior_facts(book, cause) - read.facts.keys():
            priors = [_prior(book, cause, read.facts, fact, v) for v in _values(book, cause, fact)]
            weight = (max(priors, default=0.0) - node.prior) * harm
            for check in roads.get(fact, ()):
                if weight > best[check].weight if check in best else weight >= MINOR:
                    least, most = min(*priors, node.prior), max(*priors, node.prior)
                    best[check] = Unknown(check, cause.id, complaint, least, most, weight)
    found = sorted(best.values(), key=lambda u: (-u.weight, u.check))
    return tuple(found[:MOST])


def _prior(
    book: Book, cause: Cause, facts: Mapping[str, FactValue], fact: str, value: FactValue
) -> float:
    there = {**facts, fact: value}
    return 0.0 if impossible(cause, there) else prior_of(book, cause, there)


def _values(book: Book, cause: Cause, fact: str) -> Iterator[FactValue]:
    """Every value of the fact that a condition of the cause tells apart."""
    check, finding = book.checks.get(fact), book.findings.get(fact)
    if check is not None and check.options:
        yield from (o.id for o in check.options)
    elif finding is not None:
        yield from finding.value_ids
    else:
        for test in _tests(book, cause):
            if test.fact == fact:
                yield from _numbers(test)


def _tests(book: Book, cause: Cause) -> Iterator[Test]:
    conditions: list[Condition] = [s.when for s in cause.more_likely_when]
    conditions += [g.when for g in cause.possible_when]
    if cause.set_by:
        conditions.append(book.rules[cause.set_by].when)
    for condition in conditions:
        yield from condition.tests


def _numbers(test: Test) -> Iterator[Number]:
    """A number on either side of each limit, and one within."""
    for limit in {test.low, test.high} - {0.0, float("inf")}:
        for factor in (0.5, 0.99, 1.01, 2.0):
            yield Number(limit * factor, limit * factor, limit * factor)


def _roads(book: Book, read: Read) -> dict[str, tuple[str, ...]]:
    """For each fact not known, the open checks whose answers would settle it."""
    roads: dict[str, tuple[str, ...]] = {}
    names = {f for c in book.causes.values() for f in prior_facts(book, c)}
    for fact in names - read.facts.keys():
        found = dict.fromkeys(_checks(book, read, fact, 0))
        roads[fact] = tuple(c for c in found if _askable(book.checks[c], read))
    return roads


def can_be_known(check: Check) -> bool:
    """True when there is an answer before the cut."""
    if check.place == "part":
        return check.id in OF_THE_PART
    if check.place == "bench":
        return check.id in AT_THE_BENCH
    return check.place in BEFORE and check.id not in AFTER


def _askable(check: Check, read: Read) -> bool:
    return (
        check.id not in read.gathered.told
        and can_be_known(check)
        and not check.trial
        and TURNING not in check.needs
        and holds(check.asked_when, read.facts) != 0.0
        and not (check.id in OF_HARDENING and read.facts.get(MATERIAL, HARD) != HARD)
    )


def _checks(book: Book, read: Read, fact: str, depth: int) -> Iterator[str]:
    if fact in book.checks:
        yield fact
        return
    for check in book.checks.values():
        if fact in check.settles or any(fact in o.means for o in check.options):
            yield check.id
    if depth >= DEEPEST:
        return
    for rule in book.rules.values():
        if rule.work_out is not None and rule.work_out.gives == fact:
            inputs = [f for f in rule.work_out.inputs.values() if f not in read.facts]
            for name in (*inputs, *(f for f in rule.when.facts if f not in read.facts)):
                yield from _checks(book, read, name, depth + 1)
        elif any(t.finding == fact for t in rule.then):
            inner = [f for t in rule.then if t.finding == fact for f in t.condition.facts]
            for name in (*rule.when.facts, *inner):
                if name not in read.facts:
                    yield from _checks(book, read, name, depth + 1)
