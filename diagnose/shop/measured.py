"""Two readings laid side by side, each a number with its unit as a person writes it."""

from __future__ import annotations

from diagnose.physics.quantities import Quantity, QuantityError, read_quantity
from diagnose.physics.units import DIMENSIONS

USUAL_SPREAD = 0.12  # ours: give-or-take of a reading, as its share, when none is given
NO_RATIO = ("temperature",)  # twice as warm says nothing


def quantities(one: str, other: str, dimension: str = "") -> tuple[Quantity, Quantity] | None:
    """Both as numbers of one kind, in SI; None when there is no kind both can be."""
    for kind in [dimension] if dimension else DIMENSIONS:
        try:
            return read_quantity(one, kind), read_quantity(other, kind)
        except QuantityError:
            continue
    return None


def apart(one: str, other: str, dimension: str = "", give_or_take: float = 0.0) -> bool:
    """True when the bands of the two do not meet; for words, when they are not the same."""
    both = quantities(one, other, dimension)
    if both is None:
        return one.split() != other.split()
    share = give_or_take or USUAL_SPREAD
    (low, high), (low2, high2) = (_band(q, share) for q in both)
    return high < low2 or high2 < low


def _band(quantity: Quantity, share: float) -> tuple[float, float]:
    spread = quantity.uncertainty or abs(quantity.value) * share
    return quantity.value - spread, quantity.value + spread


def times(good: str, now: str, dimension: str = "") -> str:
    """How many times the good one it is now: "2.7 times", or "" when that says nothing."""
    both = quantities(good, now, dimension)
    if both is None or min(q.value for q in both) <= 0 or both[0].dimension in NO_RATIO:
        return ""
    ratio = both[1].value / both[0].value
    return f"{ratio:.2g} times" if ratio < 100 else f"{ratio:.0f} times"
