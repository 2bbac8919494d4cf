"""From a person's words for what was wrong to the causes they may mean."""

from __future__ import annotations

import math
from collections.abc import Sequence

from diagnose.book.complaints import NEAR, alike, telling
from diagnose.book.model import Book, Cause


def cause_named(words: str, book: Book) -> str:
    """The id of the cause of exactly this id (an old one too) or name; "" when there is none."""
    text = " ".join(words.split())
    own = book.renamed.get(text, text)
    if own in book.causes:
        return own
    return next((c.id for c in book.causes.values() if c.name.lower() == text.lower()), "")


def causes_meant(
    words: str, book: Book, first: Sequence[str] = (), most: int = 6
) -> tuple[str, ...]:
    """The causes nearest to a person's words, best first; those of `first` before the others.

    A word counts the more the fewer causes use it, and twice in a name.
    """
    mine = telling(_plain(words))
    names = {c.id: telling(_plain(f"{c.id} {c.name}")) for c in book.causes.values()}
    used = {c.id: names[c.id] | telling(_plain(_said(c))) for c in book.causes.values()}
    score = dict.fromkeys(book.causes, 0.0)
    for word in mine:
        users = {c for c, theirs in used.items() if any(alike(word, w) for w in theirs)}
        for cause in users:
            in_name = any(alike(word, w) for w in names[cause])
            score[cause] += (1.0 + in_name) * math.log(1.0 + len(used) / len(users))
    best = max(score.values(), default=0.0)
    found = [c for c in score if score[c] > 0.0 and score[c] >= NEAR * best]
    return tuple(sorted(found, key=lambda c: (c not in first, -score[c], c))[:most])


def _said(cause: Cause) -> str:
    return f"{cause.summary} {cause.fix.do}"


def _plain(text: str) -> str:
    return text.lower().replace("-", " ").replace("/", " ")
