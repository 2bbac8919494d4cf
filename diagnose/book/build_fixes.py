"""The fix and the examples of a cause."""

from __future__ import annotations

from diagnose.book.answers import AnswerError, read_answer
from diagnose.book.fields_causes import FIX_NEEDS
from diagnose.book.frozen import FrozenMap
from diagnose.book.model import Check, Example, Fix
from diagnose.book.nodes import Node, written
from diagnose.book.records import Record
from diagnose.book.shelf import Shelf


def fix(own: str, record: Record | None, shelf: Shelf, fixes: dict[str, Record]) -> Fix:
    """The fix of cause `own`: its own, or that of the cause it names in `same_as`."""
    other = record.text("same_as") if record else ""
    if record is not None and other:
        if set(record.nodes) > {"same_as"}:
            what = "a fix that is the same as another has no fields of its own"
            shelf.reading.fault(record.node, what, "keep 'same_as:' alone, or take it out")
        theirs = fixes.get(other)
        if theirs is not None and "same_as" in theirs:
            what = f"{other} borrows its fix as well"
            mend = f"name the cause that has it: {theirs.text('same_as')}"
            shelf.reading.fault(record.at("same_as"), what, mend)
        own, record = other, theirs
    elif record is not None:
        for name, mend in FIX_NEEDS.items():
            if name not in record.nodes and name not in record.mistyped:
                shelf.reading.fault(record.node, f"the fix has no '{name}:'", mend)
    return _fix(own, record) if record else Fix(own, "", 0.0, 0.0, 0.5, (), "")


def _fix(own: str, record: Record) -> Fix:
    minutes = record.group("minutes")
    return Fix(
        id=own,
        do=record.text("do"),
        minutes_first_time=minutes.number("first_time") if minutes else 0.0,
        minutes_practised=minutes.number("practised") if minutes else 0.0,
        cures=record.number("cures", 0.5),
        steps=record.texts("steps"),
        proof=record.text("proof"),
        needs=record.texts("needs"),
        tools=record.texts("tools"),
        changes=record.texts("changes"),
        call_someone=record.text("call_someone"),
        cards=record.texts("cards"),
    )


def example(record: Record, shelf: Shelf) -> Example:
    """An example; its answers are read as those of a case."""
    answers: dict[str, str] = {}
    for name, node in record.by_name("answers").items():
        check = shelf.checks.get(name)
        text = written(node)
        sound = check is not None and (check.kind != "number" or check.dimension)
        answers[name] = _answer(check, text, node, shelf) if check and sound else text
    if "first" not in record and "not_first" not in record:
        mend = "write 'first: ID' or 'not_first: ID'"
        shelf.reading.fault(record.node, "the example does not say what must come of it", mend)
    return Example(
        record.text("title"),
        record.texts("complaint"),
        FrozenMap(answers),
        record.text("first"),
        record.text("not_first"),
        record.node.where,
    )


def _answer(check: Check, text: str, node: Node, shelf: Shelf) -> str:
    try:
        return read_answer(check, text, numbered=False)
    except AnswerError as error:
        shelf.reading.fault(node, error.what, error.mend, error.near)
        return text
