"""Hints, each saying more than the last: a family, then a check, then why that check."""

from __future__ import annotations

from pathlib import PurePath

from diagnose.book.model import Book
from diagnose.drill.game import Game
from diagnose.reasoning.belief import Impossible
from diagnose.reasoning.policy import Step
from diagnose.reasoning.reason import Reasoned, reason_from

FAMILIES = {
    "wheel": "the wheel itself",
    "dressing": "how the wheel is dressed",
    "machine": "the machine: spindle, ways, head",
    "drive": "what drives wheel and table",
    "holding": "how the part is held",
    "material": "the metal of the part",
    "feeds": "depth, crossfeed and table speed",
    "coolant": "the coolant",
    "measuring": "how it was measured",
    "hand": "what a hand does at the machine",
    "surroundings": "what stands round the machine",
    "heat": "warmth",
}


def family_of(book: Book, cause: str) -> str:
    """The family of a cause: the folder its file lies in."""
    where = book.causes[cause].where
    return PurePath(where.file.replace("\\", "/")).parent.name if where else ""


def family_words(family: str) -> str:
    """A family as one would say it."""
    return FAMILIES.get(family, family.replace("-", " ") or "somewhere else")


def next_hint(game: Game) -> str:
    """The text of the next hint."""
    if game.hints == 0:
        return f"Look at {family_words(family_of(game.book, game.drill.cause))}."
    reasoned = _reasoned(game)
    step = reasoned.step if reasoned is not None else None
    if reasoned is None or step is None or step.kind not in ("ask", "safety"):
        return "You have seen enough. Ask yourself which cause shows all of it, and name it."
    check = game.book.checks[step.name]
    if game.hints == 1 or step.kind == "safety":
        return f"Ask this: {check.ask}"
    return f"{check.ask}\n{_why(reasoned, step)}"


def _why(reasoned: Reasoned, step: Step) -> str:
    from diagnose.view.question import why_text

    return why_text(reasoned, reasoned.read.book.checks[step.name])


def _reasoned(game: Game) -> Reasoned | None:
    try:
        return reason_from(game.read)
    except Impossible:
        return None
