"""Saying why: what a question separates, how a finding came about, what each answer did.

The shares of the answers are order-free: each answer's mean gain in the log-odds of `acts` over
all orders in which they could have been given (Shapley 1953), so they add up to the whole.
"""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache

from diagnose.book.conditions import FactValue
from diagnose.book.grid_checks import grid_numbers
from diagnose.book.model import Book
from diagnose.reasoning.assembly import Row
from diagnose.reasoning.explained import sum_out
from diagnose.reasoning.forward import Step
from diagnose.reasoning.ground import Vector, ground
from diagnose.reasoning.network import Node, bare_priors, prior_of
from diagnose.reasoning.reason import Reasoned

EXACT_UP_TO = 9
ORDERS = 200
SEED = 20260101


@dataclass(frozen=True)
class Item:
    """One thing known that moves the ranking. `name`: a sign, a circumstance or a report's check.

    `checks` are the checks it came from; `said` what was found, in words.
    """

    name: str
    kind: str  # sign | circumstance | report
    said: str
    checks: tuple[str, ...]


@dataclass(frozen=True)
class Share:
    """An item's part in the log-odds of one cause (natural log; above zero speaks for it)."""

    item: Item
    weight: float


@dataclass(frozen=True)
class Account:
    """For one cause: log-odds before any answer, each answer's share, log-odds after all."""

    cause: str
    before: float
    shares: tuple[Share, ...]
    after: float


def items(reasoned: Reasoned) -> tuple[Item, ...]:
    """Everything known besides the complaint, in a fixed order."""
    read, book = reasoned.read, reasoned.read.book
    found: list[Item] = []
    for sign, vector in reasoned.network.evidence.items():
        if sign not in reasoned.network.complaint:
            best = max(range(len(vector)), key=lambda k: vector[k])
            found.append(
                Item(
                    sign, "sign", book.findings[sign].values[best].name, sources_of(reasoned, sign)
                )
            )
    hangs = ground(book).circumstances
    for name in sorted(set(read.facts) & hangs):
        if name not in read.case.complaint and name not in reasoned.network.evidence:
            said = _said(book, name, read.facts[name])
            found.append(Item(name, "circumstance", said, sources_of(reasoned, name)))
    for cause in sorted(book.causes):
        for confirm in book.causes[cause].be_sure:
            told = read.gathered.told.get(confirm.check)
            if told is not None:
                said = _said(book, confirm.check, told.value)
                found.append(Item(confirm.check, "report", said, (confirm.check,)))
    return tuple(dict.fromkeys(found))


def account(reasoned: Reasoned, causes: Sequence[str]) -> tuple[Account, ...]:
    """The order-free account of some causes."""
    things = items(reasoned)
    sets = _subsets(len(things))
    index = {s: i for i, s in enumerate(sets)}
    odds = _log_odds(reasoned, things, sets, causes)
    out = []
    for column, cause in enumerate(causes):
        weights = _shapley(len(things), index, [row[column] for row in odds])
        shares = [Share(t, w) for t, w in zip(things, weights, strict=True)]
        shares.sort(key=lambda s: (-abs(s.weight), s.item.name))
        before = odds[index[frozenset()]][column]
        after = odds[index[frozenset(range(len(things)))]][column]
        out.append(Account(cause, before, tuple(shares), after))
    return tuple(out)


def how(reasoned: Reasoned, fact: str) -> tuple[Step, ...]:
    """The chain that concluded a finding, a stop ("stop:id") or a number, deepest first."""
    trace = reasoned.read.deduced.trace
    wanted, chain = {fact}, []
    for step in reversed(trace):
        if step.concluded in wanted:
            chain.append(step)
            wanted |= set(step.from_facts)
    return tuple(reversed(chain))


def sources_of(reasoned: Reasoned, fact: str) -> tuple[str, ...]:
    """The checks a fact stands on."""
    read = reasoned.read
    if fact in read.gathered.told:
        return (fact,)
    names = {n for s in how(reasoned, fact) for n in s.from_facts}
    grids = grid_numbers(read.book)
    names |= {grids[n][0] for n in names if n in grids}
    names |= {
        t.check
        for t in read.gathered.told.values()
        for o in read.book.checks[t.check].options
        if fact in o.means
        and (o.id == t.value or (isinstance(t.value, frozenset) and o.id in t.value))
    }
    names |= {
        t.check
        for t in read.gathered.told.values()
        if (report := read.book.checks[t.check].reports) is not None and report.finding == fact
    }
    return tuple(sorted(n for n in names if n in read.gathered.told))


