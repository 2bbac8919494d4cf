"""What the book says of one thing, under the same headings for every kind."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from diagnose.book.model import Book, Cause, Where
from diagnose.view.explain_card import (
    CARD_HEADINGS,
    NOT,
    PROOF,
    STEPS,
    TAKES,
    WHEN,
    StepView,
    about_card,
    bullet,
    card_steps,
)
from diagnose.view.explain_card import SOURCES as CARD_SOURCES
from diagnose.view.explain_check import about_caution, about_check
from diagnose.view.explain_parts import (
    ALIKE,
    CARE,
    DO,
    HEADINGS_OF_A_CAUSE,
    LESSON,
    NEAR,
    NEXT,
    SEE,
    SOURCES,
    SURE,
    WHERE,
    WHY,
    about_cause,
    about_finding,
    about_stop,
    about_symptom,
)
from diagnose.view.explain_trade import about_reading, about_term, about_word, readings, scales
from diagnose.view.explain_why import about_mechanism

HEADINGS = HEADINGS_OF_A_CAUSE

# What every entry of a kind has; a test holds the shipped knowledge to it.
ALWAYS: dict[str, tuple[str, ...]] = {
    "cause": HEADINGS,
    "symptom": HEADINGS,
    "mechanism": HEADINGS,
    "check": (SEE, WHY, SURE, DO, CARE, SOURCES),
    "caution": (CARE, WHY, WHERE, SOURCES),
    "stop": (SEE, WHY, SURE, DO, CARE, SOURCES),
    "card": (WHEN, NOT, TAKES, STEPS, PROOF, CARD_SOURCES),
    "finding": (SEE, SOURCES),
    "term": (SEE, WHY, SOURCES),
    "reading": (SEE, WHY, DO, SOURCES),
    "word": (SEE, SOURCES),
}
# The order in which the headings of a kind stand, with those that only some entries have.
ORDER: dict[str, tuple[str, ...]] = {
    "card": CARD_HEADINGS,
    "mechanism": (*HEADINGS[:-1], LESSON, SOURCES),
    "check": (*HEADINGS[:-2], NEAR, SOURCES),
    "caution": ALWAYS["caution"],
    "term": (SEE, WHY, ALIKE, NEXT, SOURCES),
}
Parts = Mapping[str, Iterable[str]]


@dataclass(frozen=True)
class Explanation:
    """One thing explained; sections with nothing to say are left out.

    `sections` follow `headings_of` the kind; `steps` are those of a card.
    """

    kind: str
    id: str
    name: str
    status: str
    sections: tuple[tuple[str, tuple[str, ...]], ...]
    where: Where | None
    steps: tuple[StepView, ...] = ()


_ABOUT: dict[str, Callable[[Book, str], Parts]] = {
    "cause": about_cause,
    "symptom": about_symptom,
    "mechanism": about_mechanism,
    "check": about_check,
    "stop": about_stop,
    "card": about_card,
    "finding": about_finding,
    "caution": about_caution,
    "term": about_term,
    "reading": about_reading,
    "word": about_word,
}


def headings_of(kind: str) -> tuple[str, ...]:
    """The headings of a kind in their order."""
    return ORDER.get(kind, HEADINGS)


def explain(book: Book, kind: str, name: str) -> Explanation:
    """Everything the book says of one id of a kind."""
    parts = _ABOUT[kind](book, name)
    known = [(h, tuple(line for line in parts.get(h, ()) if line)) for h in headings_of(kind)]
    sections = tuple((heading, lines) for heading, lines in known if lines)
    thing = shelves(book)[kind].get(name)
    label = str(getattr(thing, "name", "") or name)
    status = thing.status if isinstance(thing, Cause) else ""
    steps = card_steps(book, name) if kind == "card" else ()
    return Explanation(kind, name, label, status, sections, getattr(thing, "where", None), steps)


def shelves(book: Book) -> dict[str, Mapping[str, object]]:
    """Everything that can be explained, by kind and id; the first kind that has a name wins."""
    return {
        "cause": book.causes,
        "symptom": book.symptoms,
        "mechanism": book.mechanisms,
        "check": book.checks,
        "stop": book.stops,
        "card": book.cards,
        "finding": book.findings,
        "caution": book.cautions,
        "term": book.terms,
        "reading": readings(),
        "word": scales(book),
    }


def look_up(book: Book, words: str) -> list[tuple[str, str]]:
    """(kind, id) of what the words name: by id or old id, by name, or by what people call it.

    A word of the trade may name a check or a complaint as well; all of them are given.
    """
    from diagnose.book.complaints import symptoms_meant

    text = " ".join(words.split())
    name, low = book.renamed.get(text, text), text.lower()
    known = shelves(book)
    found = [(kind, name) for kind, shelf in known.items() if name in shelf][:1]
    found += [
        (kind, key)
        for kind, shelf in known.items()
        for key, thing in shelf.items()
        if (kind, key) not in found and low in _called(key, thing)
    ]
    return found or [("symptom", s) for s in symptoms_meant(text, book)]


def _called(key: str, thing: object) -> list[str]:
    """What a thing is called, in small letters: id, name, words of the trade for it."""
    said = [key.replace("-", " "), str(getattr(thing, "name", key))]
    said += [*getattr(thing, "also", ()), *getattr(thing, "in_words", ())]
    return [words.lower() for words in said]


def near_names(book: Book, words: str, most: int = 5) -> list[str]:
    """Ids that look like the words, or whose names do, nearest first."""
    from difflib import get_close_matches

    called = {
        said: key
        for shelf in shelves(book).values()
        for key, thing in shelf.items()
        for said in _called(key, thing)
    }
    wanted = " ".join(words.lower().replace("-", " ").split())
    close = [called[c] for c in get_close_matches(wanted, sorted(called), n=most, cutoff=0.5)]
    parts = {p for p in wanted.split() if len(p) > 3}
    close += sorted(key for said, key in called.items() if parts & set(said.split()))
    return list(dict.fromkeys(close))[:most]


def explanation_text(told: Explanation) -> str:
    """The explanation for a terminal."""
    from diagnose.view.folding import wrapped

    status = f", {told.status}" if told.status else ""
    lines = [told.name.upper(), f"({told.kind}{status}: {told.id})"]
    for heading, texts in told.sections:
        lines += ["", heading]
        in_steps = told.kind == "card" and heading == STEPS
        lines += [
            wrapped(t, 7 if in_steps else 4, bullet(t) if in_steps else "  - ") for t in texts
        ]
    if told.where is not None:
        lines += ["", f"From {told.where.file}:{told.where.line}"]
    return "\n".join(lines)
