"""Words of the trade, words of our scales, and calculations explained."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from diagnose.book.model import Book
from diagnose.physics.catalogue import Calculation, Input, Worked, calculations, worked_answers
from diagnose.view.explain_parts import ALIKE, DO, NEXT, SEE, SOURCES, WHY, Parts, label, sourced
from diagnose.view.result import percent


def about_term(book: Book, name: str) -> Parts:
    """A word of the trade."""
    term = book.terms[name]
    also = f"People also say: {', '.join(term.also)}." if term.also else ""
    return {
        SEE: [term.means, also],
        WHY: [term.matters],
        ALIKE: list(term.not_the_same),
        NEXT: [f"{label(book, n)}: diagnose explain {n}" for n in term.see],
        SOURCES: sourced(book, term.sources),
    }


def scales(book: Book) -> dict[str, str]:
    """The words of the scales and what each means."""
    words = book.words
    often = {w: f"about {percent(p)} of the time" for w, p in words.how_often.items()}
    common = {
        w: f"acts in about {percent(p)} of the complaints of its family"
        for w, p in words.how_common.items()
    }
    change = {w: f"multiplies the odds of a cause by {f:g}" for w, f in words.change.items()}
    return often | common | change


def about_word(book: Book, name: str) -> Parts:
    """A word of the scales."""
    return {SEE: [f"'{name}': {scales(book)[name]}"], SOURCES: ["our own scale (words.yaml)"]}


@cache
def readings() -> Mapping[str, Calculation | Worked]:
    """Every calculation and worked answer, by id."""
    each: tuple[Calculation | Worked, ...] = (*calculations(), *worked_answers())
    return {what.id: what for what in each}


def about_reading(book: Book, name: str) -> Parts:
    """A calculation: what it gives, where it ends, how it is asked for."""
    what = readings()[name]
    rules = [r for r in book.rules.values() if r.work_out and r.work_out.with_ == name]
    wants = [f"{i.name}: {i.help}{_usual(i)}" for i in what.inputs]
    return {
        SEE: [what.name, what.formula],
        WHY: [what.limits, *(f"It is used for: {r.name} ({r.because})" for r in rules)],
        DO: [f"diagnose calc {name} --help says how to ask for it. It wants:", *wants],
        SOURCES: [f"{what.source} ({what.standing})"],
    }


def _usual(given: object) -> str:
    usual = given.default if isinstance(given, Input) else None
    return f" (usually {usual})" if usual else ""
