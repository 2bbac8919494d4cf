"""The belief network of one case: causes with their odds here, signs with their links, evidence.

Pure assembly: gates, circumstances and trials are folded into priors and links, answers into one
likelihood vector a sign. `belief.py` computes; nothing here knows how.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from diagnose.book.conditions import FactValue, holds
from diagnose.book.model import Book, Cause, Finding
from diagnose.reasoning.facts import Gathered, wiped
from diagnose.reasoning.forward import Deduced
from diagnose.reasoning.ground import Ground, Vector, ground

UNLISTED = "unlisted"
SURE = 0.98  # a worked-out finding at least this sure counts as told


@dataclass(frozen=True)
class Node:
    """One cause here: prior after circumstances, weights of reports on the cause itself, links.

    `links` maps a sign to the chance of proposing each of its values, value 0 (nothing) first.
    """

    id: str
    prior: float
    there: float = 1.0  # likelihood of the reports when the cause is there
    absent: float = 1.0
    links: Mapping[str, Vector] = field(default_factory=dict)


@dataclass(frozen=True)
class Network:
    """Causes still possible, every sign's background, the complaint, the evidence.

    `background` gives each sign's chance of each value with no cause; `unlisted` the links of
    what the book does not list. `evidence` gives a likelihood for each value of a sign.
    """

    nodes: tuple[Node, ...]
    background: Mapping[str, Vector]
    unlisted_prior: float
    unlisted: Mapping[str, Vector]
    evidence: Mapping[str, Vector]
    complaint: tuple[str, ...]
    set_aside: tuple[str, ...] = ()

    def node(self, cause: str) -> Node | None:
        """The node of a cause, or None when it is ruled out here."""
        at = self.place.get(cause)
        return None if at is None else self.nodes[at]

    @cached_property
    def place(self) -> Mapping[str, int]:
        """Where each cause stands in `nodes`."""
        return {n.id: i for i, n in enumerate(self.nodes)}

    def linked(self, sign: str) -> Mapping[int, Vector]:
        """The causes that show a sign, by their place, with their links."""
        found = self._linked.get(sign)
        if found is None:
            found = {i: n.links[sign] for i, n in enumerate(self.nodes) if sign in n.links}
            self._linked[sign] = found
        return found

    @cached_property
    def _linked(self) -> dict[str, Mapping[int, Vector]]:
        return {}


@dataclass(frozen=True)
class RuledOut:
    """A cause that cannot be here, and why."""

    cause: str
    because: str


def all_facts(gathered: Gathered, deduced: Deduced) -> dict[str, FactValue]:
    """Every fact by name: told answers, worked-out numbers, findings at their surest value."""
    facts: dict[str, FactValue] = {}
    for finding, values in deduced.words.items():
        facts[finding] = max(values, key=lambda v: (values[v], v))
    facts |= deduced.numbers
    facts |= {name: told.value for name, told in gathered.told.items()}
    return facts | gathered.owned_now()


def meanings(book: Book, gathered: Gathered) -> dict[str, dict[str, float]]:
    """What the told answers mean by themselves: finding -> value -> how sure (1 or think-so)."""
    out: dict[str, dict[str, float]] = {}
    for name in sorted(gathered.told):
        told, check = gathered.told[name], book.checks[name]
        chosen = told.value if isinstance(told.value, frozenset) else {told.value}
        for option in check.options:
            if option.id in chosen and check.reports is None:
                for finding, value in option.means.items():
                    if wiped(check, gathered) and _nothing_seen(book, finding, value):
                        continue
                    degree = 1.0 if told.sure else book.words.think_so
                    out.setdefault(finding, {})[value] = degree
    return out


def _nothing_seen(book: Book, finding: str, value: str) -> bool:
    sign = book.findings.get(finding)
    return sign is not None and sign.kind == "sign" and sign.value_ids[0] == value


def surest(meant: Mapping[str, Mapping[str, float]]) -> dict[str, FactValue]:
    """Each finding at its surest value, ties by the name of the value."""
    return {name: max(values, key=lambda v: (values[v], v)) for name, values in meant.items()}


def build(
    book: Book, complaint: tuple[str, ...], gathered: Gathered, deduced: Deduced
) -> tuple[Network, tuple[RuledOut, ...]]:
    """The network of the case before anything was tried; `trials.network_of` folds that in."""
    facts = {**all_facts(gathered, deduced), **surest(meanings(book, gathered))}
    made = ground(book)
    nodes: list[Node] = []
    out: list[RuledOut] = []
    for cause in sorted(book.causes.values(), key=lambda c: c.id):
        why = impossible(cause, facts)
        if why is None:
            nodes.append(_node(made, cause, facts, gathered))
        else:
            out.append(RuledOut(cause.id, why))
    evidence = _evidence(book, complaint, gathered, deduced)
    named, evidence = _sharpen(book, complaint, evidence)
    network = Network(
        tuple(nodes), made.backgrounds, book.words.unlisted_prior, made.unlisted, evidence, named
    )
    return network, tuple(out)


def impossible(cause: Cause, facts: Mapping[str, FactValue]) -> str | None:
    """Why a cause cannot be here, or None; a gate on an unknown fact leaves it possible."""
    for gate in cause.possible_when:
        if holds(gate.when, facts) == 0.0:
            return gate.because
    return None


def prior_of(book: Book, cause: Cause, facts: Mapping[str, FactValue]) -> float:
    """The prior after circumstances: an odds factor each, the product kept within the limit.

    What the shop learned multiplies the odds after that; what a reading decides it leaves alone.
    """
    words = book.words
    if cause.set_by:
        rule = book.rules[cause.set_by]
        degree = holds(rule.when, facts)
        if degree is None and rule.then and rule.then[0].finding:
            degree = 1.0 if facts.get(rule.then[0].finding) == rule.then[0].is_ else None
        if degree is not None:
            return words.set_low + (words.set_high - words.set_low) * degree
    factor = 1.0
    for fact, shifts in cause.shifts.items():
        if fact not in facts:
            continue
        for shift in shifts:
            degree = holds(shift.when, facts)
            if degree:
                factor *= shift.factor**degree
    factor = min(words.odds_limit, max(1.0 / words.odds_limit, factor))
    odds = cause.learned * factor * cause.prior / (1.0 - cause.prior)
    return odds / (1.0 + odds)


def bare_priors(book: Book) -> Mapping[str, float]:
    """The prior of every cause before any answer."""
    kept = ground(book).__dict__
    if "bare_priors" not in kept:
        kept["bare_priors"] = {n: prior_of(book, c, {}) for n, c in book.causes.items()}
    found: Mapping[str, float] = kept["bare_priors"]
    return found


def soft(size: int, value: int, sure: float) -> Vector:
    """A likelihood that puts `sure` on one value and shares the rest among the others."""
    if sure >= SURE:
        return tuple(1.0 if k == value else 0.0 for k in range(size))
    rest = (1.0 - sure) / max(1, size - 1)
    return tuple(sure if k == value else rest for k in range(size))


def hard(vector: Vector) -> int | None:
    """The value an evidence vector is sure of, or None."""
    alive = [k for k, weight in enumerate(vector) if weight > 0.0]
    return alive[0] if len(alive) == 1 else None


def _node(made: Ground, cause: Cause, facts: Mapping[str, FactValue], gathered: Gathered) -> Node:
    book = made.book
    there = absent = 1.0
    for confirm in cause.be_sure:
        told = gathered.told.get(confirm.check)
        if told is None:
            continue
        yes = told.value == confirm.option
        a = confirm.right_when_there if yes else 1.0 - confirm.right_when_there
        b = 1.0 - confirm.right_when_not if yes else confirm.right_when_not
        if not told.sure:
            trust = book.words.think_so
            a, b = trust * a + (1 - trust) * (1 - a), trust * b + (1 - trust) * (1 - b)
        there, absent = there * a, absent * b
    return Node(cause.id, prior_of(book, cause, facts), there, absent, made.links[cause.id])


def _evidence(
    book: Book, complaint: tuple[str, ...], gathered: Gathered, deduced: Deduced
) -> dict[str, Vector]:
    evidence: dict[str, Vector] = {}
    degrees = meanings(book, gathered)
    for finding, values in deduced.words.items():
        if finding not in degrees:
            degrees[finding] = dict(values)
    for name in sorted(degrees):
        sign = book.findings.get(name)
        if sign is not None and sign.kind == "sign":
            evidence[name] = _vector(sign, degrees[name])
    for name in sorted(gathered.told):
        _report(book, gathered, name, evidence)
    for symptom in complaint:
        evidence[symptom] = (0.0, 1.0)
    return dict(sorted(evidence.items()))


def _vector(sign: Finding, degrees: Mapping[str, float]) -> Vector:
    ids = sign.value_ids
    if len(degrees) == 1:
        ((value, degree),) = degrees.items()
        return soft(len(ids), ids.index(value), degree)
    left = max(0.0, 1.0 - sum(degrees.values()))
    others = [v for v in ids if v not in degrees]
    spread = left / len(others) if others else 0.0
    return tuple(degrees.get(v, spread) for v in ids)


def _report(book: Book, gathered: Gathered, name: str, evidence: dict[str, Vector]) -> None:
    """A check that only reports a hidden sign multiplies its likelihood."""
    check, told = book.checks[name], gathered.told[name]
    if check.reports is None or hard(evidence.get(check.reports.finding, (1.0, 1.0))) is not None:
        return
    yes = told.value != check.options[0].id
    report = check.reports
    there = report.right_when_there if yes else 1.0 - report.right_when_there
    absent = 1.0 - report.right_when_not if yes else report.right_when_not
    if not told.sure:
        trust = book.words.think_so
        there = trust * there + (1 - trust) * (1 - there)
        absent = trust * absent + (1 - trust) * (1 - absent)
    old = evidence.get(report.finding, (1.0, 1.0))
    evidence[report.finding] = (old[0] * absent, old[1] * there)


def _sharpen(
    book: Book, complaint: tuple[str, ...], evidence: Mapping[str, Vector]
) -> tuple[tuple[str, ...], dict[str, Vector]]:
    """A sharper sign that is seen stands for every blunter one, in the complaint too.

    No blunter sign means no sharper one: that is nothing new. A sharper sign that is not seen
    takes nothing away from a blunter one that is.
    """
    kept = dict(evidence)
    for sign in sorted(evidence):
        blunter = _blunter(book, sign)
        if any(hard(evidence[b]) == 0 for b in blunter if b in evidence):
            kept.pop(sign, None)
            continue
        seen, likely = hard(evidence[sign]), _likeliest(evidence[sign]) > 0
        for other in blunter:
            stands = {other, *_blunter(book, other)} & set(complaint)
            if seen or (likely and not stands):
                kept.pop(other, None)
    named = dict.fromkeys(_sharpest(book, n, kept) for n in complaint)
    return tuple(n for n in named if n in kept), kept


def _blunter(book: Book, sign: str) -> list[str]:
    """The signs this one makes more exact, nearest first."""
    chain: list[str] = []
    now = book.findings[sign].sharpens
    while now and now not in chain:
        chain.append(now)
        now = book.findings[now].sharpens
    return chain


def _sharpest(book: Book, sign: str, kept: Mapping[str, Vector]) -> str:
    """The sign left standing for a complaint: itself, or the sharper one that was seen."""
    standing = [n for n in sorted(kept) if sign in _blunter(book, n) and hard(kept[n])]
    return sign if sign in kept or not standing else standing[0]


def _likeliest(vector: Vector) -> int:
    return max(range(len(vector)), key=lambda k: (vector[k], -k))
