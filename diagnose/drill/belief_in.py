"""How far the tool's own reasoning suspects one cause of a case, in natural log-odds."""

from __future__ import annotations

import math

from diagnose.book.model import Book
from diagnose.case.entries import Case
from diagnose.drill.quick import read_quickly
from diagnose.reasoning.belief import Belief, believe
from diagnose.reasoning.reason import Read
from diagnose.reasoning.trials import network_of

SUREST = 1.0 - 1e-9


def belief_of(book: Book, read: Read) -> Belief:
    """The belief of a case already read. Raises belief.Impossible."""
    network, _ = network_of(book, read.case.complaint, read.gathered, read.deduced)
    return believe(network)


def log_odds(belief: Belief, cause: str) -> float:
    """Log-odds that the cause acts on the complaint; a cause ruled out is as good as impossible."""
    ranked = belief.of(cause)
    chance = min(SUREST, max(1.0 - SUREST, ranked.acts if ranked is not None else 0.0))
    return math.log(chance / (1.0 - chance))


def suspicion(book: Book, case: Case, cause: str) -> float:
    """Log-odds of a cause in a case. Raises belief.Impossible."""
    return log_odds(belief_of(book, read_quickly(book, case)), cause)


_bare: list[tuple[Book, dict[str, Belief]]] = []


def bare_suspicion(book: Book, complaint: str, cause: str) -> float:
    """Log-odds of a cause when nothing but the complaint is known; kept for each complaint."""
    kept = next((found for owner, found in _bare if owner is book), None)
    if kept is None:
        kept = {}
        _bare.insert(0, (book, kept))
        del _bare[2:]
    if complaint not in kept:
        kept[complaint] = belief_of(book, read_quickly(book, Case("", (complaint,))))
    return log_odds(kept[complaint], cause)
