"""What is said to people beside the reasoning: cares before a step, and words of the trade."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from diagnose.book.model import Where


@dataclass(frozen=True)
class Caution:
    """A care before a step, and what happens to somebody who passes it over."""

    id: str
    say: str
    source: str
    where: Where | None = None
    because: str = ""


@dataclass(frozen=True)
class Term:
    """A word of the trade: what it means, why it matters, what it is taken for, where it leads."""

    id: str
    name: str
    means: str
    matters: str
    sources: tuple[str, ...]
    also: tuple[str, ...] = ()  # other words for the same thing
    not_the_same: tuple[str, ...] = ()  # what newcomers take it for, and the difference
    see: tuple[str, ...] = ()  # ids of anything in the book
    replaces: tuple[str, ...] = ()
    where: Where | None = None
