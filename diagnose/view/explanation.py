"""What the book says of one thing, under the same headings for every kind."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from diagnose.book.model import Book, Cause, Where
from diagnose.view.explain_card import (
    CARD_HEADINGS,
    STEPS,
    StepView,
    about_card,
    bullet,
    card_steps,
)
from diagnose.view.explain_parts import (
    about_cause,
    about_caution,
    about_check,
    about_finding,
    about_mechanism,
    about_stop,
    about_symptom,
    about_word,
    scales,
)

HEADINGS = (
    "What you see",
    "Why it happens",
    "How to be sure",
    "Do this",
    "Take care",
    "Known look-alikes",
    "Sources",
)
Parts = Mapping[str, Iterable[str]]


@dataclass(frozen=True)
class Explanation:
    """One thing explained; sections with nothing to say are left out.

    `sections` follow HEADINGS, those of a guided card CARD_HEADINGS; `steps` are those of a card.
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
    "word": about_word,
}


def explain(book: Book, kind: str, name: str) -> Explanation:
    """Everything the book says of one id of a kind."""
    parts = _ABOUT[kind](book, name)
    headings = CARD_HEADINGS if kind == "card" else HEADINGS
    known = [(h, tuple(line for line in parts.get(h, ()) if line)) for h in headings]
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
        "word": scales(book),
    }


def look_up(book: Book, words: str) -> list[tuple[str, str]]:
    """(kind, id) of what the words name: by id, old id, name, or a complaint in common words."""
    from diagnose.book.complaints import symptoms_meant

    text = " ".join(words.split())
    name = book.renamed.get(text, text)
    for kind, shelf in shelves(book).items():
        if name in shelf:
            return [(kind, name)]
    low = text.lower()
    found = [
        (kind, key)
        for kind, shelf in shelves(book).items()
        for key, thing in shelf.items()
        if low in (key.replace("-", " "), str(getattr(thing, "name", key)).lower())
    ]
    return found or [("symptom", s) for s in symptoms_meant(text, book)]


def near_names(book: Book, words: str, most: int = 5) -> list[str]:
    """Ids that look like the words, nearest first."""
    from difflib import get_close_matches

    ids = {key for shelf in shelves(book).values() for key in shelf}
    wanted = "-".join(words.lower().split())
    close = get_close_matches(wanted, sorted(ids), n=most, cutoff=0.5)
    parts = {p for p in wanted.split("-") if len(p) > 3}
    close += sorted(i for i in ids if parts & set(i.split("-")) and i not in close)
    return close[:most]


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
