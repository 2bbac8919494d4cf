"""A case read as the product reads it, without the rules engine: a drill reads many."""

from __future__ import annotations

from diagnose.book.conditions import FactValue
from diagnose.book.model import Book
from diagnose.case.entries import Case
from diagnose.reasoning.facts import gather
from diagnose.reasoning.forward import deduce_in_turn
from diagnose.reasoning.gates import hazards
from diagnose.reasoning.network import all_facts, meanings, surest
from diagnose.reasoning.reason import Read


def read_quickly(book: Book, case: Case) -> Read:
    """The same as `reason.read_case`."""
    gathered = gather(case, book)
    told: dict[str, FactValue] = {n: t.value for n, t in gathered.told.items()}
    told |= surest(meanings(book, gathered))
    for symptom in case.complaint:
        told[symptom] = "yes"
    deduced = deduce_in_turn(book, told)
    facts = {**all_facts(gathered, deduced), **told}
    return Read(book, case, gathered, deduced, facts, hazards(book, gathered, deduced, facts))
