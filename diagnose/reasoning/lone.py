"""Causes that bear on one open sign alone, folded into that sign before it opens.

Absent or present, such a cause proposes something for one sign only; its two cases are one
proposal with unnormalised weights, and a chain of proposals needs a state no wider than the sign.
Forward for the folded start, backward for the posteriors; nothing is subtracted.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from diagnose.reasoning.assembly import Digit, Floats


@dataclass(frozen=True)
class Folded:
    """The start of a digit with its lone causes taken in.

    `start` (rows, groups); `before` the states before each lone cause; `steps` (causes, groups)
    what each proposes when there; `mixed` (causes, rows, groups) its two cases as one proposal,
    `upto` the same summed over the groups so far.
    """

    start: Floats
    before: tuple[Floats, ...]
    steps: Floats
    mixed: Floats
    upto: Floats


def fold(digit: Digit, start: Floats, there: Floats, absent: Floats) -> Folded:
    """Take the lone causes of a digit into its start (rows, groups)."""
    none = np.empty((0, 0))
    if not digit.singles:
        return Folded(start, (), none, none, none)
    lone = list(digit.singles)
    steps = np.array([digit.steps[c] for c in lone])
    mixed = there.T[lone][:, :, None] * steps[:, None, :]
    mixed[:, :, 0] += absent.T[lone]
    upto = np.cumsum(mixed, axis=2)
    before: list[Floats] = []
    state = start
    for proposed, whole in zip(mixed, upto, strict=True):
        before.append(state)
        state = _proposed(state, proposed, whole)
    return Folded(state, tuple(before), steps, mixed, upto)


def unfold(
    digit: Digit,
    folded: Folded,
    worth: Floats,
    there: Floats,
    into: tuple[Floats, Floats | None],
) -> None:
    """Write the posteriors of the lone causes of a digit.

    `worth` (rows, groups): what each group is worth to everything else; `into`: the sums with
    each cause present, and the part in which its link fired (for a digit of the complaint).
    """
    present, acting = into
    for k in range(len(digit.singles) - 1, -1, -1):
        cause, state, step = digit.singles[k], folded.before[k], folded.steps[k]
        after = _proposed(state, step, np.cumsum(step))
        weight = there[:, cause]
        present[:, cause] = weight * (after * worth).sum(axis=1)
        if acting is not None:
            silent = weight * step[0] * (state * worth).sum(axis=1)
            acting[:, cause] = np.maximum(0.0, present[:, cause] - silent)
        worth = _pulled(worth, folded.mixed[k], folded.upto[k])


def _proposed(state: Floats, step: Floats, upto: Floats) -> Floats:
    """The most striking of what stood and what is proposed."""
    out = state * upto
    below = state[:, 0]
    for j in range(1, state.shape[1]):
        out[:, j] += below * step[..., j]
        if j + 1 < state.shape[1]:
            below = below + state[:, j]
    return out


def _pulled(worth: Floats, step: Floats, upto: Floats) -> Floats:
    """What each state is worth before the proposal."""
    out = worth * upto
    above: Floats | float = 0.0
    for j in range(worth.shape[1] - 1, 0, -1):
        above = above + worth[:, j] * step[:, j]
        out[:, j - 1] += above
    return out
