"""A day as it is written in a file: 2026-03-14."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

from diagnose.book.nodes import Node
from diagnose.book.shapes import Reading, Schema, plain

MEND = "write year-month-day: 2026-03-14"


def day_of(text: str) -> datetime.date | None:
    """The day, or None when the text is none."""
    try:
        return datetime.date.fromisoformat(text.strip())
    except ValueError:
        return None


@dataclass(frozen=True)
class Day:
    """A day, kept as year-month-day."""

    def read(self, node: Node, reading: Reading) -> str | None:
        word = plain(node, reading, "a day")
        if word is None:
            return None
        day = day_of(word)
        if day is None:
            reading.fault(node, f"'{word}' is no day", MEND)
            return None
        return day.isoformat()

    def schema(self) -> Schema:
        return {"type": "string", "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"}
