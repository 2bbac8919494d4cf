"""How much the book holds, and on what it stands."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from diagnose.book.model import Book

STANDINGS = ("confirmed", "from memory", "common practice")
NO_SOURCE = "no source given"


def by_kind(book: Book) -> dict[str, int]:
    """Number of entries of each kind, and of what they are made of."""
    signs = [f for f in book.findings.values() if f.kind == "sign"]
    return {
        "symptoms": len(book.symptoms),
        "causes": len(book.causes),
        "checks": len(book.checks),
        "signs (symptoms among them)": len(signs),
        "circumstances": len(book.findings) - len(signs),
        "rules": len(book.rules),
        "mechanisms": len(book.mechanisms),
        "stops and holds": len(book.stops),
        "cautions": len(book.cautions),
        "guided cards": len(book.cards),
        "words of the trade": len(book.terms),
        "sources": len(book.sources),
        "links from cause to sign": sum(len(c.shows) for c in book.causes.values()),
        "examples": sum(len(c.examples) for c in book.causes.values()),
        "fixes": len({c.fix.id for c in book.causes.values()}),
    }


def by_standing(book: Book) -> dict[str, dict[str, int]]:
    """For links, ranges and fixes: how many stand on a source of each standing."""
    numbers = [c for c in book.checks.values() if c.kind == "number"]
    owners = [c for c in book.causes.values() if c.fix.id == c.id]
    return {
        "Links": _count(book, (link.source for c in book.causes.values() for link in c.shows)),
        "Ranges of readings": _count(book, (check.source for check in numbers)),
        "Rules": _count(book, (rule.source for rule in book.rules.values())),
        "Stops and holds": _count(book, (stop.source for stop in book.stops.values())),
        "Steps of guided cards": _count(
            book, (step.source for card in book.cards.values() for step in card.steps)
        ),
        "Fixes (best source of their cause)": _count(
            book, (_best(book, cause.sources) for cause in owners)
        ),
    }


def _best(book: Book, sources: Iterable[str]) -> str:
    known = [s for s in sources if s in book.sources]
    return min(known, key=lambda s: STANDINGS.index(book.sources[s].standing), default="")


def _count(book: Book, sources: Iterable[str]) -> dict[str, int]:
    found = Counter(book.sources[s].standing if s in book.sources else NO_SOURCE for s in sources)
    return {name: found[name] for name in (*STANDINGS, NO_SOURCE) if found[name]}
