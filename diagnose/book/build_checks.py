"""Checks from their records."""

from __future__ import annotations

from typing import Any

from diagnose.book.frozen import FrozenMap
from diagnose.book.grid_checks import grid_fields
from diagnose.book.model import Check, Option, Report
from diagnose.book.near import nearest
from diagnose.book.numbers import dimensions, quantity
from diagnose.book.records import Record
from diagnose.book.shelf import Shelf

NUMBER_ONLY = ("unit", "range", "example", "give_or_take", "together_with")
NOT_OPTIONS = ("dont-know", "don-t-know", "unknown", "not-sure", "cannot-say")


def check(record: Record, shelf: Shelf) -> Check:
    """A check, its answers and its number checked; conditions need every fact to be known."""
    kind = record.text("kind")
    options = _options(record, kind, shelf)
    settles = record.texts("settles") or _meant(options)
    _settled(record, settles, shelf)
    reports = record.group("reports")
    return Check(
        id=record.text("id"),
        name=record.text("name"),
        kind=kind,
        ask=record.text("ask"),
        help=record.text("help"),
        minutes=record.number("minutes"),
        options=options,
        settles=settles,
        together_with=record.texts("together_with"),
        proves=record.text("proves"),
        no_instrument=record.text("no_instrument"),
        needs=record.texts("needs"),
        tools=record.texts("tools"),
        place=record.text("place"),
        shares_preparation=record.text("shares_preparation"),
        preparation_minutes=record.number("preparation_minutes"),
        asked_when=shelf.condition(record, "asked_when"),
        trial=record.flag("trial"),
        changes=record.texts("changes"),
        spoiled_by=record.texts("spoiled_by"),
        standing=record.text("standing"),
        gate=record.flag("gate"),
        opens=record.number("opens"),
        reports=_report(reports, shelf) if reports else None,
        cautions=record.texts("cautions"),
        source=record.text("source"),
        replaces=record.texts("replaces"),
        where=record.node.where,
        **_number(record, kind, shelf),
        **grid_fields(record, kind, shelf.reading),
    )


def _report(record: Record, shelf: Shelf) -> Report:
    finding = shelf.findings.get(record.text("finding"))
    there, apart = record.number("right_when_there", 0.5), record.number("right_when_not", 0.5)
    if finding is not None and finding.kind != "sign":
        what = f"{finding.id} is a circumstance; only a sign can be hidden and reported"
        shelf.reading.fault(record.at("finding"), what, "write it under 'settles:'")
    if {"right_when_there", "right_when_not"} <= set(record.values) and there + apart <= 1.0:
        what = "it would report the sign no more often when it is there than when it is not"
        shelf.reading.fault(record.node, what, "use words for more often")
    return Report(record.text("finding"), there, apart)


def _options(record: Record, kind: str, shelf: Shelf) -> tuple[Option, ...]:
    rows = record.groups("options")
    if kind in ("number", "file"):
        if rows:
            what = f"a check of kind {kind} has no options"
            shelf.reading.fault(record.at("options"), what, "make it kind one, or take them out")
        return ()
    if kind and len(rows) < 2:
        mend = "list the answers, the first one nothing of the kind"
        shelf.reading.fault(record.at("options"), "a question needs at least two answers", mend)
    options: list[Option] = []
    for row in rows:
        name = row.text("id")
        if any(o.id == name for o in options):
            shelf.reading.fault(row.at("id"), f"the answer '{name}' stands here twice")
        elif name in NOT_OPTIONS:
            what = f"'{name}' is offered at every question by itself"
            shelf.reading.fault(row.at("id"), what, "take this answer out")
        else:
            options.append(_option(row, record, shelf))
    return tuple(options)


def _option(row: Record, check: Record, shelf: Shelf) -> Option:
    return Option(
        row.text("id"),
        row.text("say"),
        FrozenMap(_means(row, check, shelf)),
        row.texts("raises"),
        row.texts("clears"),
        row.text("sketch"),
    )


def _means(row: Record, check: Record, shelf: Shelf) -> dict[str, str]:
    settles = check.texts("settles")
    if "means" not in row:
        only = shelf.findings.get(settles[0]) if len(settles) == 1 else None
        name = row.text("id")
        return {only.id: name} if only and name in only.value_ids else {}
    means: dict[str, str] = {}
    for finding, word in row.by_name("means").items():
        if shelf.value_of(finding, word.value.strip(), word):
            means[finding] = word.value.strip()
        if settles and finding not in settles:
            what = f"this answer means {finding}, which the check does not settle"
            near = nearest(finding, settles)
            shelf.reading.fault(word, what, f"add {finding} to 'settles:'", near)
    signs = [f for f in means if shelf.findings[f].kind == "sign"]
    if len(signs) > 1:
        what = f"one answer means two signs ({', '.join(signs)}): it would count twice"
        shelf.reading.fault(row.at("means"), what, "keep the more exact one, or split the check")
    return means


def _meant(options: tuple[Option, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(f for o in options for f in o.means))


def _settled(record: Record, settles: tuple[str, ...], shelf: Shelf) -> None:
    if record.text("kind") != "one" or len(settles) != 1 or "options" not in record:
        return
    finding = shelf.findings.get(settles[0])
    rows = record.groups("options")
    fits = finding and any(r.text("id") in finding.value_ids or "means" in r for r in rows)
    if finding and not fits:
        what = f"no answer says anything of {finding.id}, which the check settles"
        mend = f"call the answers {', '.join(finding.value_ids)}, or write 'means:'"
        shelf.reading.fault(record.at("settles"), what, mend)


def _number(record: Record, kind: str, shelf: Shelf) -> dict[str, Any]:
    reading = shelf.reading
    if kind != "number":
        for name in NUMBER_ONLY:
            if kind and name in record.nodes:
                what = f"'{name}:' belongs to a check of kind number; this one is kind {kind}"
                reading.fault(record.at(name), what, "take it out")
        return {}
    unit = record.text("unit")
    if unit not in dimensions():
        what = f"'{unit}' is nothing that is measured" if unit else "a number check has no 'unit:'"
        reading.not_among(record.at("unit"), unit, dimensions(), what)
        return {"dimension": ""}
    lowest, highest = _range(record, unit, shelf)
    return {
        "dimension": unit,
        "lowest": lowest,
        "highest": highest,
        "example": record.text("example"),
        "give_or_take": record.number("give_or_take"),
    }


def _range(record: Record, unit: str, shelf: Shelf) -> tuple[float | None, float | None]:
    group = record.group("range")
    if group is None:
        mend = "write range: {lowest: ..., highest: ...}; outside of it is impossible"
        if "range" not in record.nodes:
            shelf.reading.fault(record.node, "a number check has no 'range:'", mend)
        return None, None
    low, high = (
        quantity(group.at(name), unit, shelf.reading) if name in group.nodes else None
        for name in ("lowest", "highest")
    )
    if low is not None and high is not None and low >= high:
        shelf.reading.fault(group.node, "the lowest is not below the highest", "swap them")
        return None, None
    return low, high
