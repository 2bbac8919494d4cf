"""What is ticked off before the cut, from its records."""

from __future__ import annotations

from diagnose.book.advice import Tick
from diagnose.book.records import Record
from diagnose.book.shelf import Shelf


def tick(record: Record, shelf: Shelf) -> Tick:
    """One step of a list, its place in the file kept."""
    return Tick(
        record.text("id"),
        record.text("list"),
        record.text("do"),
        record.text("because"),
        shelf.condition(record, "when"),
        record.texts("cautions"),
        record.text("source"),
        (record.node.page.name, record.node.line),
        record.text("card"),
    )
