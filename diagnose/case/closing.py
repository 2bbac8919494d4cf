"""How a case ended, read from its file."""

from __future__ import annotations

from diagnose.book.nodes import Items
from diagnose.book.records import Record
from diagnose.case.against_book import AgainstBook
from diagnose.case.entries import Closed


def closed_of(record: Record | None, against: AgainstBook) -> Closed | None:
    """How it was closed; None for an open case. Faults are noted."""
    if record is None:
        return None
    node = record.at("cured_by")
    nodes = node.items if isinstance(node, Items) else [node]
    book, names = against.book, record.texts("cured_by")
    causes = [
        against.id_of("cause", at, n, book.causes) for at, n in zip(nodes, names, strict=False)
    ]
    told = bool(names) or "something_new" in record
    if told == record.flag("not_cured"):
        what = "a closed case says what cured it" if not told else "it was cured, and was not"
        mend = "write cured_by: [cause], or something_new: words, or not_cured: yes"
        against.reading.fault(record.node, what, mend)
    return Closed(
        date=record.text("date"),
        cured_by=tuple(dict.fromkeys(c for c in causes if c)),
        something_new=record.text("something_new"),
        done=record.text("done"),
        minutes=record.values.get("minutes"),
        proved=record.text("proved"),
        note=record.text("note"),
        pictures=record.texts("pictures"),
    )
