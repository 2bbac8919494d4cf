"""The entries of a case file, each of its kind, corrections matched to what they replace."""

from __future__ import annotations

from diagnose.book.nodes import written
from diagnose.book.records import Record
from diagnose.case.against_book import AgainstBook
from diagnose.case.entries import UNASKED, Entry
from diagnose.case.fields import KINDS

HOW = ("said", "measured", "shop", UNASKED)
FIELDS_OF = {
    "answer": ("value", "how", "sure"),
    "correct": ("value", "how", "sure"),
    "tried": ("outcome",),
    "cleared": ("how",),
    "later": (),
}


def entries_of(rows: tuple[Record, ...], against: AgainstBook) -> tuple[Entry, ...]:
    """The entries in order; faults are noted and a faulty entry keeps its place in the count."""
    entries: list[Entry] = []
    for row in rows:
        entries.append(_entry(row, entries, against))
    return tuple(entries)


def _entry(row: Record, before: list[Entry], against: AgainstBook) -> Entry:
    kinds = [k for k in KINDS if k in row]
    if len(kinds) != 1:
        mend = f"write one of: {', '.join(KINDS)}"
        against.reading.fault(row.node, "an entry is exactly one thing", mend)
        return Entry("", "")
    kind = kinds[0]
    _only_its_fields(row, kind, against)
    if kind == "answer":
        return _answer(row, row.text("answer"), against)
    if kind == "correct":
        return _correct(row, before, against)
    if kind == "tried":
        return _tried(row, against)
    if kind == "cleared":
        book, node = against.book, row.at("cleared")
        stop = against.id_of("stop", node, row.text("cleared"), book.stops)
        _needed(row, "how", "say how it was cleared", against)
        return Entry("cleared", stop, row.text("how"), line=row.node.line)
    check = against.id_of("check", row.at("later"), row.text("later"), against.book.checks)
    return Entry("later", check, line=row.node.line)


def _only_its_fields(row: Record, kind: str, against: AgainstBook) -> None:
    for name in row.nodes:
        if name not in (kind, "note", *FIELDS_OF[kind]):
            what = f"'{name}:' does not belong to an entry of kind '{kind}'"
            against.reading.fault(row.at(name), what, "take it out")


def _needed(row: Record, name: str, mend: str, against: AgainstBook) -> bool:
    if name not in row.nodes:
        against.reading.fault(row.node, f"this entry has no '{name}:'", mend)
    return name in row


def _answer(row: Record, name: str, against: AgainstBook, replaces: int = 0) -> Entry:
    kind = "correct" if replaces else "answer"
    how, text = row.text("how") or "said", ""
    if how not in HOW:
        against.reading.not_among(row.at("how"), how, HOW)
    if _needed(row, "value", "write the answer", against):
        node = row.at("value")
        name, text = against.answer(row.at(kind), name, node, written(node))
    sure = row.text("sure") in ("", "yes")
    return Entry(kind, name, text, how, sure, "", replaces, row.node.line)


def _correct(row: Record, before: list[Entry], against: AgainstBook) -> Entry:
    told = row.text("correct")
    number = int(told) if told.isdecimal() else 0
    wrong = before[number - 1] if 1 <= number <= len(before) else None
    later = [n for n, e in enumerate(before, 1) if e.kind == "correct" and e.replaces == number]
    if wrong is None or wrong.kind not in ("answer", "correct"):
        what = f"there is no answer number {told} before this line"
        against.reading.fault(row.at("correct"), what, "count the entries from 1")
    elif later:
        what = f"entry {number} is already corrected by entry {later[0]}"
        against.reading.fault(row.at("correct"), what, f"write correct: {later[0]}")
    else:
        return _answer(row, wrong.name, against, number)
    return Entry("correct", "", replaces=number, line=row.node.line)


def _tried(row: Record, against: AgainstBook) -> Entry:
    book = against.book
    known = [*book.checks, *book.causes]
    name = against.id_of("check or cause", row.at("tried"), row.text("tried"), known)
    _needed(row, "outcome", "say what came of it: gone and stays, better, same ...", against)
    return Entry("tried", name, outcome=row.text("outcome"), line=row.node.line)
