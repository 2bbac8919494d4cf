"""A number of ours beside a number somebody else printed."""

from __future__ import annotations

from dataclasses import dataclass

from tests.published.sources import Source


@dataclass(frozen=True)
class Check:
    """`ours` against `printed`, both in the printed unit; `within` is the rounding of the print.

    `standing` is confirmed when the text was read, from memory when it is known but not seen;
    `place` says where in the source.
    """

    what: str
    ours: float
    printed: float
    within: float
    source: Source
    standing: str
    place: str = ""

    @property
    def holds(self) -> bool:
        """Whether ours is the printed number, to its rounding."""
        return abs(self.ours - self.printed) <= self.within

    def __str__(self) -> str:
        return self.what.replace(" ", "-")
