"""A number of ours beside a number somebody else printed."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Check:
    """`ours` against `printed`, both in the printed unit; `within` is the rounding of the print.

    `standing` is confirmed when the text was read, from memory when it is known but not seen.
    """

    what: str
    ours: float
    printed: float
    within: float
    source: str
    standing: str

    @property
    def holds(self) -> bool:
        """Whether ours is the printed number, to its rounding."""
        return abs(self.ours - self.printed) <= self.within

    def __str__(self) -> str:
        return self.what.replace(" ", "-")
