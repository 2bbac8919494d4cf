"""Grids of indicator readings told in a case: the numbers of their shape, and what they say."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from diagnose.book.conditions import Number
from diagnose.book.grid_checks import cannot_show, grid_reading
from diagnose.book.model import Book
from diagnose.reasoning.facts import Gathered

_KEPT: dict[tuple[str, str, str], Grids] = {}
_MOST_KEPT = 64


@dataclass(frozen=True)
class Grids:
    """Numbers by fact name, with what they cannot show; (check, text) of what to tell."""

    numbers: Mapping[str, Number] = field(default_factory=dict)
    notes: tuple[tuple[str, str], ...] = ()


def grids_of(book: Book, gathered: Gathered) -> Grids:
    """The numbers of every grid told: tilts, twist, crowns and what is left (m), each a range."""
    numbers: dict[str, Number] = {}
    notes: list[tuple[str, str]] = []
    for name in sorted(gathered.told):
        if book.checks[name].reads == "grid":
            found = _of(book, name, gathered.told[name].text)
            numbers |= found.numbers
            notes += found.notes
    return Grids(numbers, tuple(notes))


def _of(book: Book, name: str, text: str) -> Grids:
    key = (book.version, name, text)  # an interview works the same answers out again and again
    if key not in _KEPT:
        if len(_KEPT) >= _MOST_KEPT:
            _KEPT.clear()
        _KEPT[key] = _worked_out(book, name, text)
    return _KEPT[key]


def _worked_out(book: Book, name: str, text: str) -> Grids:
    from diagnose.physics.worked_grid import meaning

    check = book.checks[name]
    reading = grid_reading(check, text)
    found = reading.split()
    refused = cannot_show(reading.setting)
    numbers = {
        f"{name}-{term.name}": Number(term.value, term.low, term.high, refused)
        for term in found.terms
    }
    shape = [term for term in found.terms if term.name != "rest"]
    said = meaning(shape, found.patches, is_difference=False)
    against = reading.setting.against.value
    notes = [f"{check.name}, against {against}. {said}", *found.notes]
    return Grids(numbers, tuple((name, note) for note in notes))
