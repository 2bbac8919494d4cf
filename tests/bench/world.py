"""Cases drawn from the knowledge: hidden causes that made the complaint, and what checks would say.

The causes come from the priors of the book, what is not listed too, so that "how common" keeps
its meaning; draws in which nothing makes the complaint are rejected. A circumstance is then drawn
with the odds the causes at work give its answers (without a cause all alike). With `even=True`
it is the other way round: circumstances first, all answers alike, then causes from the priors
those give, which is what the tool assumes once all circumstances are told. Every sign is drawn
once (noisy-MAX), so that answers agree with each other; reports on a cause once, with their
reliabilities.
"""

from __future__ import annotations

import math
import random
from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.book.conditions import FactValue
from diagnose.book.model import Book, Check
from diagnose.reasoning.forward import Deduced
from diagnose.reasoning.ground import Vector
from diagnose.reasoning.network import UNLISTED, Network, build, impossible, prior_of
from tests.bench.states import answers_known, chain, gathered

NOTHING = "nothing listed"


@dataclass(frozen=True)
class World:
    """One hidden truth. `makers`: what made the complaint; `works`: fixes that would succeed."""

    complaint: str
    makers: frozenset[str]
    present: frozenset[str]
    answers: Mapping[str, str]
    works: Mapping[str, bool]


def plain_network(book: Book, complaint: str) -> Network:
    """The network with nothing told but the complaint, no cause ruled out."""
    return build(book, (complaint,), gathered(book, {}), Deduced({}, {}, {}, (), (), ()))[0]


class Drawer:
    """Draws cases of one book."""

    def __init__(self, book: Book, seed: int, even: bool = False) -> None:
        self.book, self.draw, self.even = book, random.Random(seed), even
        self.plain = {s: plain_network(book, s) for s in sorted(book.symptoms)}
        self.checks = [c for c in book.checks.values() if answers_known(book, c)]
        self.circumstances = [
            (c, values) for c in self.checks if (values := _circumstance_values(book, c))
        ]
        self.chained = {f for r in book.rules.values() if not r.work_out for f in r.when.facts}

    def case(self, complaint: str | None = None, listed: bool = False) -> World:
        """One case; `listed=True` wants one cause of the book at work and nothing else."""
        complaint = complaint or self.draw.choice(sorted(self.plain))
        while True:
            world = self._try(complaint)
            if world is None:
                continue
            if not listed or (len(world.makers) == 1 and not world.makers & {NOTHING, UNLISTED}):
                return world

    def _try(self, complaint: str) -> World | None:
        net = self.plain[complaint]
        told: dict[str, str] = {}
        if self.even:
            told = {c.id: self.draw.choice(values) for c, values in self.circumstances}
        present = self._present(net, chain(self.book, complaint, told))
        makers = {n for n in sorted(present) if self._fires(self._links(net, n), complaint)}
        if self._value(net.background[complaint]):
            makers.add(NOTHING)
        if not makers:
            return None
        told = told or self._told_by(complaint, present - {UNLISTED})
        answers = {**told, **self._answers(net, present)}
        works = {c.fix.id: self.draw.random() < c.fix.cures for c in self.book.causes.values()}
        return World(complaint, frozenset(makers), frozenset(present), answers, works)

    def _told_by(self, complaint: str, present: set[str]) -> dict[str, str]:
        """Circumstances as likely as they make the causes that are there more likely."""
        told: dict[str, str] = {}
        facts = chain(self.book, complaint, {})
        for check, values in self.circumstances:
            known = dict(facts)
            seen = []
            for value in values:
                extra = {check.id: value}
                if check.id in self.chained:
                    seen.append(chain(self.book, complaint, told | extra))
                else:
                    seen.append({**known, **_own(check, value)})
            before = {c: _odds(self.book, c, known) for c in sorted(present)}
            weights = [
                math.prod(
                    _odds(self.book, c, f) / before[c] if before[c] else 1.0
                    for c in sorted(present)
                )
                for f in seen
            ]
            pick = self.draw.choices(range(len(values)), weights)[0] if any(weights) else 0
            told[check.id], facts = values[pick], seen[pick]
        return told

    def _present(self, net: Network, facts: Mapping[str, FactValue]) -> set[str]:
        found = set()
        for node in net.nodes:
            if self.draw.random() < _chance(self.book, node.id, facts):
                found.add(node.id)
        if self.draw.random() < net.unlisted_prior:
            found.add(UNLISTED)
        return found

    @staticmethod
    def _links(net: Network, name: str) -> Mapping[str, Vector]:
        node = net.node(name)
        return net.unlisted if node is None else node.links

    def _fires(self, links: Mapping[str, Vector], sign: str) -> bool:
        return sign in links and self._value(links[sign]) > 0

    def _value(self, vector: Vector) -> int:
        return self.draw.choices(range(len(vector)), vector)[0]

    def _answers(self, net: Network, present: set[str]) -> dict[str, str]:
        found: dict[str, str] = {}
        shown: dict[str, str] = {}
        for check in self.checks:
            sign = sign_of(self.book, check)
            report = reports_on(self.book, check)
            if sign is not None:
                if sign not in shown:
                    shown[sign] = self._sign(net, sign, present)
                found[check.id] = self._said(check, sign, shown[sign])
            elif report is not None:
                cause, option, there, absent = report
                yes = self.draw.random() < (there if cause in present else 1.0 - absent)
                other = next(o.id for o in check.options if o.id != option)
                found[check.id] = option if yes else other
        return found

    def _said(self, check: Check, sign: str, value: str) -> str:
        options = [o.id for o in check.options if o.means.get(sign) == value]
        return self.draw.choice(options) if options else value

    def _sign(self, net: Network, sign: str, present: set[str]) -> str:
        vectors = [net.background[sign]]
        links = [self._links(net, n) for n in sorted(present)]
        vectors += [found[sign] for found in links if sign in found]
        return self.book.findings[sign].value_ids[max(self._value(v) for v in vectors)]


def _own(check: Check, value: str) -> dict[str, FactValue]:
    if check.kind != "one":
        return {check.settles[0]: value}
    return {check.id: value, **check.by_option[value].means}


def _odds(book: Book, cause: str, facts: Mapping[str, FactValue]) -> float:
    p = _chance(book, cause, facts)
    return p / (1.0 - p)


def _chance(book: Book, cause: str, facts: Mapping[str, FactValue]) -> float:
    found = book.causes[cause]
    return 0.0 if impossible(found, facts) is not None else prior_of(book, found, facts)


def sign_of(book: Book, check: Check) -> str | None:
    """The sign a check settles, or None."""
    named = [*check.settles, *(f for o in check.options for f in o.means)]
    signs = [f for f in named if f in book.findings and book.findings[f].kind == "sign"]
    return signs[0] if signs else None


def reports_on(book: Book, check: Check) -> tuple[str, str, float, float] | None:
    """(cause, answer that speaks for it, right when there, right when not) of a report on it."""
    for cause in book.causes.values():
        for c in cause.be_sure:
            if c.check == check.id:
                return cause.id, c.option, c.right_when_there, c.right_when_not
    return None


def _circumstance_values(book: Book, check: Check) -> list[str]:
    if sign_of(book, check) is not None or reports_on(book, check) is not None:
        return []
    if check.kind == "one":
        return [o.id for o in check.options]
    named = [f for f in check.settles if f in book.findings]
    return list(book.findings[named[0]].value_ids) if named else []
