"""Words of the trade from their records."""

from __future__ import annotations

from diagnose.book.glossary import Term
from diagnose.book.records import Record


def term(record: Record) -> Term:
    """A word with what it means and why it matters."""
    return Term(
        id=record.text("id"),
        name=record.text("name"),
        means=record.text("means"),
        matters=record.text("matters"),
        sources=record.texts("sources"),
        also=record.texts("also"),
        not_the_same=record.texts("not_the_same"),
        see=record.texts("see"),
        replaces=record.texts("replaces"),
        where=record.node.where,
    )
