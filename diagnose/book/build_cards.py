"""Guided cards from their records."""

from __future__ import annotations

from diagnose.book.guided import CardStep, GuidedCard
from diagnose.book.records import Record
from diagnose.book.shelf import Shelf


def card(record: Record, shelf: Shelf) -> GuidedCard:
    """A card with its steps; one that turns the wheel must carry a caution that says so."""
    minutes = record.group("minutes")
    found = GuidedCard(
        id=record.text("id"),
        name=record.text("name"),
        use_when=record.texts("use_when"),
        not_when=record.texts("not_when"),
        minutes_first_time=minutes.number("first_time") if minutes else 0.0,
        minutes_practised=minutes.number("practised") if minutes else 0.0,
        steps=tuple(_step(r) for r in record.groups("steps")),
        proof=record.text("proof"),
        sources=record.texts("sources"),
        tools=record.texts("tools"),
        needs=record.texts("needs"),
        replaces=record.texts("replaces"),
        where=record.node.where,
    )
    if "wheel-turning" in found.needs and not found.cautions:
        what = "this card turns the wheel and no step has a caution before it"
        shelf.reading.fault(record.at("steps"), what, "name the cares under 'cautions:' of a step")
    return found


def _step(record: Record) -> CardStep:
    return CardStep(
        record.text("do"),
        record.text("why"),
        record.text("check_by"),
        record.texts("cautions"),
        record.text("source"),
    )
