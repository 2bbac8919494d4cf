"""Faults that only show when the whole book is together: rings, claims made twice, examples."""

from __future__ import annotations

from diagnose.book.answers import AnswerError, read_answer
from diagnose.book.model import Book
from diagnose.book.records import Record
from diagnose.book.rings import rings
from diagnose.book.shelf import Shelf


def look(book: Book, shelf: Shelf) -> None:
    """Note rings among mechanisms and sharper signs, doubly claimed checks, bad examples."""
    _mechanism_rings(book, shelf)
    _sharper(book, shelf)
    _claims(shelf)
    _number_examples(book, shelf)


def _mechanism_rings(book: Book, shelf: Shelf) -> None:
    leads_to = {m.id: [a.to for a in m.leads_to] for m in book.mechanisms.values()}
    records = dict(shelf.named("mechanism"))
    for ring in rings(leads_to):
        chain = " -> ".join((*ring, ring[0]))
        what = f"these mechanisms lead round in a ring: {chain}"
        shelf.reading.fault(records[ring[0]].at("leads_to"), what, "take one step out")


def _sharper(book: Book, shelf: Shelf) -> None:
    blunter = {f.id: [f.sharpens] for f in book.findings.values() if f.sharpens}
    records: dict[str, Record] = {**dict(shelf.named("symptom")), **dict(shelf.named("finding"))}
    for name, (other,) in blunter.items():
        node = records[name].at("sharpens")
        pair = (book.findings[name], book.findings.get(other))
        if any(f is not None and f.kind != "sign" for f in pair):
            what = "only a sign sharpens another sign; one of the two is a circumstance"
            shelf.reading.fault(node, what, "take 'sharpens:' out")
    for ring in rings(blunter):
        what = f"these sharpen each other in a ring: {' -> '.join((*ring, ring[0]))}"
        shelf.reading.fault(records[ring[0]].at("sharpens"), what, "the blunter one has none")


def _claims(shelf: Shelf) -> None:
    claimed: dict[str, str] = {}
    for name, record in shelf.named("cause"):
        for row in record.groups("be_sure"):
            check = row.text("check")
            first = claimed.setdefault(check, name)
            if check and first != name:
                what = f"{check} already reports {first}; a check reports one cause only"
                mend = "make its answer a finding that both causes show"
                shelf.reading.fault(row.at("check"), what, mend)


def _number_examples(book: Book, shelf: Shelf) -> None:
    for name, record in shelf.named("check"):
        check = book.checks[name]
        if check.kind != "number" or not check.example or not check.dimension:
            continue
        try:
            read_answer(check, check.example)
        except AnswerError as error:
            shelf.reading.fault(record.at("example"), error.what, "give one that can be used")
