"""Guided cards from their records."""

from __future__ import annotations

from diagnose.book.guided import CardStep, GuidedCard
from diagnose.book.records import Record
from diagnose.book.shelf import Shelf

BEHIND = "stand-aside-at-start"  # the care before every start


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
        experiment_for=record.texts("experiment_for"),
        see=record.texts("see"),
        never=record.texts("never"),
        replaces=record.texts("replaces"),
        where=record.node.where,
    )
    if "wheel-turning" in found.needs and not found.cautions:
        what = "this card turns the wheel and no step has a caution before it"
        shelf.reading.fault(record.at("steps"), what, "name the cares under 'cautions:' of a step")
    if found.is_experiment:
        _safe(found, record, shelf)
    elif found.see or found.never:
        node = record.at("see" if found.see else "never")
        mend = "name the mechanisms under 'experiment_for:', or take the line out"
        shelf.reading.fault(node, "only an experiment has 'see:' and 'never:'", mend)
    return found


def _safe(card: GuidedCard, record: Record, shelf: Shelf) -> None:
    """A lesson shows; it never opens a guard and says what must not be done."""
    fault = shelf.reading.fault
    if not card.see:
        fault(record.node, "an experiment has no 'see:'", "say what is seen, and what it shows")
    if not card.never:
        fault(record.node, "an experiment has no 'never:'", "say what must not be done")
    if "guard-open" in card.needs:
        mend = "find a way to show it with the guard shut, or leave it out"
        fault(record.at("needs"), "no experiment is made with the guard open", mend)
    if "wheel-turning" in card.needs and BEHIND not in card.cautions:
        mend = f"name {BEHIND} at the step that starts it"
        fault(record.at("steps"), "the wheel is started and nobody is told to stand aside", mend)


def _step(record: Record) -> CardStep:
    return CardStep(
        record.text("do"),
        record.text("why"),
        record.text("check_by"),
        record.texts("cautions"),
        record.text("source"),
    )
