"""The part told from the machine by turning the part end for end, same face up."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.physics.grids import Grid, same_places
from diagnose.physics.shape import Term, split


@dataclass(frozen=True)
class TurnedEndForEnd:
    """What a sweep before and after turning the part end for end tells (m).

    The tilts that went round with the part, and those that stayed with the machine. Dish, crown
    and twist look the same after the turn: `cannot_split` names them.
    """

    part: tuple[Term, ...]
    machine: tuple[Term, ...]
    cannot_split: tuple[str, ...]


def turned_end_for_end(before: Grid, after: Grid) -> TurnedEndForEnd:
    """Part from machine, by one grid before and one after turning end for end, same face up.

    Both grids are written as they lie on the machine. Source: reversal method, here for the terms
    of the model that change their sign when turned half round (derived).
    """
    same_places(after, before)
    half_sum = Grid(
        (before.heights + after.heights) / 2.0, before.across, before.along, before.setting
    )
    half_difference = Grid(
        (before.heights - after.heights) / 2.0, before.across, before.along, before.setting
    )
    machine, part = split(half_sum), split(half_difference)
    tilts = ("tilt-along", "tilt-across")
    return TurnedEndForEnd(
        part=tuple(term for term in part.terms if term.name in tilts),
        machine=tuple(term for term in machine.terms if term.name in tilts),
        cannot_split=tuple(t.name for t in machine.terms if t.name not in (*tilts, "rest")),
    )
