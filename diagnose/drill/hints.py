"""Hints, each saying more than the last: a family, then a check, then why that check."""

from __future__ import annotations

from pathlib import PurePath

from diagnose.book.model import Book
from diagnose.drill.game import Game
from diagnose.drill.par import most_telling
from diagnose.drill.signs import reports_on, signs_of
from diagnose.reasoning.gates import safety_checks

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
    open_ = safety_checks(game.book, game.read.hazards, game.read.gathered)
    if open_ and not game.read.safe:
        return "First g, the safety questions. Then ask for a hint again."
    name = most_telling(game.book, game.drill, tuple(game.entries))
    if not name:
        return "You have seen enough. Ask yourself which cause shows all of it, and name it."
    check = game.book.checks[name]
    if game.hints == 1:
        return f"Ask this: {check.ask}"
    return f"Ask this: {check.ask}\nIt tells because {_because(game, name)}."


def _because(game: Game, name: str) -> str:
    """Why a check tells something here, the cause not named."""
    book, check = game.book, game.book.checks[name]
    signs = signs_of(book, check)
    links = [k for k in book.causes[game.drill.cause].shows if k.finding in signs]
    if links:
        return links[0].because.rstrip(".")
    named = {name, *(f for o in check.options for f in o.means), *check.settles}
    shifts = book.causes[game.drill.cause].more_likely_when
    hung = [s.because for s in shifts if named & set(s.when.facts)]
    if hung:
        return hung[0].rstrip(".")
    return "it looks at the cause itself" if reports_on(book, check) else "the odds hang on it"
