"""How far from the best possible: sub-problems small enough for exact dynamic programming.

A sub-problem has one complaint, up to seven of its causes with their fixes, up to seven checks on
their signs or the causes themselves. Every state (what each check said, which fixes failed) is
worked out; the best policy and the tool's own are then compared in expected minutes. What more
than one cause made, or none of them, costs the last resort. A fix is tried at most once.
"""

from __future__ import annotations

import itertools
import random
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from diagnose.book.model import Book
from diagnose.reasoning.ahead import ATTENTION
from diagnose.reasoning.fixes import LAST_RESORT, FixTable
from diagnose.reasoning.network import Network
from diagnose.reasoning.next_check import (
    WORTH,
    Candidate,
    Outcome,
    Valued,
    bits,
    expected_bits,
)
from diagnose.reasoning.policy import decide
from tests.bench.world import plain_network, reports_on, sign_of

Floats = NDArray[np.float64]
SEED, MOST = 20260303, 7


@dataclass(frozen=True)
class Problem:
    """Tables of one sub-problem: classes are its fixes, then several, then none."""

    complaint: str
    fixes: tuple[str, ...]
    minutes: Floats
    cures: Floats
    checks: tuple[str, ...]
    prices: Floats
    joint: Floats  # (answers of check 1 + 1, ..., classes); the last index of each is "not asked"


def draw_problem(book: Book, draw: random.Random) -> Problem:
    """One sub-problem, 3 to 7 causes and 3 to 7 checks."""
    complaint = draw.choice(sorted(book.symptoms))
    net = plain_network(book, complaint)
    able = [n.id for n in net.nodes if complaint in n.links]
    causes = sorted(draw.sample(able, min(len(able), draw.randint(3, MOST))))
    asked = [c.id for c in book.checks.values() if _bears(book, net, c.id, causes)]
    checks = sorted(draw.sample(asked, min(len(asked), draw.randint(3, MOST))))
    fixes = [book.causes[c].fix for c in causes]
    return Problem(
        complaint,
        tuple(f.id for f in fixes),
        np.array([max(1.0, f.minutes_first_time) for f in fixes]),
        np.array([f.cures for f in fixes]),
        tuple(checks),
        np.array([book.checks[c].minutes for c in checks]),
        _joint(book, net, complaint, causes, checks),
    )


def _bears(book: Book, net: Network, check: str, causes: Sequence[str]) -> bool:
    report = reports_on(book, book.checks[check])
    sign = sign_of(book, book.checks[check])
    if report is not None:
        return report[0] in causes
    return any(sign in n.links for n in net.nodes if n.id in causes)


def _joint(
    book: Book, net: Network, complaint: str, causes: Sequence[str], checks: Sequence[str]
) -> Floats:
    nodes = {n.id: n for n in net.nodes}
    sets = list(itertools.product((0, 1), repeat=len(causes)))
    classes = np.zeros((len(sets), len(causes) + 2))
    likely: list[list[Floats]] = [[] for _ in checks]
    quiet = net.background[complaint][0]
    for s, here in enumerate(sets):
        there = [c for c, on in zip(causes, here, strict=True) if on]
        prior = float(np.prod([nodes[c].prior if on else 1 - nodes[c].prior
                               for c, on in zip(causes, here, strict=True)]))  # fmt: skip
        silent = {c: nodes[c].links[complaint][0] for c in there}
        none = float(np.prod([*silent.values(), 1.0]))
        for i, c in enumerate(causes):
            if c in silent and silent[c] > 0:
                classes[s, i] = prior * quiet * none / silent[c] * (1 - silent[c])
        classes[s, -1] = prior * (1 - quiet) * none
        classes[s, -2] = max(0.0, prior * (1 - quiet * none) - classes[s].sum())
        for j, check in enumerate(checks):
            likely[j].append(_answers(book, net, check, there))
    return _combine(classes, [np.array(table) for table in likely])


def _answers(book: Book, net: Network, check: str, there: Sequence[str]) -> Floats:
    """P(each answer | these causes), then 1 for "not asked"."""
    report = reports_on(book, book.checks[check])
    if report is not None:
        yes = report[2] if report[0] in there else 1.0 - report[3]
        return np.array([1.0 - yes, yes, 1.0])
    sign = sign_of(book, book.checks[check])
    assert sign is not None
    upto = np.cumsum(net.background[sign])
    for node in net.nodes:
        if node.id in there and sign in node.links:
            upto = upto * np.cumsum(node.links[sign])
    return np.append(np.diff(upto, prepend=0.0), 1.0)


def _combine(classes: Floats, likely: Sequence[Floats]) -> Floats:
    state = np.ones((1, classes.shape[0]))
    shape = []
    for table in likely:  # (sets, answers + 1)
        state = (state[:, None, :] * table.T[None, :, :]).reshape(-1, classes.shape[0])
        shape.append(table.shape[1])
    joint: Floats = (state @ classes).reshape(*shape, classes.shape[1])
    shares: Floats = joint / classes.sum()
    return shares


