"""The entries of a case with its corrections put in place, so that some can be left out."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from diagnose.case.entries import Entry


def corrected(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """The entries in order; each correction takes the place of what it corrects."""
    standing: dict[int, Entry] = {}
    first: dict[int, int] = {}
    for number, entry in enumerate(entries, 1):
        place = first.get(entry.replaces, entry.replaces)
        if entry.kind == "correct" and place in standing:
            first[number] = place
            old = standing[place]
            standing[place] = replace(old, value=entry.value, how=entry.how, sure=entry.sure)
        elif entry.kind != "correct":
            standing[number] = entry
    return tuple(standing.values())