def _said(book: Book, name: str, value: FactValue) -> str:
    if name in book.findings and isinstance(value, str):
        return next((v.name for v in book.findings[name].values if v.id == value), value)
    if name in book.checks and isinstance(value, str):
        option = book.checks[name].by_option.get(value)
        return option.say if option is not None else value
    return "" if not isinstance(value, str) else value


def _subsets(size: int) -> list[frozenset[int]]:
    if size <= EXACT_UP_TO:
        everything = range(size)
        return [
            frozenset(c) for k in range(size + 1) for c in itertools.combinations(everything, k)
        ]
    draw = random.Random(SEED)
    seen: dict[frozenset[int], None] = {frozenset(): None}
    for _ in range(ORDERS):
        order = draw.sample(range(size), size)
        for k in range(1, size + 1):
            seen[frozenset(order[:k])] = None
    return list(seen)


def _shapley(size: int, index: Mapping[frozenset[int], int], value: Sequence[float]) -> list[float]:
    weights = [0.0] * size
    if size <= EXACT_UP_TO:
        for subset, i in index.items():
            k = len(subset)
            for t in range(size):
                if t not in subset:
                    gain = value[index[subset | {t}]] - value[i]
                    weights[t] += gain / (size * math.comb(size - 1, k))
        return weights
    draw = random.Random(SEED)
    for _ in range(ORDERS):
        order = draw.sample(range(size), size)
        for k, t in enumerate(order):
            before = value[index[frozenset(order[:k])]]
            weights[t] += (value[index[frozenset(order[: k + 1])]] - before) / ORDERS
    return weights


def _log_odds(
    reasoned: Reasoned,
    things: Sequence[Item],
    sets: Sequence[frozenset[int]],
    causes: Sequence[str],
) -> list[list[float]]:
    network, book = reasoned.network, reasoned.read.book
    priors = bare_priors(book)
    bare = replace(network, nodes=tuple(_bare(n, priors) for n in network.nodes))
    fixed: dict[str, Vector] = {s: v for s, v in network.evidence.items() if s in network.complaint}
    prior = _priors(reasoned)
    rows = [_row(reasoned, things, subset, fixed, prior) for subset in sets]
    summed = sum_out(bare, rows, fired=True)
    assert summed.fired is not None
    place = {n.id: i for i, n in enumerate(network.nodes)}
    out = []
    for r in range(len(rows)):
        line = []
        for cause in causes:
            p = summed.fired[r, place[cause]] / max(summed.total[r], 1e-300)
            p = min(1 - 1e-12, max(1e-12, float(p)))
            line.append(math.log(p / (1 - p)))
        out.append(line)
    return out


def _bare(node: Node, priors: Mapping[str, float]) -> Node:
    """The cause before any answer: its prior without circumstances, no report on it."""
    return Node(node.id, priors[node.id], links=node.links)


def _priors(reasoned: Reasoned) -> Callable[[str, frozenset[str]], float]:
    """The prior of a cause with some facts of the case told; thousands of sets ask for few."""
    book, facts = reasoned.read.book, reasoned.read.facts

    @cache
    def prior(cause: str, told: frozenset[str]) -> float:
        return prior_of(book, book.causes[cause], {n: facts[n] for n in told})

    return prior


def _row(
    reasoned: Reasoned,
    things: Sequence[Item],
    subset: frozenset[int],
    fixed: Mapping[str, Vector],
    prior: Callable[[str, frozenset[str]], float],
) -> Row:
    network, book = reasoned.network, reasoned.read.book
    chosen = [things[i] for i in subset]
    evidence = {**fixed}
    evidence |= {t.name: network.evidence[t.name] for t in chosen if t.kind == "sign"}
    facts = frozenset(t.name for t in chosen if t.kind == "circumstance")
    hung, hangs = ground(book).hung, ground(book).hangs
    told = {c for f in facts for c in hung.get(f, ()) if c in network.place}
    priors = {c: prior(c, facts & hangs[c]) for c in sorted(told)}
    checks = {t.name for t in chosen if t.kind == "report"}
    reports = {
        n.id: (n.there, n.absent)
        for n in network.nodes
        if checks and any(c.check in checks for c in book.causes[n.id].be_sure)
    }
    return Row(dict(sorted(evidence.items())), priors, reports)
