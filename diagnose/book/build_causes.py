"""Causes from their records; their fixes and examples in `build_fixes`."""

from __future__ import annotations

from diagnose.book.build_fixes import example, fix
from diagnose.book.build_signs import arrow
from diagnose.book.model import YES, Cause, Confirm, Example, Gate, Link, Shift
from diagnose.book.records import Record
from diagnose.book.shelf import Shelf, aid
from diagnose.book.strengths import NotAbove, TooMuch, net_strengths


def cause(record: Record, shelf: Shelf, fixes: dict[str, Record]) -> Cause:
    """A cause with its links, shifts, gates, fix and examples."""
    own = record.text("id")
    if own in record.texts("look_alikes"):
        shelf.reading.fault(record.at("look_alikes"), f"{own} is named as its own look-alike")
    return Cause(
        id=own,
        name=record.text("name"),
        summary=record.text("summary"),
        status=record.text("status"),
        prior=record.number("how_common", 0.02),
        how_common=record.word("how_common"),
        shows=_links(record, shelf),
        leads_through=tuple(arrow(r) for r in record.groups("leads_through")),
        fix=fix(own, record.group("fix"), shelf, fixes),
        cautions=record.texts("cautions"),
        look_alikes=record.texts("look_alikes"),
        sources=record.texts("sources"),
        examples=_examples(record, shelf),
        possible_when=tuple(_gate(r, shelf) for r in record.groups("possible_when")),
        more_likely_when=tuple(_shift(r, shelf) for r in record.groups("more_likely_when")),
        set_by=record.text("set_by"),
        be_sure=tuple(_confirm(r, shelf) for r in record.groups("be_sure")),
        first_aid=tuple(aid(r) for r in record.groups("first_aid")),
        replaces=record.texts("replaces"),
        where=record.node.where,
    )


def _gate(record: Record, shelf: Shelf) -> Gate:
    return Gate(shelf.condition(record, "when"), record.text("because"))


def _shift(record: Record, shelf: Shelf) -> Shift:
    return Shift(
        shelf.condition(record, "when"),
        record.number("change", 1.0),
        record.word("change"),
        record.text("because"),
        record.text("source"),
    )


def _confirm(record: Record, shelf: Shelf) -> Confirm:
    check, answer = shelf.checks.get(record.text("check")), record.text("answer")
    if check is not None and answer and answer not in check.by_option:
        what = f"{check.id} has no answer '{answer}'"
        shelf.reading.not_among(record.at("answer"), answer, check.by_option, what)
    there, apart = record.number("right_when_there", 0.5), record.number("right_when_not", 0.5)
    if {"right_when_there", "right_when_not"} <= set(record.values) and there + apart <= 1.0:
        what = "this answer would come no more often with the cause than without it"
        shelf.reading.fault(record.node, what, "use words for more often, or leave the check out")
    return Confirm(record.text("check"), answer, there, apart)


def _links(record: Record, shelf: Shelf) -> tuple[Link, ...]:
    links: list[Link] = []
    rows: dict[tuple[str, str], Record] = {}
    for row in record.groups("shows"):
        link = _link(row, shelf)
        if link is None:
            continue
        first = rows.get((link.finding, link.value))
        if first is not None:
            what = f"{link.finding} is shown here and on line {first.node.line}"
            shelf.reading.fault(row.node, what, "keep one of the two")
            continue
        rows[link.finding, link.value] = row
        links.append(link)
    for finding in dict.fromkeys(link.finding for link in links):
        _strong_enough(finding, links, rows, shelf)
    return tuple(links)


def _link(row: Record, shelf: Shelf) -> Link | None:
    finding = shelf.findings.get(row.text("finding"))
    if finding is None or "how_often" not in row:
        return None
    if finding.kind == "circumstance":
        what = f"{finding.id} is a circumstance: it was so before, the cause does not make it"
        shelf.reading.fault(row.at("finding"), what, "write it under 'more_likely_when:'")
        return None
    value = row.text("is") or YES
    if not shelf.value_of(finding.id, value, row.at("is") if "is" in row else row.at("finding")):
        return None
    if value == finding.value_ids[0]:
        what = f"'{value}' is nothing of the kind: a cause cannot show it"
        shelf.reading.fault(row.at("is"), what, "name what it does show")
        return None
    often, word = row.number("how_often"), row.word("how_often")
    because, source = row.text("because"), row.text("source")
    return Link(finding.id, value, often, word, because, source, row.node.where)


def _strong_enough(
    name: str, links: list[Link], rows: dict[tuple[str, str], Record], shelf: Shelf
) -> None:
    values = shelf.findings[name].values[1:]
    written = {link.value: link.how_often for link in links if link.finding == name}
    backgrounds = [v.without_cause or 0.0 for v in values]
    if sum(backgrounds) >= 1.0:
        return
    try:
        net_strengths(backgrounds, [written.get(v.id) for v in values])
    except (NotAbove, TooMuch) as error:
        value = values[error.index].id
        node = rows[name, value].at("how_often")
        shown = name if value == YES else f"{name} ({value})"
        if isinstance(error, TooMuch):
            what = f"what the cause shows of {name} comes to more than always"
            shelf.reading.fault(node, what, "use words for less often")
            return
        what = f"with this cause {shown} shows no more often than without it"
        mend = (
            "leave it out, or write the opposite as its own option; "
            f"it needs more than {error.needs:.3g}"
        )
        shelf.reading.fault(node, what, mend)


def _examples(record: Record, shelf: Shelf) -> tuple[Example, ...]:
    own, rows = record.text("id"), record.groups("examples")
    examples = tuple(example(r, shelf) for r in rows)
    if own != record.node.page.stem or "examples" not in record:
        return examples
    for field, what in (
        ("first", f"no example has 'first: {own}'"),
        ("not_first", f"no example has 'not_first: {own}'"),
    ):
        if not any(getattr(e, field) == own for e in examples):
            mend = "give one example where it comes first and one that only looks like it"
            shelf.reading.fault(record.at("examples"), what, mend)
    return examples
