"""Sources, cautions, findings, symptoms and mechanisms from their records."""

from __future__ import annotations

from diagnose.book.advice import PartAdvice
from diagnose.book.glossary import Caution
from diagnose.book.model import (
    NO,
    YES,
    Arrow,
    Finding,
    Mechanism,
    Source,
    Symptom,
    Value,
)
from diagnose.book.records import Record
from diagnose.book.shapes import Reading
from diagnose.book.shelf import Shelf, aid

ALMOST_NEVER = 0.03  # stands in while the field is missing, so that reading can go on


def source(record: Record) -> Source:
    """A source with its standing."""
    r = record
    return Source(r.text("id"), r.text("title"), r.text("standing"), r.text("note"), r.node.where)


def caution(record: Record) -> Caution:
    """A care before a step."""
    return Caution(
        record.text("id"),
        record.text("say"),
        record.text("source"),
        record.node.where,
        record.text("because"),
    )


def finding(record: Record, reading: Reading) -> Finding:
    """A sign or circumstance, its backgrounds checked."""
    kind = record.text("kind") or "sign"
    if "values" in record:
        values = _values(record, kind, reading)
    else:
        values = _yes_no(record, kind, reading)
    return Finding(
        record.text("id"),
        record.text("name"),
        kind,
        values,
        record.text("sharpens") or None,
        record.text("source"),
        record.node.where,
    )


def _yes_no(record: Record, kind: str, reading: Reading) -> tuple[Value, ...]:
    without = record.number("without_cause") or None
    if kind == "sign" and "without_cause" not in record.nodes:
        mend = "say how often it shows when nothing is wrong: rarely, say"
        reading.fault(record.node, "a yes/no sign has no 'without_cause:'", mend)
        without = ALMOST_NEVER
    if kind == "circumstance" and "without_cause" in record:
        _no_background(record, reading)
        without = None
    return (Value(NO, NO), Value(YES, record.text("name"), without))


def _no_background(record: Record, reading: Reading) -> None:
    what = "a circumstance has no 'without_cause:': causes do not make it"
    reading.fault(record.at("without_cause"), what, "take the line out, or make it a sign")


def _values(record: Record, kind: str, reading: Reading) -> tuple[Value, ...]:
    rows = record.groups("values")
    if "without_cause" in record:
        what = "with 'values:' each value has its own 'without_cause:'"
        reading.fault(record.at("without_cause"), what, "move it to the values it belongs to")
    if len(rows) < 2:
        mend = "write the first as nothing of the kind, or leave 'values:' out for yes/no"
        reading.fault(record.at("values"), "a finding needs at least two values", mend)
    values: list[Value] = []
    for index, row in enumerate(rows):
        if any(v.id == row.text("id") for v in values):
            reading.fault(row.at("id"), f"the value '{row.text('id')}' stands here twice")
            continue
        without = _background(row, index, kind, reading)
        values.append(Value(row.text("id"), row.text("name"), without))
    if sum(v.without_cause or 0.0 for v in values) >= 1.0:
        what = "the values' 'without_cause:' come to 1 or more: nothing is left for the first"
        reading.fault(record.at("values"), what, "use words for less often")
    return tuple(values)


def _background(row: Record, index: int, kind: str, reading: Reading) -> float | None:
    there = "without_cause" in row
    if kind == "circumstance":
        if there:
            _no_background(row, reading)
        return None
    if index == 0:
        if there:
            what = "the first value is 'nothing of the kind' and has no 'without_cause:'"
            reading.fault(row.at("without_cause"), what, "what the others leave is its share")
        return None
    if "without_cause" not in row.nodes:
        what = f"the value '{row.text('id')}' of a sign has no 'without_cause:'"
        reading.fault(row.node, what, "say how often it shows when nothing is wrong")
    return row.number("without_cause", ALMOST_NEVER)


def symptom(record: Record, shelf: Shelf) -> Symptom:
    """What is wrong with the work."""
    looks = record.group("looks")
    return Symptom(
        id=record.text("id"),
        name=record.text("name"),
        family=record.text("family"),
        looks_like=record.text("looks_like"),
        in_words=record.texts("in_words"),
        without_cause=record.number("without_cause", ALMOST_NEVER),
        first_questions=record.texts("first_questions"),
        the_part=tuple(_advice(r, shelf) for r in record.groups("the_part")),
        first_aid=tuple(aid(r) for r in record.groups("first_aid")),
        sources=record.texts("sources"),
        cards=record.texts("cards"),
        runs=looks.text("runs") if looks else "",
        spacing=looks.text("spacing") if looks else "",
        regular=looks.text("regular") if looks else "",
        sketch=record.text("sketch"),
        sharpens=record.text("sharpens") or None,
        replaces=record.texts("replaces"),
        where=record.node.where,
    )


def _advice(record: Record, shelf: Shelf) -> PartAdvice:
    when = shelf.condition(record, "when")
    return PartAdvice(when, record.text("do"), record.text("say"), record.text("source"))


def arrow(record: Record) -> Arrow:
    """One step of cause and effect."""
    return Arrow(record.text("to"), record.text("because"), record.text("source"))


def mechanism(record: Record) -> Mechanism:
    """A step between cause and symptom."""
    return Mechanism(
        record.text("id"),
        record.text("name"),
        record.text("explain"),
        tuple(arrow(r) for r in record.groups("leads_to")),
        record.text("source"),
        record.node.where,
    )
