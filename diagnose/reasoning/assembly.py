"""Assembling the exact sum: rows of evidence into weights, states and an order of elimination.

Evidence "at most this striking" only scales the causes; every other sign needs a state, its
values grouped where no row tells them apart. A cause that bears on one such sign alone is folded
into that sign; the others are ordered so that signs close early.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from diagnose.reasoning.ground import Vector
from diagnose.reasoning.network import Network

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
    causes: tuple[int, ...]  # those that bear on another digit too
    singles: tuple[int, ...]  # those that bear on this digit alone
    steps: Mapping[int, tuple[float, ...]]  # cause -> chance of proposing each group


@dataclass(frozen=True)
class Assembly:
    there: Floats  # (rows, causes): weight of the cause present
    absent: Floats
    constant: Floats  # (2, rows)
    digits: tuple[Digit, ...]
    order: tuple[int, ...]  # causes that touch several digits, in the order they are taken


def assemble(network: Network, rows: Sequence[Row]) -> Assembly:
    """Weights, states and order for these rows."""
    there, absent = _weights(network, rows)
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
    kept = _parted(digits)
    return Assembly(there, absent, constant, kept, _order(kept))


def _weights(network: Network, rows: Sequence[Row]) -> tuple[Floats, Floats]:
    nodes, place = network.nodes, network.place
    prior = np.tile(np.array([n.prior for n in nodes]), (len(rows), 1))
    there = np.tile(np.array([n.there for n in nodes]), (len(rows), 1))
    absent = np.tile(np.array([n.absent for n in nodes]), (len(rows), 1))
    for r, row in enumerate(rows):
        for cause, value in row.priors.items():
            if cause in place:
                prior[r, place[cause]] = value
        for cause, (yes, no) in row.reports.items():
            if cause in place:
                there[r, place[cause]] *= yes
                absent[r, place[cause]] *= no
    there *= prior
    absent *= 1.0 - prior
    return there, absent


def _only_scales(table: Floats) -> bool:
    """True when every row says "at most so striking": equal weights, then zeros."""
    if len(table) == 1:
        line = table[0].tolist()
        return all(b in (a, 0.0) for a, b in pairwise(line)) and len({*line} - {0.0}) <= 1
    rising = np.diff(table, axis=1)
    drops = (rising != 0.0).sum(axis=1)
    return bool(np.all(drops <= 1) and np.all((rising == 0.0) | (table[:, 1:] == 0.0)))


def _scale(network: Network, sign: str, table: Floats, there: Floats, constant: Floats) -> None:
    allowed = (table > 0.0).astype(float)
    constant *= table[:, 0] * (allowed @ np.array(network.background[sign]))
    constant[1] *= allowed @ np.array(network.unlisted[sign])
    linked = network.linked(sign)
    if linked:
        there[:, list(linked)] *= allowed @ np.array(list(linked.values())).T


def _digit(network: Network, sign: str, table: Floats) -> Digit:
    groups = _groups(table)
    weights = np.stack([table[:, g[0]] for g in groups], axis=1)
    background = _grouped(network.background[sign], groups)
    start = np.array([background, _propose(background, _grouped(network.unlisted[sign], groups))])
    steps = {i: _grouped(link, groups) for i, link in network.linked(sign).items()}
    return Digit(sign, groups, weights, start, tuple(sorted(steps)), (), steps)


def _groups(table: Floats) -> tuple[tuple[int, ...], ...]:
    columns = table.T.tolist()
    groups: list[list[int]] = [[0]]
    for value in range(1, len(columns)):
        if columns[value] == columns[value - 1]:
            groups[-1].append(value)
        else:
            groups.append([value])
    if not any(columns[groups[-1][0]]):
        groups.pop()  # nothing this striking was seen: what proposes it is ruled out
    return tuple(tuple(g) for g in groups)


def _grouped(vector: Vector, groups: Sequence[Sequence[int]]) -> tuple[float, ...]:
    if len(groups) == len(vector):
        return vector
    return tuple(sum(vector[v] for v in g) for g in groups)


def _propose(state: Sequence[float], step: Sequence[float]) -> list[float]:
    """The most striking of what stood and what is proposed."""
    out = []
    for j in range(len(state)):
        upto = sum(step[: j + 1])
        out.append(state[j] * upto + step[j] * sum(state[:j]))
    return out


def _parted(digits: Sequence[Digit]) -> tuple[Digit, ...]:
    """The causes of each digit parted into those of several digits and those of this one alone."""
    touched: dict[int, int] = {}
    for digit in digits:
        for cause in digit.causes:
            touched[cause] = touched.get(cause, 0) + 1
    return tuple(
        replace(
            d,
            causes=tuple(c for c in d.causes if touched[c] > 1),
            singles=tuple(c for c in d.causes if touched[c] == 1),
        )
        for d in digits
    )


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
    """The widest state, as a number of combinations of explained signs."""
    opens, closes = spans(assembly)
    now = widest = 1
    for i in range(len(assembly.order)):
        for d in opens[i]:
            now *= len(assembly.digits[d].groups)
        widest = max(widest, now)
        for d in closes[i]:
            now //= len(assembly.digits[d].groups)
    return widest


def width(network: Network, evidence: Mapping[str, Vector], enough: int = 1) -> int:
    """The widest state the sum of one row needs, found without any weights.

    When even all signs together stay within `enough`, that product is the answer.
    """
    none = np.empty((0, 0))
    digits = []
    together = 1
    for sign in sorted(evidence):
        table = np.array([evidence[sign]])
        if not _only_scales(table):
            causes = tuple(sorted(network.linked(sign)))
            digits.append(Digit(sign, _groups(table), none, none, causes, (), {}))
            together *= len(digits[-1].groups)
    if together <= enough:
        return together
    kept = _parted(digits)
    return widest(Assembly(none, none, none, kept, _order(kept)))


def cut(assembly: Assembly, part: slice) -> Assembly:
    """The same for some of the rows."""
    digits = tuple(replace(d, weights=d.weights[part]) for d in assembly.digits)
    return Assembly(
        assembly.there[part],
        assembly.absent[part],
        assembly.constant[:, part],
        digits,
        assembly.order,
    )