def best_minutes(p: Problem) -> float:
    """Expected minutes of the best policy, exactly: every state, the likeliest order of work."""
    count, m = len(p.fixes), len(p.checks)
    values: dict[int, Floats] = {}
    for failed in sorted(range(2**count), key=lambda f: -f.bit_count()):
        worth = np.ones(count + 2)
        done = [i for i in range(count) if failed >> i & 1]
        worth[done] = 1.0 - p.cures[done]
        left = (p.joint * worth).sum(axis=-1)
        value = left * LAST_RESORT
        for i in range(count):
            if i not in done:
                value = np.minimum(value, left * p.minutes[i] + values[failed | 1 << i])
        for asked in sorted(range(2**m), key=lambda a: -a.bit_count()):
            here = tuple(slice(0, -1) if asked >> j & 1 else -1 for j in range(m))
            for j in range(m):
                if not asked >> j & 1:
                    more = tuple(slice(0, -1) if k == j else h for k, h in enumerate(here))
                    axis = sum(1 for k in range(j) if asked >> k & 1)
                    cost = left[here] * (p.prices[j] + ATTENTION) + value[more].sum(axis=axis)
                    value[here] = np.minimum(value[here], cost)
        values[failed] = value
    return float(values[0][(-1,) * m])


class Walk:
    """The tool's own policy on a sub-problem, every answer followed."""

    def __init__(self, book: Book, problem: Problem) -> None:
        self.book, self.p = book, problem
        self.known: dict[tuple[tuple[int, ...], int], float] = {}

    def minutes(self, at: tuple[int, ...], failed: int = 0) -> float:
        """Expected minutes from a state on, times the chance of the state."""
        if (at, failed) not in self.known:
            self.known[at, failed] = self._minutes(at, failed)
        return self.known[at, failed]

    def _minutes(self, at: tuple[int, ...], failed: int) -> float:
        p = self.p
        left = float(self._weights(at, failed).sum())
        if left < 1e-12:
            return 0.0
        valued, table = self._valued(at, failed)
        asked = sum(a != -1 for a in at)
        step = decide(
            self.book, valued, table, safe=True, safety=(), opening=(), asked=asked, known=asked,
            tried=failed > 0,
            first_questions=self.book.symptoms[p.complaint].first_questions,
        )  # fmt: skip
        if step.kind == "ask":
            j = p.checks.index(step.name)
            after = sum(self.minutes(_set(at, j, a), failed) for a in range(p.joint.shape[j] - 1))
            return left * (float(p.prices[j]) + ATTENTION) + after
        if step.kind == "fix":
            i = p.fixes.index(step.name)
            return left * float(p.minutes[i]) + self.minutes(at, failed | 1 << i)
        return left * LAST_RESORT

    def _weights(self, at: tuple[int, ...], failed: int) -> Floats:
        count = len(self.p.fixes)
        worth = np.ones(count + 2)
        done = [i for i in range(count) if failed >> i & 1]
        worth[done] = 1.0 - self.p.cures[done]
        found: Floats = self.p.joint[at] * worth
        return found

    def _valued(self, at: tuple[int, ...], failed: int) -> tuple[Valued, FixTable]:
        p, now = self.p, self._weights(at, failed)
        count = len(p.fixes)
        cures = np.array([0.0 if failed >> i & 1 else p.cures[i] for i in range(count)])
        table = FixTable(p.fixes, p.minutes, cures, np.arange(count))
        shares = now / now.sum()
        entropy = bits(shares)
        found = []
        for j, check in enumerate(p.checks):
            if at[j] == -1:
                candidate = self._candidate(at, failed, j, check, entropy, table)
                found += [candidate] if candidate.gain > WORTH else []
        return Valued(tuple(found), shares, entropy, table.expected_minutes(shares)), table

    def _candidate(
        self, at: tuple[int, ...], failed: int, j: int, check: str, entropy: float, table: FixTable
    ) -> Candidate:
        whole = self._weights(at, failed).sum()
        outcomes = []
        for a in range(self.p.joint.shape[j] - 1):
            w = self._weights(_set(at, j, a), failed)
            if w.sum() > 1e-12 * whole:
                outcomes.append(Outcome(str(a), float(w.sum() / whole), w / w.sum()))
        after = sum(o.chance * table.expected_minutes(o.shares) for o in outcomes)
        gain = entropy - expected_bits(outcomes)
        return Candidate(check, float(self.p.prices[j]), tuple(outcomes), gain, after)


def _set(at: tuple[int, ...], j: int, answer: int) -> tuple[int, ...]:
    return (*at[:j], answer, *at[j + 1 :])


def regret(book: Book, problems: int) -> dict[str, object]:
    """Share by which the tool's expected minutes exceed the optimum, over random sub-problems."""
    draw = random.Random(SEED)
    over, sizes = [], []
    for _ in range(problems):
        p = draw_problem(book, draw)
        best = best_minutes(p)
        mine = Walk(book, p).minutes((-1,) * len(p.checks))
        over.append(mine / best - 1.0)
        sizes.append((len(p.fixes), len(p.checks)))
    order = sorted(over)
    return {
        "problems": problems, "seed": SEED, "mean": float(np.mean(over)), "worst": order[-1],
        "median": order[len(order) // 2], "p90": order[int(0.9 * (len(order) - 1))],
        "least": order[0], "causes": float(np.mean([s[0] for s in sizes])),
        "checks": float(np.mean([s[1] for s in sizes])),
    }  # fmt: skip
