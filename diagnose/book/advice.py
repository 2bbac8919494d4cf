"""Advice a symptom or a cause carries: what to do with the part, first aid for tonight."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.book.conditions import Condition


@dataclass(frozen=True)
class PartAdvice:
    """What to do with the part in hand. `action`: save | leave | quarantine | scrap | measure."""

    when: Condition
    action: str
    say: str
    source: str = ""


@dataclass(frozen=True)
class Aid:
    """A first-aid step: gets the work going tonight, cures nothing."""

    do: str
    because: str
    needs: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    source: str = ""


@dataclass(frozen=True)
class Tick:
    """One step before the cut. `list`: warm-up | set-up | thin-work | six-faces.

    `place` orders the steps; those of the guided `card` follow it.
    """

    id: str
    list: str
    do: str
    because: str
    when: Condition
    cautions: tuple[str, ...] = ()
    source: str = ""
    place: tuple[str, int] = ("", 0)
    card: str = ""
