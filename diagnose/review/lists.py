"""The lists to tick before the cut that apply to this job, in the order of their files."""

from __future__ import annotations

from collections.abc import Mapping

from diagnose.book.advice import Tick
from diagnose.book.conditions import FactValue, holds
from diagnose.book.fields_before import SET_UP, SIX_FACES, THIN, WARM_UP
from diagnose.book.model import Book

__all__ = ["SET_UP", "SIX_FACES", "THIN", "WARM_UP", "in_force", "lists_for"]

CERTAIN = (THIN,)  # shown only where the job is known to be so


def in_force(book: Book, name: str, facts: Mapping[str, FactValue]) -> tuple[Tick, ...]:
    """The steps of a list that apply; a step whose circumstance is not known stays in."""
    steps = sorted((t for t in book.before.values() if t.list == name), key=lambda t: t.place)
    degrees = [(t, holds(t.when, facts)) for t in steps]
    if name in CERTAIN:
        return tuple(t for t, degree in degrees if degree is not None and degree > 0.0)
    return tuple(t for t, degree in degrees if degree != 0.0)


def lists_for(
    book: Book, facts: Mapping[str, FactValue], sides: str
) -> tuple[tuple[str, tuple[Tick, ...]], ...]:
    """(list, its steps) of every list that applies; the square block when six faces are ground."""
    names = [WARM_UP, SET_UP, THIN] + ([SIX_FACES] if sides == "six" else [])
    found = [(name, in_force(book, name, facts)) for name in names]
    return tuple((name, steps) for name, steps in found if steps)
