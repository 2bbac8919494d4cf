"""The exact sum over every combination of causes, for many rows of evidence at once.

Dynamic programming over what is already explained: start from the background, take one cause at
a time (absent leaves the state, present fires its links), forward and backward, so that every
posterior comes out and nothing is subtracted. A sign opens when its first cause comes and is
summed out after its last, so the state is as wide as the signs open at one time, not as their
number. Evidence "at most this striking" costs no state at all: it scales the causes.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from diagnose.reasoning.assembly import Assembly, Digit, Floats, Row, assemble, cut, spans, widest
from diagnose.reasoning.network import Network

ROW_BUDGET = 8_000_000  # numbers held at once before the rows are worked in pieces


@dataclass(frozen=True)
class Summed:
    """Unnormalised sums, a row each: all, with what is unlisted present, with each cause present.

    `fired` is the part of `present` in which a link of the cause to the complaint fired; it is
    None unless asked for.
    """

    total: Floats  # (rows,)
    unlisted: Floats  # (rows,)
    present: Floats  # (rows, causes)
    fired: Floats | None = None


def sum_out(
    network: Network, rows: Sequence[Row], *, fired: bool = False, posteriors: bool = True
) -> Summed:
    """Sum over all combinations of causes for each row.

    `fired=True` also gives the part in which a cause's link to the complaint fired;
    `posteriors=False` gives the totals alone.
    """
    plan = assemble(network, rows)
    size = len(rows)
    step = max(1, int(ROW_BUDGET / (2 * widest(plan) * (len(plan.order) + 2))))
    parts = [
        _solve(network, cut(plan, slice(lo, min(size, lo + step))), fired, posteriors)
        for lo in range(0, size, step)
    ]
    return Summed(
        np.concatenate([p.total for p in parts]),
        np.concatenate([p.unlisted for p in parts]),
        np.concatenate([p.present for p in parts]),
        np.concatenate([p.fired for p in parts if p.fired is not None]) if fired else None,
    )


def width(network: Network, rows: Sequence[Row]) -> int:
    """The widest state the sum needs, as a number of combinations of explained signs."""
    return widest(assemble(network, rows))


@dataclass
class _Moment:
    """One cause taken: the state before and after its links fired, and the axes then open."""

    before: Floats
    after: Floats
    quiet: Floats | None
    axes: list[int]


def _solve(network: Network, plan: Assembly, fired: bool, posteriors: bool) -> Summed:
    rows, count = plan.there.shape
    there = np.concatenate([plan.there, plan.there])
    absent = np.concatenate([plan.absent, plan.absent])
    both = there + absent
    linked = set(plan.order)
    state = plan.constant.reshape(2 * rows, 1).copy()
    for i in range(count):
        if i not in linked:
            state[:, 0] *= both[:, i]
    for digit in plan.digits:
        if not digit.causes:
            state[:, 0] *= (_start(digit, rows) * _ends(digit)).sum(axis=1)
    opens, closes = spans(plan)
    axes: list[int] = []
    moments: list[_Moment] = []
    complaint = set(network.complaint)
    for i, cause in enumerate(plan.order):
        for d in opens[i]:
            state = (state[:, :, None] * _start(plan.digits[d], rows)[:, None, :]).reshape(
                2 * rows, -1
            )
            axes = [*axes, d]
        after, quiet = _fire(state, plan, axes, cause, complaint if fired else set())
        moments.append(_Moment(state, after, quiet, axes))
        state = absent[:, cause, None] * state + there[:, cause, None] * after
        for d in closes[i]:
            state = _close(state, plan, axes, d)
            axes = [a for a in axes if a != d]
    total = state[:, 0]
    present = np.zeros((2 * rows, count))
    acting = np.zeros((2 * rows, count)) if fired else None
    if posteriors:
        with np.errstate(divide="ignore", invalid="ignore"):
            share = np.where(both > 0.0, there / both, 0.0)
        present[:] = total[:, None] * share
        _backward(plan, moments, closes, opens, (there, absent), present, acting)
    halves = total.reshape(2, rows)
    return Summed(
        halves.sum(axis=0),
        halves[1].copy(),
        present.reshape(2, rows, count).sum(axis=0),
        acting.reshape(2, rows, count).sum(axis=0) if acting is not None else None,
    )


def _backward(
    plan: Assembly,
    moments: Sequence[_Moment],
    closes: Sequence[Sequence[int]],
    opens: Sequence[Sequence[int]],
    weights: tuple[Floats, Floats],
    present: Floats,
    acting: Floats | None,
) -> None:
    there, absent = weights
    rows = plan.there.shape[0]
    back = np.ones((2 * rows, 1))
    for i in range(len(plan.order) - 1, -1, -1):
        cause, moment = plan.order[i], moments[i]
        back = _reopen(back, plan, moment.axes, closes[i])
        present[:, cause] = there[:, cause] * (back * moment.after).sum(axis=1)
        if acting is not None and moment.quiet is not None:
            silent = there[:, cause] * (back * moment.quiet).sum(axis=1)
            acting[:, cause] = np.maximum(0.0, present[:, cause] - silent)
        pulled = _pull(back, plan, moment.axes, cause)
        back = absent[:, cause, None] * back + there[:, cause, None] * pulled
        for d in reversed(opens[i]):
            digit = plan.digits[d]
            spread = back.reshape(2 * rows, -1, len(digit.groups))
            back = (spread * _start(digit, rows)[:, None, :]).sum(axis=2)


def _start(digit: Digit, rows: int) -> Floats:
    return np.repeat(digit.start, rows, axis=0)


def _ends(digit: Digit) -> Floats:
    return np.concatenate([digit.weights, digit.weights])


def _view(state: Floats, plan: Assembly, axes: Sequence[int], d: int) -> Floats:
    """The state with the axis of one digit alone in the middle: (rows x left, groups, right)."""
    at = axes.index(d)
    right = 1
    for a in axes[at + 1 :]:
        right *= len(plan.digits[a].groups)
    return state.reshape(-1, len(plan.digits[d].groups), right)


def _fire(
    state: Floats, plan: Assembly, axes: Sequence[int], cause: int, complaint: set[str]
) -> tuple[Floats, Floats | None]:
    """The state after the cause's links; and with those to the complaint kept silent."""
    mine = [d for d in axes if cause in plan.digits[d].steps]
    last = [d for d in mine if plan.digits[d].sign in complaint]
    for d in mine:
        if d not in last:
            state = _step(state, plan, axes, d, cause)
    quiet: Floats | None = None
    if last:
        keep = 1.0
        for d in last:
            keep *= plan.digits[d].steps[cause][0]
        quiet = state * keep
    for d in last:
        state = _step(state, plan, axes, d, cause)
    return state, quiet


