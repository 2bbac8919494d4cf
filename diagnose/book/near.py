"""The nearest known word to a mistyped one."""

from __future__ import annotations

from collections.abc import Iterable


def nearest(word: str, known: Iterable[str]) -> str:
    """The known word most like `word`, or "" when none is near enough to offer.

    Words of an id in another order count as near: `wheel-loose` finds `loose-wheel`.
    """
    choices = list(dict.fromkeys(known))
    if word in choices:
        return word
    from difflib import get_close_matches

    close = get_close_matches(word, choices, n=1, cutoff=0.6)
    if close:
        return close[0]
    parts = frozenset(word.split("-"))
    for choice in choices:
        if frozenset(choice.split("-")) == parts:
            return choice
    return ""


def listed(words: Iterable[str], limit: int = 12) -> str:
    """The words with commas, shortened with "and N more" beyond `limit`."""
    names = list(words)
    if len(names) <= limit:
        return ", ".join(names)
    return ", ".join(names[:limit]) + f" and {len(names) - limit} more"
