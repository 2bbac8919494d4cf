"""What the reasoning needs of a book again and again, worked out once for each book."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from diagnose.book.model import Book, Cause, Check, Confirm, Finding, Rule
from diagnose.book.strengths import net_strengths

Vector = tuple[float, ...]
KEPT = 2  # books remembered: the shop's and one beside it


@dataclass(frozen=True)
class Ground:
    """Links, backgrounds and what hangs on what; each part made when first asked for."""

    book: Book

    @cached_property
    def links(self) -> Mapping[str, Mapping[str, Vector]]:
        """For each cause the net chances of proposing each value of each sign it shows."""
        return {n: cause_links(self.book, c) for n, c in self.book.causes.items()}

    @cached_property
    def backgrounds(self) -> Mapping[str, Vector]:
        """For each sign the chance of each value with no cause."""
        signs = [f for f in self.book.findings.values() if f.kind == "sign"]
        return {f.id: _background(f) for f in signs}

    @cached_property
    def unlisted(self) -> Mapping[str, Vector]:
        """For each sign the links of what the book does not list."""
        return {s: _unlisted(self.book, b) for s, b in self.backgrounds.items()}

    @cached_property
    def hangs(self) -> Mapping[str, frozenset[str]]:
        """For each cause every fact on which its prior hangs."""
        return {n: prior_facts(self.book, c) for n, c in self.book.causes.items()}

    @cached_property
    def hung(self) -> Mapping[str, tuple[str, ...]]:
        """For each fact the causes whose priors hang on it."""
        found: dict[str, list[str]] = {}
        for cause in sorted(self.hangs):
            for fact in self.hangs[cause]:
                found.setdefault(fact, []).append(cause)
        return {f: tuple(causes) for f, causes in found.items()}

    @cached_property
    def circumstances(self) -> frozenset[str]:
        """Every fact on which the odds or the possibility of some cause hang."""
        causes = self.book.causes.values()
        conditions = [s.when for c in causes for s in c.more_likely_when]
        conditions += [g.when for c in causes for g in c.possible_when]
        conditions += [self.book.rules[c.set_by].when for c in causes if c.set_by]
        return frozenset(f for when in conditions for f in when.facts)

    @cached_property
    def set_findings(self) -> frozenset[str]:
        """Findings concluded by the rules that set a cause."""
        rules = {c.set_by for c in self.book.causes.values() if c.set_by}
        return frozenset(t.finding for r in rules for t in self.book.rules[r].then if t.finding)

    @cached_property
    def confirms(self) -> Mapping[str, tuple[str, Confirm]]:
        """For each check that reports a cause itself: the first such cause, and how."""
        found: dict[str, tuple[str, Confirm]] = {}
        for cause in self.book.causes.values():
            for confirm in cause.be_sure:
                found.setdefault(confirm.check, (cause.id, confirm))
        return found

    @cached_property
    def needed(self) -> Mapping[str, frozenset[str]]:
        """For each rule the facts it cannot fire without."""
        return {n: frozenset(needed(r)) for n, r in self.book.rules.items()}

    @cached_property
    def rules_of(self) -> Mapping[str, tuple[str, ...]]:
        """For each fact the rules that need it."""
        found: dict[str, list[str]] = {}
        for rule, facts in self.needed.items():
            for fact in facts:
                found.setdefault(fact, []).append(rule)
        return {f: tuple(rules) for f, rules in found.items()}

    @cached_property
    def gives(self) -> Mapping[str, frozenset[str]]:
        """For each rule the facts it may add."""
        return {n: frozenset(offered(r)) for n, r in self.book.rules.items()}

    @cached_property
    def deduced(self) -> dict[Any, Any]:
        """What the rules gave lately; `forward.deduce` keeps it."""
        return {}

    @cached_property
    def free_rules(self) -> tuple[str, ...]:
        """The rules that need no fact."""
        return tuple(n for n, facts in self.needed.items() if not facts)

    @cached_property
    def touched(self) -> Mapping[str, tuple[str, ...]]:
        """For each check the causes whose odds its answer can move."""
        hung = self.hung
        return {
            n: tuple(sorted({c for f in _touches(k) for c in hung.get(f, ())}))
            for n, k in self.book.checks.items()
        }

    @cached_property
    def shown(self) -> Mapping[str, Mapping[str, tuple[Vector, float]]]:
        """For each sign and cause: chance of each value with that cause alone, and its bits.

        The key "" stands for no cause at all.
        """
        found: dict[str, dict[str, tuple[Vector, float]]] = {}
        for sign, plain in self.backgrounds.items():
            found[sign] = {"": (plain, entropy(plain))}
        for cause, links in self.links.items():
            for sign, link in links.items():
                values = _most_striking(self.backgrounds[sign], link)
                found[sign][cause] = (values, entropy(values))
        return found


_known: list[Ground] = []


def ground(book: Book) -> Ground:
    """The ground of a book; the last few are kept."""
    for made in _known:
        if made.book is book:
            return made
    made = Ground(book)
    _known.insert(0, made)
    del _known[KEPT:]
    return made


def variant(base: Ground, book: Book) -> Ground:
    """The ground of a book that differs from that of `base` in some of its causes alone."""
    made, old = Ground(book), base.book.causes
    made.__dict__["backgrounds"] = base.backgrounds
    made.__dict__["unlisted"] = base.unlisted
    made.__dict__["links"] = {
        n: base.links[n] if c is old[n] else cause_links(book, c) for n, c in book.causes.items()
    }
    _known.insert(1, made)
    del _known[KEPT:]
    return made


def cause_links(book: Book, cause: Cause) -> dict[str, Vector]:
    """Net chances of proposing each value of each sign the cause shows."""
    totals: dict[str, dict[str, float]] = {}
    for link in cause.shows:
        totals.setdefault(link.finding, {})[link.value] = link.how_often
    links: dict[str, Vector] = {}
    for sign, by_value in totals.items():
        values = book.findings[sign].values[1:]
        net = net_strengths(
            tuple(v.without_cause or 0.0 for v in values),
            tuple(by_value.get(v.id) for v in values),
        )
        links[sign] = (1.0 - sum(net), *net)
    return links


def prior_facts(book: Book, cause: Cause) -> frozenset[str]:
    """Every fact on which the prior of a cause hangs."""
    names = {f for shift in cause.more_likely_when for f in shift.when.facts}
    if cause.set_by:
        rule = book.rules[cause.set_by]
        names |= {*rule.when.facts, *(t.finding for t in rule.then[:1])}
    return frozenset(names)


def needed(rule: Rule) -> tuple[str, ...]:
    """Names of the facts a rule cannot fire without, in order."""
    names = list(rule.when.facts)
    if rule.work_out is not None:
        names += [f for f in rule.work_out.inputs.values() if is_fact(f)]
    return tuple(dict.fromkeys(names))


def offered(rule: Rule) -> tuple[str, ...]:
    """Names of the facts a rule may add."""
    names = [c.finding for c in rule.then if c.finding]
    if rule.work_out is not None:
        names.append(rule.work_out.gives)
    return tuple(names)


def entropy(shares: Iterable[float]) -> float:
    """Bits of doubt in some shares that sum to one."""
    return -sum(p * math.log2(p) for p in shares if p > 0.0)


def is_fact(text: str) -> bool:
    """True when an input of a sum names a fact, not a plain number."""
    return not text[:1].isdigit() and text[:1] not in "-.+"


def _touches(check: Check) -> set[str]:
    return {check.id, *check.settles, *(f for o in check.options for f in o.means)}


def _most_striking(state: Vector, step: Vector) -> Vector:
    """The chance that the most striking of two proposals is each value."""
    found, was = [], 0.0
    for k in range(len(state)):
        now = sum(state[: k + 1]) * sum(step[: k + 1])
        found.append(max(0.0, now - was))
        was = now
    return tuple(found)


def _background(finding: Finding) -> Vector:
    rest = [v.without_cause or 0.0 for v in finding.values[1:]]
    return (1.0 - sum(rest), *rest)


def _unlisted(book: Book, background: Vector) -> Vector:
    share = book.words.unlisted_strength / (len(background) - 1)
    return (1.0 - book.words.unlisted_strength, *([share] * (len(background) - 1)))
