"""One state of a simulated interview, worked out at the level of the network and kept.

Answers are folded in by the product's own `trials.network_of`; the rules that need only words run
without the rules engine. A reading answers with what it would settle. Simulated cases that
reach the same state share its figures, whatever the policy and the price of the checks.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from diagnose.book.conditions import FactValue
from diagnose.book.model import Book, Check
from diagnose.case.entries import Case, Entry, read_entries
from diagnose.reasoning.belief import Belief, believe, within_width
from diagnose.reasoning.facts import Gathered, Told
from diagnose.reasoning.fixes import FixTable, fix_table
from diagnose.reasoning.forward import Deduced, _conclude, _Run, select
from diagnose.reasoning.gates import askable
from diagnose.reasoning.network import Network, all_facts, meanings, surest
from diagnose.reasoning.next_check import Valued, value_all
from diagnose.reasoning.trials import network_of

Key = tuple[str, tuple[tuple[str, str], ...], tuple[tuple[str, str], ...]]


@dataclass(frozen=True)
class State:
    """What a policy sees."""

    facts: Mapping[str, FactValue]
    network: Network
    fixes: FixTable
    checks: tuple[Check, ...]


def answers_known(book: Book, check: Check) -> bool:
    """True when a simulated case can answer a check: an option, or a reading that settles."""
    if check.kind == "any":
        return False  # a list of dangers, or of what was tried: nothing is, in a simulated case
    return check.kind == "one" or any(f in book.findings for f in check.settles)


def gathered(
    book: Book, answers: Mapping[str, str], tried: tuple[tuple[str, str], ...] = ()
) -> Gathered:
    """The answers and trials as the product gathers them; readings are told by what they settle."""
    entries = tuple(Entry("tried", name, outcome=outcome) for name, outcome in tried)
    told = {
        n: Told(n, v, v, "said", True, i, 0)
        for i, (n, v) in enumerate(sorted(answers.items()), 1)
        if book.checks[n].kind == "one"
    }
    return Gathered(told, frozenset(), read_entries(Case("", (), entries)), ())


def settled(book: Book, answers: Mapping[str, str]) -> dict[str, str]:
    """What the answered readings settle: finding -> value."""
    found = {}
    for name, value in answers.items():
        check = book.checks[name]
        if check.kind != "one":
            found[next(f for f in check.settles if f in book.findings)] = value
    return found


def chain(book: Book, complaint: str, answers: Mapping[str, str]) -> dict[str, FactValue]:
    """Every fact in words: complaint, answers, what they mean, and what the rules add."""
    facts: dict[str, FactValue] = {complaint: "yes"}
    for name, value in answers.items():
        check = book.checks[name]
        if check.kind == "one":
            facts[name] = value
            facts.update(check.by_option[value].means if value in check.by_option else {})
    facts |= settled(book, answers)
    run = _Run(book, dict(facts))
    waiting = [r for r in select(book, facts) if r.work_out is None]
    while ready := [r for r in waiting if set(r.when.facts) <= set(facts)]:
        waiting = [r for r in waiting if r not in ready]
        for rule in ready:
            for name, new in _conclude(run, rule, {f: facts[f] for f in rule.when.facts}):
                facts.setdefault(name, new)
    return facts


class States:
    """The states of one book, each worked out once."""

    def __init__(self, book: Book) -> None:
        self.book = book
        self._states: dict[Key, State] = {}
        self._valued: dict[Key, Valued] = {}
        self._now: dict[Key, Valued] = {}
        self._beliefs: dict[Key, Belief] = {}

    def state(self, key: Key) -> State:
        if key not in self._states:
            self._states[key] = self._make(key)
        return self._states[key]

    def belief(self, key: Key) -> Belief:
        if key not in self._beliefs:
            self._beliefs[key] = believe(self.state(key).network)
        return self._beliefs[key]

    def valued(self, key: Key) -> Valued:
        if key not in self._valued:
            s = self.state(key)
            self._valued[key] = value_all(self.book, s.network, s.checks, s.facts, s.fixes,
                                         belief=self.belief(key))  # fmt: skip
        return self._valued[key]

    def now(self, key: Key) -> Valued:
        """Who would cure the complaint now, no question valued."""
        if key in self._valued:
            return self._valued[key]
        if key not in self._now:
            s = self.state(key)
            self._now[key] = value_all(self.book, s.network, (), s.facts, s.fixes)
        return self._now[key]

    def _make(self, key: Key) -> State:
        complaint, pairs, tried = key
        book, answers = self.book, dict(pairs)
        known = gathered(book, answers, tried)
        facts = chain(book, complaint, answers)
        words = {n: {str(v): 1.0} for n, v in facts.items() if n in book.findings}
        words.pop(complaint)
        deduced = Deduced(words, {}, {}, (), (), ())
        network = within_width(network_of(book, (complaint,), known, deduced)[0])
        done = {n: 1.0 - book.causes[n].fix.cures for n, _ in tried}
        seen = {**all_facts(known, deduced), **surest(meanings(book, known)), complaint: "yes"}
        # what hangs on the figure of a reading cannot be judged: here only what it settles is told
        told_as_figures = {n for n in answers if book.checks[n].kind != "one"}
        open_ = tuple(
            c
            for c in askable(book, known, seen)
            if c.id not in answers
            and answers_known(book, c)
            and not told_as_figures & set(c.asked_when.facts)
        )  # fmt: skip
        return State(seen, network, fix_table(book, network, done, False), open_)


def scaled(valued: Valued, times: float) -> Valued:
    """The same values at another price of the checks."""
    priced = tuple(replace(c, minutes=c.minutes * times) for c in valued.candidates)
    return replace(valued, candidates=priced)
