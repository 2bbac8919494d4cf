"""From what a learner types to the check or the cause that is meant."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from diagnose.book.model import Book
from diagnose.book.near import nearest

MOST = 6
SMALL = frozenset(
    ("a", "an", "the", "of", "on", "in", "at", "to", "and", "is", "was", "it", "its", "with", "do",
     "does", "how", "what", "look", "ask")
)  # fmt: skip


def check_named(book: Book, words: str) -> str:
    """The check of just this id or name; "" when there is none."""
    plain = _plain(_words(words))
    named = [c.id for c in book.checks.values() if plain and plain in _text(c.id, c.name)]
    return named[0] if len(named) == 1 else ""


def checks_meant(book: Book, words: str, open_: Iterable[str]) -> tuple[str, ...]:
    """Ids of the checks the words fit best among the open ones; none when none fits."""
    texts = {n: _text(n, book.checks[n].name, book.checks[n].ask) for n in open_}
    return _meant(words, texts)


def causes_meant(book: Book, words: str, open_: Iterable[str]) -> tuple[str, ...]:
    """Ids of the causes the words fit best among the open ones; none when none fits."""
    texts = {n: _text(n, book.causes[n].name, book.causes[n].fix.do) for n in open_}
    return _meant(words, texts)


def _text(*parts: str) -> tuple[str, ...]:
    return tuple(_plain(_words(p)) for p in parts)


def _words(text: str) -> list[str]:
    return re.findall(r"[a-z0-9]+", text.lower())


def _plain(words: list[str]) -> str:
    return " ".join([w for w in words if w not in SMALL] or words)


def _meant(words: str, texts: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    wanted = _words(words)
    plain = _plain(wanted)
    exact = [n for n, parts in texts.items() if plain in parts[:2]]
    if exact or not wanted:
        return tuple(exact)
    telling = [w for w in wanted if w not in SMALL] or wanted
    scores = {n: _fit(telling, parts) for n, parts in texts.items()}
    best = max(scores.values(), default=0.0)
    if best <= 0.0:
        near = nearest("-".join(wanted), texts)
        return (near,) if near else ()
    return tuple(n for n in sorted(texts) if scores[n] == best)[:MOST]


def _fit(wanted: list[str], parts: tuple[str, ...]) -> float:
    """How many of the words stand in the text, those of the name counting double."""
    total = 0.0
    for word in wanted:
        for weight, part in zip((2.0, 2.0, 1.0), parts, strict=True):
            if any(w.startswith(word) or (len(w) > 3 and word.startswith(w)) for w in part.split()):
                total += weight
                break
    return total
