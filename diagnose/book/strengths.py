"""From totals as authors write them to the net strengths of a noisy-MAX.

A sign has values 0 (nothing of the kind) to K, least to most striking. The background and every
cause each propose one value and the most striking proposal wins, so cumulative chances multiply.
Authors write totals: P(sign shows value k | this cause is there), background included. With one
value this is the conversion of a noisy-OR, q = (P - b) / (1 - b) (Henrion, UAI 1987: leaky
noisy-OR; Diez, UAI 1993: noisy-MAX).
"""

from __future__ import annotations

from collections.abc import Sequence

TINY = 1e-12


class NotAbove(ValueError):
    """A total does not exceed what the sign shows without the cause.

    `index` counts the values from 0 (the first above nothing of the kind); `needs` is the number
    the total must exceed.
    """

    def __init__(self, index: int, needs: float) -> None:
        super().__init__(f"value {index + 1} needs more than {needs:.4g}")
        self.index, self.needs = index, needs


class TooMuch(ValueError):
    """The totals of one sign sum to more than 1; `index` as in NotAbove."""

    def __init__(self, index: int) -> None:
        super().__init__(f"with value {index + 1} the totals come to more than 1")
        self.index = index


def net_strengths(
    backgrounds: Sequence[float], totals: Sequence[float | None]
) -> tuple[float, ...]:
    """P(the cause alone proposes value k) for k = 1..K.

    `backgrounds` are the rates of the values 1..K with no cause, `totals` the written totals of
    the same values, None where the cause is not said to show that value (it then proposes it
    never). Going down from the most striking value, with Fb and Fc the chances that background
    and cause propose at most k: total_k = Fb(k) Fc(k) - Fb(k-1) Fc(k-1).

    Raises NotAbove when a total does not exceed its background as far as the more striking
    values leave room for it, TooMuch when the totals sum above 1, ValueError when the lengths
    differ or the backgrounds leave nothing for value 0.
    """
    if len(backgrounds) != len(totals):
        raise ValueError("as many totals as backgrounds are needed")
    if not all(b >= 0.0 for b in backgrounds) or not sum(backgrounds) < 1.0:
        raise ValueError("the backgrounds must be rates that sum to less than 1")
    strengths = [0.0] * len(totals)
    at_most_b = at_most_c = 1.0
    for k in reversed(range(len(totals))):
        total, rate = totals[k], backgrounds[k]
        below_b = at_most_b - rate
        if total is not None:
            if total <= at_most_c * rate + TINY:
                raise NotAbove(k, at_most_c * rate)
            below_c = (at_most_b * at_most_c - total) / below_b
            if below_c < -TINY:
                raise TooMuch(k)
            strengths[k] = at_most_c - max(below_c, 0.0)
            at_most_c = max(below_c, 0.0)
        at_most_b = below_b
    return tuple(strengths)


def totals_of(backgrounds: Sequence[float], strengths: Sequence[float]) -> tuple[float, ...]:
    """P(value k | this cause and the background) for k = 1..K: what `net_strengths` undoes."""
    found = [0.0] * len(strengths)
    at_most_b = at_most_c = 1.0
    for k in reversed(range(len(strengths))):
        below_b, below_c = at_most_b - backgrounds[k], at_most_c - strengths[k]
        found[k] = at_most_b * at_most_c - below_b * below_c
        at_most_b, at_most_c = below_b, below_c
    return tuple(found)
