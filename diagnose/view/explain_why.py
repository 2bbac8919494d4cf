"""A mechanism explained: what it does, what it comes from, how it is found and mended."""

from __future__ import annotations

from collections import Counter

from diagnose.book.guided import GuidedCard
from diagnose.book.model import Book, Cause, Mechanism
from diagnose.reasoning.graph import causes_through
from diagnose.view.explain_parts import (
    ALIKE,
    CARE,
    DO,
    LESSON,
    NOTHING_TURNS,
    SEE,
    SOURCES,
    SURE,
    WHY,
    Parts,
    asks,
    cautions,
    label,
    settling,
    sourced,
)

MOST = 6  # lines of a kind: what is worth knowing at once


def about_mechanism(book: Book, name: str) -> Parts:
    """A step between cause and symptom."""
    mechanism = book.mechanisms[name]
    causes = [book.causes[c] for c in causes_through(book, name)]
    before = [m.name for m in book.mechanisms.values() if any(a.to == name for a in m.leads_to)]
    direct = [c.name for c in causes if any(a.to == name for a in c.leads_through)]
    cares = Counter(n for c in causes for n in c.cautions)
    return {
        SEE: [f"{label(book, a.to)}: {a.because}" for a in mechanism.leads_to],
        WHY: [mechanism.explain, *(f"It comes from: {n}" for n in (*before, *direct))],
        SURE: asks(settling(book, _telling(book, causes))[:MOST]),
        DO: [f"{c.name}: {c.fix.do}" for c in causes][: 2 * MOST],
        CARE: cautions(book, [n for n, _ in cares.most_common(MOST)]) or [NOTHING_TURNS],
        ALIKE: _alike(book, mechanism),
        LESSON: [
            f"{card.name}: diagnose explain {card.id}" for card in experiments_for(book, name)
        ],
        SOURCES: sourced(book, [mechanism.source, *(a.source for a in mechanism.leads_to)]),
    }


def experiments_for(book: Book, mechanism: str) -> list[GuidedCard]:
    """The experiments that show a mechanism."""
    return [c for c in book.cards.values() if mechanism in c.experiment_for]


def _telling(book: Book, causes: list[Cause]) -> list[str]:
    """The signs that the causes behind it show most, complaints left out."""
    told: dict[str, float] = {}
    for cause in causes:
        for link in cause.shows:
            if link.finding not in book.symptoms:
                told[link.finding] = told.get(link.finding, 0.0) + link.how_often
    return sorted(told, key=lambda finding: (-told[finding], finding))[:MOST]


def _alike(book: Book, mechanism: Mechanism) -> list[str]:
    """Other mechanisms that lead straight to the same things, then those of the same causes;
    those that share most first."""
    ends, causes = {a.to for a in mechanism.leads_to}, _entering(book, mechanism.id)
    others = [m for m in book.mechanisms.values() if m.id != mechanism.id]
    same_end = {m.name: len(ends & {a.to for a in m.leads_to}) for m in others}
    same_cause = {m.name: len(causes & _entering(book, m.id)) for m in others}
    return (_most(same_end) or _most(same_cause))[:MOST]


def _entering(book: Book, mechanism: str) -> set[str]:
    """Causes and mechanisms that lead straight to a mechanism."""
    before = {c.id for c in book.causes.values() if any(a.to == mechanism for a in c.leads_through)}
    return before | {
        m.id for m in book.mechanisms.values() if any(a.to == mechanism for a in m.leads_to)
    }


def _most(shared: dict[str, int]) -> list[str]:
    return sorted((n for n in shared if shared[n]), key=lambda n: (-shared[n], n))
