"""What many lints ask of a book, worked out once: who shows, who settles, who asks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from diagnose.audit.acting import Acting, acting
from diagnose.audit.best_case import BestCase, best_case
from diagnose.audit.signatures import Signature, signatures
from diagnose.audit.walking import Found, strings
from diagnose.book.conditions import Condition
from diagnose.book.model import Book, Cause, Fix, Link
from diagnose.reasoning.belief import WIDEST

Path = tuple[str | int, ...]


@dataclass(frozen=True)
class Placed:
    """A condition and where it stands."""

    kind: str
    entry: str
    path: Path
    condition: Condition


class Study:
    """A book under study; everything is worked out when first asked for."""

    def __init__(self, book: Book, widest: int = WIDEST) -> None:
        self.book, self.widest = book, widest

    @cached_property
    def conditions(self) -> tuple[Placed, ...]:
        """Every condition that is written anywhere."""
        return tuple(p for p in _conditions(self.book) if p.condition.tests)

    @cached_property
    def shown_by(self) -> Mapping[str, tuple[tuple[Cause, int, Link], ...]]:
        """By finding: the causes that show it, with the number of the link."""
        found: dict[str, list[tuple[Cause, int, Link]]] = {}
        for cause in self.book.causes.values():
            for n, link in enumerate(cause.shows):
                found.setdefault(link.finding, []).append((cause, n, link))
        return {name: tuple(rows) for name, rows in found.items()}

    @cached_property
    def values_told(self) -> Mapping[str, frozenset[str]]:
        """By finding: the values that an answer, a report or a rule can give it."""
        found: dict[str, set[str]] = {s: {"yes", "no"} for s in self.book.symptoms}
        for check in self.book.checks.values():
            for option in check.options:
                for finding, value in option.means.items():
                    found.setdefault(finding, set()).add(value)
            if check.reports is not None:
                found.setdefault(check.reports.finding, set()).update(("no", "yes"))
        for rule in self.book.rules.values():
            for then in rule.then:
                if then.finding:
                    found.setdefault(then.finding, set()).add(then.is_)
        return {name: frozenset(values) for name, values in found.items()}

    @cached_property
    def looked_at(self) -> frozenset[str]:
        """Every fact that some condition, or some calculation of a rule, looks at."""
        names = {f for p in self.conditions for f in p.condition.facts}
        for rule in self.book.rules.values():
            if rule.work_out is not None:
                names.update(rule.work_out.inputs.values())
        for cause in self.book.causes.values():
            if cause.set_by:
                rule = self.book.rules[cause.set_by]
                names.update(t.finding for t in rule.then[:1])
        return frozenset(names)

    @cached_property
    def strings(self) -> tuple[Found, ...]:
        """Every text, label and reference of the book, with its place."""
        return strings(self.book)

    @cached_property
    def own_fixes(self) -> Mapping[str, Fix]:
        """By cause: its fix, where it is written there and not borrowed."""
        return {c.id: c.fix for c in self.book.causes.values() if c.fix.id == c.id}

    @cached_property
    def acting(self) -> Mapping[str, Acting]:
        """The causes acting in each complaint alone. Dear."""
        return acting(self.book)

    @cached_property
    def best_cases(self) -> Mapping[str, BestCase]:
        """By cause: how it fares where everything speaks for it. Dear."""
        found = ((c.id, best_case(self.book, c)) for c in self.book.causes.values())
        return {name: case for name, case in found if case is not None}

    @cached_property
    def signatures(self) -> Mapping[str, Signature]:
        """By cause: how every check would be answered with that cause there."""
        return signatures(self.book)


def _conditions(book: Book) -> Iterator[Placed]:
    for cause in book.causes.values():
        for n, gate in enumerate(cause.possible_when):
            yield Placed("cause", cause.id, ("possible_when", n, "when"), gate.when)
        for n, shift in enumerate(cause.more_likely_when):
            yield Placed("cause", cause.id, ("more_likely_when", n, "when"), shift.when)
    for check in book.checks.values():
        yield Placed("check", check.id, ("asked_when",), check.asked_when)
    for symptom in book.symptoms.values():
        for n, advice in enumerate(symptom.the_part):
            yield Placed("symptom", symptom.id, ("the_part", n, "when"), advice.when)
    for rule in book.rules.values():
        yield Placed("rule", rule.id, ("when",), rule.when)
        for n, then in enumerate(rule.then):
            yield Placed("rule", rule.id, ("then", n, "if"), then.condition)
    for step in book.before.values():
        yield Placed("step", step.id, ("when",), step.when)
    for stop in book.stops.values():
        yield Placed("stop", stop.id, ("applies_when",), stop.applies_when)