def _step(state: Floats, plan: Assembly, axes: Sequence[int], d: int, cause: int) -> Floats:
    seen = _view(state, plan, axes, d)
    step = plan.digits[d].steps[cause]
    out = np.empty_like(seen)
    out[:, 0] = seen[:, 0] * step[0]
    upto, below = step[0], seen[:, 0]
    for j in range(1, len(step)):
        upto = upto + step[j]
        out[:, j] = seen[:, j] * upto + below * step[j]
        if j + 1 < len(step):
            below = below + seen[:, j]
    return out.reshape(state.shape)


def _pull(back: Floats, plan: Assembly, axes: Sequence[int], cause: int) -> Floats:
    """The same step backwards: what each state is worth before the cause's links fire."""
    for d in axes:
        step = plan.digits[d].steps.get(cause)
        if step is None:
            continue
        seen = _view(back, plan, axes, d)
        out = np.empty_like(seen)
        above = np.zeros_like(seen[:, 0])
        for j in range(len(step) - 1, -1, -1):
            out[:, j] = seen[:, j] * sum(step[: j + 1]) + above
            above = above + seen[:, j] * step[j]
        back = out.reshape(back.shape)
    return back


def _close(state: Floats, plan: Assembly, axes: Sequence[int], d: int) -> Floats:
    digit = plan.digits[d]
    rows = state.shape[0]
    right = _view(state, plan, axes, d).shape[2]
    seen = state.reshape(rows, -1, len(digit.groups), right)
    ends = _ends(digit)[:, None, :, None]
    out: Floats = (seen * ends).sum(axis=2).reshape(rows, -1)
    return out


def _reopen(back: Floats, plan: Assembly, axes: Sequence[int], closed: Sequence[int]) -> Floats:
    """Undo the closings after a cause: each closed digit's axis comes back in its place."""
    rows = back.shape[0]
    open_now = [a for a in axes if a not in closed]
    for d in reversed(closed):
        at = sum(1 for a in open_now if axes.index(a) < axes.index(d))
        right = 1
        for a in open_now[at:]:
            right *= len(plan.digits[a].groups)
        spread = back.reshape(rows, -1, 1, right)
        back = (spread * _ends(plan.digits[d])[:, None, :, None]).reshape(rows, -1)
        open_now.insert(at, d)
    return back
