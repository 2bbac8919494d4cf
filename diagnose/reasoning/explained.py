"""The exact sum over every combination of causes, for many rows of evidence at once.

Dynamic programming over what is already explained: start from the background, take one cause at
a time (absent leaves the state, present fires its links), forward and backward, so that every
posterior comes out and nothing is subtracted. A sign opens when its first cause comes and is
summed out after its last, so the state is as wide as the signs open at one time, not as their
number. Evidence "at most this striking" costs no state at all: it scales the causes; and causes
that bear on one sign alone are folded into it before it opens (`lone.py`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from diagnose.reasoning.assembly import Assembly, Floats, Row, assemble, cut, spans, widest
from diagnose.reasoning.lone import Folded, fold, unfold
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
    step = max(1, int(ROW_BUDGET / (2 * _widest(plan, size) * (len(plan.order) + 2))))
    if step >= size:
        return _Sum(network, plan, fired, posteriors).solve()
    parts = [
        _Sum(network, cut(plan, slice(lo, min(size, lo + step))), fired, posteriors).solve()
        for lo in range(0, size, step)
    ]
    return Summed(
        np.concatenate([p.total for p in parts]),
        np.concatenate([p.unlisted for p in parts]),
        np.concatenate([p.present for p in parts]),
        np.concatenate([p.fired for p in parts if p.fired is not None]) if fired else None,
    )


def _widest(plan: Assembly, rows: int) -> int:
    """The width of the state; a plain bound where that is small enough for all rows at once."""
    bound = 1
    for digit in plan.digits:
        bound *= len(digit.groups)
    small = 2 * bound * rows * (len(plan.order) + 2) <= ROW_BUDGET
    return bound if small else widest(plan)


@dataclass
class _Moment:
    """One cause taken: the state after its links fired, and the axes then open."""

    after: Floats
    quiet: Floats | None
    axes: list[int]


class _Sum:
    """One pass forward, and one back for the posteriors. A state has a row for each row of
    evidence without what is unlisted, then one for each with it.
    """

    def __init__(self, network: Network, plan: Assembly, fired: bool, posteriors: bool) -> None:
        self.plan, self.posteriors = plan, posteriors
        self.rows, self.count = plan.there.shape
        self.there = np.concatenate([plan.there, plan.there])
        self.absent = np.concatenate([plan.absent, plan.absent])
        self.both = self.there + self.absent
        self.ends = [np.concatenate([d.weights, d.weights]) for d in plan.digits]
        self.sizes = [len(d.groups) for d in plan.digits]
        self.spans = spans(plan)
        self.complaint = set(network.complaint) if fired else set()
        self.stood: dict[int, Floats] = {}  # the state just before a digit opened
        self.present = np.zeros((2 * self.rows, self.count))
        self.acting = np.zeros((2 * self.rows, self.count)) if fired else None
        self.folded: list[Folded] = [
            fold(d, np.repeat(d.start, self.rows, axis=0), self.there, self.absent)
            for d in plan.digits
        ]

    def solve(self) -> Summed:
        plan, rows = self.plan, self.rows
        free = np.ones(self.count, dtype=bool)
        for digit in plan.digits:
            free[[*digit.causes, *digit.singles]] = False
        state = (plan.constant.reshape(2 * rows) * self.both[:, free].prod(axis=1))[:, None]
        apart = [d for d, digit in enumerate(plan.digits) if not digit.causes]
        sums = [(self.folded[d].start * self.ends[d]).sum(axis=1) for d in apart]
        for one in sums:
            state = state * one[:, None]
        state, moments = self._forward(state)
        total = state[:, 0]
        if self.posteriors:
            with np.errstate(divide="ignore", invalid="ignore"):
                share = np.where(self.both > 0.0, self.there / self.both, 0.0)
                self.present[:] = total[:, None] * share
                for d, one in zip(apart, sums, strict=True):
                    rest = np.where(one > 0.0, total / one, 0.0)
                    self._lone(d, self.ends[d] * rest[:, None])
            self._backward(moments)
        halves = total.reshape(2, rows)
        return Summed(
            halves.sum(axis=0),
            halves[1].copy(),
            self.present.reshape(2, rows, -1).sum(axis=0),
            self.acting.reshape(2, rows, -1).sum(axis=0) if self.acting is not None else None,
        )

    def _forward(self, state: Floats) -> tuple[Floats, list[_Moment]]:
        plan = self.plan
        opens, closes = self.spans
        axes: list[int] = []
        moments: list[_Moment] = []
        for i, cause in enumerate(plan.order):
            for d in opens[i]:
                self.stood[d] = state
                start = self.folded[d].start
                state = (state[:, :, None] * start[:, None, :]).reshape(2 * self.rows, -1)
                axes = [*axes, d]
            after, quiet = self._fire(state, axes, cause)
            moments.append(_Moment(after, quiet, axes))
            state = self.absent[:, cause, None] * state + self.there[:, cause, None] * after
            for d in closes[i]:
                state = self._close(state, axes, d)
                axes = [a for a in axes if a != d]
        return state, moments

    def _backward(self, moments: Sequence[_Moment]) -> None:
        plan, rows = self.plan, self.rows
        opens, closes = self.spans
        back = np.ones((2 * rows, 1))
        for i in range(len(plan.order) - 1, -1, -1):
            cause, moment = plan.order[i], moments[i]
            there = self.there[:, cause]
            back = self._reopen(back, moment.axes, closes[i])
            self.present[:, cause] = there * (back * moment.after).sum(axis=1)
            if self.acting is not None and moment.quiet is not None:
                silent = there * (back * moment.quiet).sum(axis=1)
                self.acting[:, cause] = np.maximum(0.0, self.present[:, cause] - silent)
            pulled = self._pull(back, moment.axes, cause)
            back = self.absent[:, cause, None] * back + there[:, None] * pulled
            for d in reversed(opens[i]):
                spread = back.reshape(2 * rows, -1, self.sizes[d])
                if plan.digits[d].singles:
                    self._lone(d, (spread * self.stood[d][:, :, None]).sum(axis=1))
                back = (spread * self.folded[d].start[:, None, :]).sum(axis=2)

    def _lone(self, d: int, worth: Floats) -> None:
        """Posteriors of the causes that bear on one digit alone."""
        acts = self.acting if self.plan.digits[d].sign in self.complaint else None
        unfold(self.plan.digits[d], self.folded[d], worth, self.there, (self.present, acts))

    def _view(self, state: Floats, axes: Sequence[int], d: int) -> Floats:
        """The state with one digit's axis alone in the middle: (rows x left, groups, right)."""
        right = 1
        for a in reversed(axes):
            if a == d:
                break
            right *= self.sizes[a]
        return state.reshape(-1, self.sizes[d], right)

    def _fire(self, state: Floats, axes: Sequence[int], cause: int) -> tuple[Floats, Floats | None]:
        """The state after the cause's links; and with those to the complaint kept silent."""
        digits = self.plan.digits
        mine = [d for d in axes if cause in digits[d].steps]
        last = [d for d in mine if digits[d].sign in self.complaint]
        for d in mine:
            if d not in last:
                state = self._step(state, axes, d, cause)
        quiet: Floats | None = None
        if last:
            keep = 1.0
            for d in last:
                keep *= digits[d].steps[cause][0]
            quiet = state * keep
        for d in last:
            state = self._step(state, axes, d, cause)
        return state, quiet

    def _step(self, state: Floats, axes: Sequence[int], d: int, cause: int) -> Floats:
        seen = self._view(state, axes, d)
        step = self.plan.digits[d].steps[cause]
        out = np.empty_like(seen)
        upto, below = step[0], seen[:, 0]
        np.multiply(below, upto, out=out[:, 0])
        for j in range(1, len(step)):
            upto = upto + step[j]
            out[:, j] = seen[:, j] * upto + below * step[j]
            if j + 1 < len(step):
                below = below + seen[:, j]
        return out.reshape(state.shape)

    def _pull(self, back: Floats, axes: Sequence[int], cause: int) -> Floats:
        """The same step backwards: what each state is worth before the cause's links fire."""
        for d in axes:
            step = self.plan.digits[d].steps.get(cause)
            if step is None:
                continue
            seen = self._view(back, axes, d)
            out = np.empty_like(seen)
            above: Floats | float = 0.0
            for j in range(len(step) - 1, -1, -1):
                out[:, j] = seen[:, j] * sum(step[: j + 1]) + above
                if j:
                    above = above + seen[:, j] * step[j]
            back = out.reshape(back.shape)
        return back

    def _close(self, state: Floats, axes: Sequence[int], d: int) -> Floats:
        right = self._view(state, axes, d).shape[2]
        seen = state.reshape(state.shape[0], -1, self.sizes[d], right)
        out: Floats = (seen * self.ends[d][:, None, :, None]).sum(axis=2)
        return out.reshape(state.shape[0], -1)

    def _reopen(self, back: Floats, axes: Sequence[int], closed: Sequence[int]) -> Floats:
        """Undo the closings after a cause: each closed digit's axis comes back in its place."""
        rows = back.shape[0]
        open_now = [a for a in axes if a not in closed]
        for d in reversed(closed):
            at = sum(1 for a in open_now if axes.index(a) < axes.index(d))
            right = 1
            for a in open_now[at:]:
                right *= self.sizes[a]
            spread = back.reshape(rows, -1, 1, right)
            back = (spread * self.ends[d][:, None, :, None]).reshape(rows, -1)
            open_now.insert(at, d)
        return back
