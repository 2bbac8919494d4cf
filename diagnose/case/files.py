"""Case files: read with every fault at once, written whole."""

from __future__ import annotations

from pathlib import Path

from diagnose.book.model import Book
from diagnose.book.nodes import Node, Page, Refused, Table, Text, written
from diagnose.book.pages import read_page
from diagnose.book.problems import BookError, Problem
from diagnose.book.records import Record
from diagnose.book.shapes import Reading
from diagnose.book.writing import write_whole
from diagnose.book.yaml_nodes import compose
from diagnose.case.against_book import AgainstBook
from diagnose.case.closing import closed_of
from diagnose.case.entries import Case, Entry
from diagnose.case.fields import CASE, SCHEMA
from diagnose.case.planned_fields import planned_of
from diagnose.case.read_entries import entries_of


def load_case(path: Path, book: Book) -> Case:
    """The case in a file, its words checked against the book; old ids become the new ones.

    Raises BookError with all its faults: form, unknown checks, impossible answers, numbers
    without a unit, a complaint in no known words, a form newer than this version reads.
    """
    try:
        page = read_page(Path(path))
    except Refused as refused:
        raise BookError(refused.problems) from None
    return case_of(page, book, Path(path).parent)


def case_of(page: Page, book: Book, folder: Path | None = None) -> Case:
    """The case written on a page, for text that comes from elsewhere than a file.

    Files of readings that it names are looked for in `folder`, or where the program runs.
    """
    reading = Reading()
    try:
        root, problems = compose(page)
    except Refused as refused:
        raise BookError(refused.problems) from None
    reading.problems += problems
    if root is None:
        mend = "write 'title:', 'complaint:' and 'answers:' in it"
        raise BookError([Problem(page.name, 0, 0, "this file is empty", mend)])
    _not_newer(root)
    record = CASE.read(root, reading)
    case = _case(record, page.name, AgainstBook(book, reading, folder)) if record else None
    if reading.problems or case is None:
        raise BookError(reading.problems)
    return case


def _not_newer(root: Node) -> None:
    node = root.get("schema") if isinstance(root, Table) else None
    if node is None or (isinstance(node, Text) and node.value.strip() == str(SCHEMA)):
        return
    told = node.value if isinstance(node, Text) else "?"
    if told.isdecimal() and int(told) > SCHEMA:
        what = f"this case was written by a newer version (schema {told}; this one reads {SCHEMA})"
        raise BookError([node.problem(what, "bring diagnose up to date; nothing was changed")])
    raise BookError([node.problem(f"'{told}' is no known form of case", f"write {SCHEMA}")])


def _case(record: Record, name: str, against: AgainstBook) -> Case:
    given: dict[str, str] = {}
    _complains(record, against.reading)
    machine = _card(record.raw("machine"), given, against)
    wheel = _card(record.raw("wheel"), given, against)
    given |= {check: text for check, text, _ in _pairs(record.nodes.get("facts"), against)}
    return Case(
        title=record.text("title"),
        complaint=against.complaint(record) if "complaint" in record.nodes else (),
        entries=_entries(record, against),
        machine=machine,
        wheel=wheel,
        part=record.text("part"),
        given=given,
        minutes_to_spare=record.values.get("minutes_to_spare"),
        tools=record.texts("tools") if "tools" in record else None,
        practised=record.flag("practised"),
        note=record.text("note"),
        path=name,
        now={key: str(text) for key, text in record.by_name("now").items()},
        closed=closed_of(record.group("closed"), against),
        planned=planned_of(record.group("planned")),
    )


def _complains(record: Record, reading: Reading) -> None:
    """A case has a complaint, or it is a planned job."""
    if not {"complaint", "planned"} & (record.nodes.keys() | record.mistyped):
        mend = "say what is wrong with the part, or write planned: {finish: 0.4 um} before the cut"
        reading.fault(record.node, "a case has no 'complaint:'", mend)


def _card(node: Node | None, given: dict[str, str], against: AgainstBook) -> str:
    if isinstance(node, Table):
        given |= {check: text for check, text, _ in _pairs(node, against)}
        return ""
    if node is not None and not isinstance(node, Text):
        mend = "write the id of a card, or {check: answer}"
        against.reading.fault(node, "this is neither a card nor facts", mend)
    return node.value.strip() if isinstance(node, Text) else ""


def _pairs(node: Node | None, against: AgainstBook) -> list[tuple[str, str, int]]:
    """(check, answer, line) of each row of {check: answer}."""
    if not isinstance(node, Table):
        return []
    return [
        (*against.answer(key, key.value, value, written(value)), key.line)
        for key, value in node.rows.values()
    ]


def _entries(record: Record, against: AgainstBook) -> tuple[Entry, ...]:
    short = record.nodes.get("answers")
    if short is None:
        return entries_of(record.groups("entries"), against)
    if "entries" in record.nodes:
        what = "a case has either 'answers:' or 'entries:'"
        against.reading.fault(short, what, "move the answers into the entries")
    pairs = _pairs(short, against)
    return tuple(Entry("answer", check, text, line=line) for check, text, line in pairs)


def save_case(case: Case, path: Path) -> None:
    """Write the case so that `load_case` gives it back; the file is never half written.

    Raises BookError when the place cannot be written.
    """
    from diagnose.case.case_text import case_text

    write_whole(Path(path), case_text(case))
