"""The view of what was said, measured and worked out, and of what was not asked."""

from __future__ import annotations

from collections.abc import Iterable

from diagnose.book.conditions import FactValue, Number
from diagnose.book.grid_checks import grid_numbers
from diagnose.book.model import Book
from diagnose.case.entries import UNASKED, UNKNOWN, Standing
from diagnose.physics.units import show
from diagnose.reasoning.explain import how, sources_of
from diagnose.reasoning.reason import Read, Reasoned
from diagnose.view.parts import check_view, name_of, outcomes_of, source_view
from diagnose.view.result import (
    CheckView,
    EntryView,
    FindingView,
    ReadingView,
    SourceView,
)


def findings(reasoned: Reasoned) -> tuple[FindingView, ...]:
    read, book = reasoned.read, reasoned.read.book
    out = []
    for name in sorted(set(read.facts) & set(book.findings)):
        value = read.facts[name]
        if not isinstance(value, str) or name in read.case.complaint:
            continue
        steps = how(reasoned, name)
        degree = read.deduced.words.get(name, {}).get(value, 1.0)
        words = next((v.name for v in book.findings[name].values if v.id == value), value)
        rules = tuple(book.rules[s.rule].because for s in steps)
        out.append(
            FindingView(
                name, book.findings[name].name, words, sources_of(reasoned, name), rules, degree
            )
        )
    return tuple(out)


def readings(read: Read, units: str) -> tuple[ReadingView, ...]:
    """Every number known, measured or worked out, with its unit."""
    book, grids = read.book, grid_numbers(read.book)
    out = []
    for name in sorted(read.facts):
        value: FactValue = read.facts[name]
        if not isinstance(value, Number):
            continue
        dimension = book.dimensions.get(name, "number")
        label = book.checks[name].name if name in book.checks else sum_name(read, name)
        low, mid, high = (show(x, dimension, units) for x in (value.low, value.value, value.high))
        out.append(
            ReadingView(
                name,
                label,
                mid,
                low,
                high,
                name in book.checks or name in grids,
                value.value,
                value.low,
                value.high,
                dimension,
            )
        )
    return tuple(out)


def sum_name(read: Read, name: str) -> str:
    """The name of the sum that gave a number here: of several the one whose metal it is."""
    book = read.book
    ran = [step.rule for step in read.deduced.trace if step.concluded == name]
    for rule in (*(book.rules[r] for r in ran if r in book.rules), *book.rules.values()):
        if rule.work_out is not None and rule.work_out.gives == name:
            return rule.name
    return name_of(book, name)


def entries(read: Read) -> tuple[EntryView, ...]:
    """Every answer in force, by the number of its entry."""
    book, out = read.book, []
    for told in sorted(read.gathered.told.values(), key=lambda t: (t.entry, t.check)):
        check = book.checks[told.check]
        chosen = told.value if isinstance(told.value, frozenset) else {told.value}
        says = [o.say for o in check.options if o.id in chosen]
        answer = "; ".join(says) or told.text
        out.append(
            EntryView(told.entry, check.id, check.ask, answer, told.how, told.sure, told.round)
        )
    for standing in _not_known(read):
        check = book.checks[standing.check]
        out.append(
            EntryView(
                standing.entry, check.id, check.ask, UNKNOWN, standing.how, True, standing.round
            )
        )
    return tuple(sorted(out, key=lambda e: (e.number, e.check)))


def unknown_answers(read: Read) -> tuple[str, ...]:
    """The checks that were asked and not known."""
    return tuple(sorted(s.check for s in _not_known(read)))


def _not_known(read: Read) -> list[Standing]:
    """The questions answered with "don't know"; what a list left out was not asked."""
    unknown = read.gathered.unknown
    return [
        s
        for s in read.gathered.read.answers
        if s.value == UNKNOWN and s.check in unknown and s.how != UNASKED
    ]


def not_asked(reasoned: Reasoned) -> tuple[CheckView, ...]:
    book = reasoned.read.book
    ranked = sorted(reasoned.valued.candidates, key=lambda c: (-c.gain, c.check))[:6]
    return tuple(
        check_view(book.checks[c.check], "could still tell something", outcomes_of(reasoned, c))
        for c in ranked
    )


def sources(book: Book, names: Iterable[str]) -> tuple[SourceView, ...]:
    used: dict[str, SourceView] = {}
    for name in names:
        cause = book.causes[name]
        for source in (*cause.sources, *(link.source for link in cause.shows)):
            if source:
                view = source_view(book, source)
                used[view.id] = view
    return tuple(used[k] for k in sorted(used))
