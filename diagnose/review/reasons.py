"""Why this set-up makes a cause likelier: the circumstances that hold, with their numbers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from diagnose.book.conditions import FactValue, Number, holds
from diagnose.book.model import Book, Cause
from diagnose.physics.units import show
from diagnose.reasoning.network import Network
from diagnose.reasoning.reason import Read
from diagnose.view.said import sum_name

DEEPEST = 4  # how far back a finding is followed to the numbers it stands on


@dataclass(frozen=True)
class Reason:
    """One thing that speaks for the cause: in words, why, what shows it, the source's id.

    `facts` are the checks that were answered for it.
    """

    because: str
    shown: tuple[str, ...]
    source: str
    facts: tuple[str, ...]


def reasons(
    book: Book, read: Read, network: Network, cause: Cause, units: str
) -> tuple[Reason, ...]:
    """Every circumstance and sign that speaks for the cause here, the strongest first."""
    found = [*_set_by(book, read, cause, units), *_shifts(read, cause, units)]
    found += _signs(book, read, network, cause, units)
    found += _reports(book, read, cause)
    return tuple(found)


def _set_by(book: Book, read: Read, cause: Cause, units: str) -> Iterator[Reason]:
    if not cause.set_by:
        return
    rule = book.rules[cause.set_by]
    degree = holds(rule.when, read.facts)
    if degree:
        shown, checks = _shown(read, rule.when.facts, units)
        yield Reason(rule.because, shown, rule.source, checks)


def _shifts(read: Read, cause: Cause, units: str) -> Iterator[Reason]:
    strongest = sorted(cause.more_likely_when, key=lambda s: -s.factor)
    for shift in strongest:
        if shift.factor > 1.0 and holds(shift.when, read.facts):
            shown, checks = _shown(read, shift.when.facts, units)
            yield Reason(shift.because, shown, shift.source, checks)


def _signs(book: Book, read: Read, network: Network, cause: Cause, units: str) -> Iterator[Reason]:
    for link in cause.shows:
        vector = network.evidence.get(link.finding)
        if vector is None:
            continue
        values = book.findings[link.finding].values
        best = max(range(len(vector)), key=lambda k: vector[k])
        without = values[best].without_cause or 0.0
        if best > 0 and values[best].id == link.value and link.how_often > without:
            shown, checks = _shown(read, (link.finding,), units)
            yield Reason(link.because, shown, link.source, checks)


def _reports(book: Book, read: Read, cause: Cause) -> Iterator[Reason]:
    for confirm in cause.be_sure:
        told = read.gathered.told.get(confirm.check)
        if told is not None and told.value == confirm.option:
            said = answer_words(book, confirm.check, told.value)
            name = book.checks[confirm.check].name
            yield Reason("it was looked at", (f"{name}: {said}",), "", (confirm.check,))


def _shown(
    read: Read, facts: tuple[str, ...], units: str
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The facts in words, those they were worked out from after them; the checks among them."""
    names = list(stands_on(read, facts))
    worded = [words_of(read, n, read.facts[n], units) for n in names if n in read.facts]
    checks = tuple(n for n in names if n in read.gathered.told)
    return tuple(w for w in worded if w), checks


def raising_facts(book: Book, read: Read, cause: Cause) -> tuple[str, ...]:
    """The facts of the circumstances that hold and make the cause likelier."""
    rule = book.rules[cause.set_by] if cause.set_by else None
    facts = rule.when.facts if rule is not None and holds(rule.when, read.facts) else ()
    shifts = [s.when for s in cause.more_likely_when if s.factor > 1.0]
    more = (f for when in shifts if holds(when, read.facts) for f in when.facts)
    return tuple(dict.fromkeys((*facts, *more)))


def stands_on(read: Read, facts: tuple[str, ...]) -> tuple[str, ...]:
    """The facts, and after them all that they were worked out from."""
    return tuple(dict.fromkeys(_back(read, facts, 0)))


def _back(read: Read, facts: tuple[str, ...], depth: int) -> Iterator[str]:
    yield from facts
    if depth < DEEPEST:
        for name in facts:
            for step in read.deduced.trace:
                if step.concluded == name:
                    yield from _back(read, tuple(step.from_facts), depth + 1)


def words_of(read: Read, name: str, value: FactValue, units: str) -> str:
    """A fact in words: its name and its value with the unit."""
    book = read.book
    if isinstance(value, Number):
        label = book.checks[name].name if name in book.checks else sum_name(read, name)
        return f"{label}: {show(value.value, book.dimensions.get(name, 'number'), units)}"
    if name in book.checks:
        return f"{book.checks[name].name}: {answer_words(book, name, value)}"
    if name in book.findings:
        finding = book.findings[name]
        if finding.value_ids == ("no", "yes"):
            return finding.name if value == "yes" else ""
        return f"{finding.name}: {next((v.name for v in finding.values if v.id == value), value)}"
    return ""


def answer_words(book: Book, check: str, value: FactValue) -> str:
    """The answer of a check in words."""
    chosen = value if isinstance(value, frozenset) else {value}
    said = [o.say for o in book.checks[check].options if o.id in chosen]
    return "; ".join(said) or str(value)
