"""The one error of the formulas: a number outside what the formula is good for."""

from __future__ import annotations

import math


class OutOfRange(ValueError):
    """A value a formula cannot take: says which, how much, in what unit, and what is allowed.

    `argument` is the keyword, `value`, `lowest` and `highest` are SI floats of `dimension`.
    """

    def __init__(
        self, argument: str, value: float, dimension: str, lowest: float, highest: float
    ) -> None:
        self.argument = argument
        self.value = value
        self.dimension = dimension
        self.lowest = lowest
        self.highest = highest
        super().__init__(self._text())

    def _text(self) -> str:
        from diagnose.physics.units import show

        name = self.argument.replace("_", " ")
        if not math.isfinite(self.value):
            said = f"{name} is not a finite number ({self.value})"
        else:
            said = f"{name} of {show(self.value, self.dimension)} is out of range"
        low, high = show(self.lowest, self.dimension), show(self.highest, self.dimension)
        return f"{said}: it must lie between {low} and {high}"


def within(argument: str, value: float, dimension: str, lowest: float, highest: float) -> float:
    """The value itself when it is finite and in the range (SI, ends included); else OutOfRange."""
    if not (math.isfinite(value) and lowest <= value <= highest):
        raise OutOfRange(argument, value, dimension, lowest, highest)
    return value
