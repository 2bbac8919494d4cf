"""Assembling the exact sum: rows of evidence into weights, states and an order of elimination.

Evidence "at most this striking" only scales the causes; every other sign needs a state, its
values grouped where no row tells them apart. Causes are ordered so that signs close early.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from diagnose.reasoning.network import Network, Vector

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Row:
    """One state of knowledge: evidence by sign; priors and report weights that differ by cause."""

    evidence: Mapping[str, Vector]
    priors: Mapping[str, float] = field(default_factory=dict)
    reports: Mapping[str, tuple[float, float]] = field(default_factory=dict)


@dataclass(frozen=True)
class Digit:
    """A sign that needs a state: its values grouped where no row tells them apart."""

    sign: str
    groups: tuple[tuple[int, ...], ...]
    weights: Floats  # (rows, groups)
    start: Floats  # (2, groups): without and with what is unlisted
    causes: tuple[int, ...]
    steps: Mapping[int, tuple[float, ...]]  # cause -> chance of proposing each group


@dataclass(frozen=True)
class Assembly:
    there: Floats  # (rows, causes): weight of the cause present
    absent: Floats
    constant: Floats  # (2, rows)
    digits: tuple[Digit, ...]
    order: tuple[int, ...]  # causes that touch a digit, in the order they are taken


def assemble(network: Network, rows: Sequence[Row]) -> Assembly:
    nodes = network.nodes
    prior = np.array([[r.priors.get(n.id, n.prior) for n in nodes] for r in rows])
    prior = prior.reshape(len(rows), len(nodes))
    report = [[r.reports.get(n.id, (1.0, 1.0)) for n in nodes] for r in rows]
    weight = np.array(report, dtype=float).reshape(len(rows), len(nodes), 2)
    base = np.array([[n.there, n.absent] for n in nodes]).reshape(len(nodes), 2)
    there = prior * weight[:, :, 0] * base[None, :, 0]
    absent = (1.0 - prior) * weight[:, :, 1] * base[None, :, 1]
    unlisted = network.unlisted_prior
    constant = np.ones((2, len(rows)))
    constant[0], constant[1] = 1.0 - unlisted, unlisted
    digits: list[Digit] = []
    for sign in sorted({s for r in rows for s in r.evidence}):
        flat = (1.0,) * len(network.background[sign])
        table = np.array([r.evidence.get(sign, flat) for r in rows])
        if _only_scales(table):
            _scale(network, sign, table, there, constant)
        else:
            digits.append(_digit(network, sign, table))
    kept = tuple(digits)
    return Assembly(there, absent, constant, kept, _order(kept))


def _only_scales(table: Floats) -> bool:
    """True when every row says "at most so striking": equal weights, then zeros."""
    rising = np.diff(table, axis=1)
    drops = (rising != 0.0).sum(axis=1)
    return bool(np.all(drops <= 1) and np.all((rising == 0.0) | (table[:, 1:] == 0.0)))


def _scale(network: Network, sign: str, table: Floats, there: Floats, constant: Floats) -> None:
    allowed = (table > 0.0).astype(float)
    constant *= table[:, 0] * (allowed @ np.array(network.background[sign]))
    constant[1] *= allowed @ np.array(network.unlisted[sign])
    for index, node in enumerate(network.nodes):
        link = node.links.get(sign)
        if link is not None:
            there[:, index] *= allowed @ np.array(link)


def _digit(network: Network, sign: str, table: Floats) -> Digit:
    groups: list[list[int]] = [[0]]
    for value in range(1, table.shape[1]):
        if np.array_equal(table[:, value], table[:, value - 1]):
            groups[-1].append(value)
        else:
            groups.append([value])
    if not np.any(table[:, groups[-1][0]]):
        groups.pop()  # nothing this striking was seen: what proposes it is ruled out
    weights = np.stack([table[:, g[0]] for g in groups], axis=1)
    background = _grouped(network.background[sign], groups)
    start = np.array([background, _propose(background, _grouped(network.unlisted[sign], groups))])
    steps = {
        i: _grouped(n.links[sign], groups) for i, n in enumerate(network.nodes) if sign in n.links
    }
    return Digit(sign, tuple(tuple(g) for g in groups), weights, start, tuple(sorted(steps)), steps)


def _grouped(vector: Vector, groups: Sequence[Sequence[int]]) -> tuple[float, ...]:
    return tuple(sum(vector[v] for v in g) for g in groups)


def _propose(state: Sequence[float], step: Sequence[float]) -> list[float]:
    """The most striking of what stood and what is proposed."""
    out = []
    for j in range(len(state)):
        upto = sum(step[: j + 1])
        out.append(state[j] * upto + step[j] * sum(state[:j]))
    return out


def _order(digits: Sequence[Digit]) -> tuple[int, ...]:
    """Causes in an order that closes signs early: the sign that opens fewest others goes next."""
    touches: dict[int, set[int]] = {}
    for d, digit in enumerate(digits):
        for cause in digit.causes:
            touches.setdefault(cause, set()).add(d)
    left = {d: set(digit.causes) for d, digit in enumerate(digits)}
    opened: set[int] = set()
    order: list[int] = []
    while left:
        best = min(
            left,
            key=lambda d: (len({o for c in left[d] for o in touches[c]} - opened), len(left[d]), d),
        )
        for cause in sorted(left[best]):
            order.append(cause)
            opened |= touches[cause]
            for d in touches[cause]:
                left[d].discard(cause)
        left = {d: causes for d, causes in left.items() if causes}
        opened &= set(left)
    return tuple(order)


def spans(assembly: Assembly) -> tuple[list[list[int]], list[list[int]]]:
    """For each place in the order: the digits that open before it, those that close after."""
    place = {cause: i for i, cause in enumerate(assembly.order)}
    opens: list[list[int]] = [[] for _ in assembly.order]
    closes: list[list[int]] = [[] for _ in assembly.order]
    for d, digit in enumerate(assembly.digits):
        if digit.causes:
            opens[min(place[c] for c in digit.causes)].append(d)
            closes[max(place[c] for c in digit.causes)].append(d)
    return opens, closes


def widest(assembly: Assembly) -> int:
    opens, closes = spans(assembly)
    now = widest = 1
    for i in range(len(assembly.order)):
        for d in opens[i]:
            now *= len(assembly.digits[d].groups)
        widest = max(widest, now)
        for d in closes[i]:
            now //= len(assembly.digits[d].groups)
    return widest


def cut(assembly: Assembly, part: slice) -> Assembly:
    digits = tuple(
        Digit(d.sign, d.groups, d.weights[part], d.start, d.causes, d.steps)
        for d in assembly.digits
    )
    return Assembly(
        assembly.there[part],
        assembly.absent[part],
        assembly.constant[:, part],
        digits,
        assembly.order,
    )
