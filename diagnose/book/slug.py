"""An id made of a person's words."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Container

SMALL_WORDS = frozenset(
    ("a", "an", "the", "of", "on", "in", "at", "to", "and", "is", "was", "by", "it", "its", "with")
)


def slug(words: str, most: int = 6) -> str:
    """Kebab-case of the first words: "The belt slips, again" is `belt-slips-again`.

    "" when no letter or digit is left.
    """
    plain = unicodedata.normalize("NFKD", words.lower()).encode("ascii", "ignore").decode()
    parts = re.findall(r"[a-z0-9]+", plain.replace("'", ""))
    kept = [p for p in parts if p not in SMALL_WORDS] or parts
    return "-".join(kept[:most])


def free_slug(words: str, taken: Container[str], otherwise: str) -> str:
    """An id of the words that is not taken; of `otherwise` when the words give none."""
    return free_id(slug(words) or otherwise, taken)


def free_id(base: str, taken: Container[str]) -> str:
    """The id, numbered when it is taken."""
    number, found = 1, base
    while found in taken:
        number += 1
        found = f"{base}-{number}"
    return found
