"""Every calculation of the trade by name: for `diagnose calc` and for the rules of the knowledge.

A physics module lists its calculations in a tuple `CALCULATIONS`; this module finds them by id.
Numbers go in and come out in SI base units of their dimension (see `units.py`): a length in
metres, a speed in metres per second, a turning speed in revolutions per second.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True)
class Input:
    """One number a calculation needs.

    `name` is the keyword of the function; `dimension` a name from `units.DIMENSIONS`;
    `default` is text as a machinist writes it, or None when the value must be given.
    """

    name: str
    dimension: str
    help: str
    default: str | None = None


@dataclass(frozen=True)
class Calculation:
    """A named formula: what goes in, what comes out, where it comes from and where it ends.

    `function` takes the inputs as keywords (floats, SI) and returns a float (SI) of dimension
    `gives`. `meaning` turns inputs and result into one plain sentence about the work.
    """

    id: str
    name: str
    inputs: tuple[Input, ...]
    gives: str
    function: Callable[..., float]
    formula: str
    meaning: Callable[[dict[str, float], float], str]
    source: str
    standing: str  # confirmed | from memory | common practice | derived
    limits: str
