"""The healthy record of a machine: how it was when it ground well; what differs now is evidence."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from diagnose.book.model import Book, Check, Where
from diagnose.book.near import listed, nearest
from diagnose.book.shapes import Reading
from diagnose.shop.fields import HEALTHY as FORM
from diagnose.shop.folders import HEALTHY
from diagnose.shop.measured import apart, times
from diagnose.shop.reading import answers_in, records_in


@dataclass(frozen=True)
class Healthy:
    """One record: check -> answer and own name -> reading, as written, of a day it ground well."""

    machine: str
    date: str
    wheel: str = ""
    answers: Mapping[str, str] = field(default_factory=dict)
    readings: Mapping[str, str] = field(default_factory=dict)
    note: str = ""
    where: Where | None = None


@dataclass(frozen=True)
class Differs:
    """One thing that is not as it was when the machine ground well. `times` is "" for words."""

    id: str
    name: str
    good: str
    now: str
    times: str
    date: str
    machine: str


def read_healthy(
    base: Path, machines: Mapping[str, object], book: Book | None, reading: Reading
) -> dict[str, Healthy]:
    """The latest record of each machine; a record of no known machine is a fault, left out."""
    latest: dict[str, Healthy] = {}
    for record in records_in(base, HEALTHY, FORM, reading):
        name, date = record.text("machine"), record.text("date")
        if name and name not in machines:
            mend = f"the shop has: {listed(sorted(machines))}" if machines else "write its card"
            what = f"the shop has no machine '{name}'"
            reading.fault(record.at("machine"), what, mend, nearest(name, machines))
            continue
        found = Healthy(
            name,
            date,
            record.text("wheel"),
            answers_in(record, "answers", book, reading),
            {key: str(text) for key, text in record.by_name("readings").items()},
            record.text("note"),
            record.node.where,
        )
        if name and date and (name not in latest or latest[name].date <= date):
            latest[name] = found
    return latest


def differences(
    good: Healthy | None, told: Mapping[str, str], now: Mapping[str, str], book: Book
) -> tuple[Differs, ...]:
    """What differs from the healthy record: answers in force (`told`) and readings (`now`).

    Numbers differ when their give-or-take bands do not meet (12 % of the number when none is
    given); answers in words when they are not the same.
    """
    if good is None:
        return ()
    found: list[Differs] = []
    for name in sorted(good.answers.keys() & told.keys() & book.checks.keys()):
        check, was, is_ = book.checks[name], good.answers[name], told[name]
        if _not_as_it_was(check, was, is_):
            said = times(was, is_, check.dimension) if check.kind == "number" else ""
            found.append(
                Differs(name, check.name, _words(check, was), _words(check, is_), said,
                        good.date, good.machine)
            )  # fmt: skip
    for name in sorted(good.readings.keys() & now.keys()):
        was, is_ = good.readings[name], now[name]
        if apart(was, is_):
            label = name.replace("-", " ")
            found.append(Differs(name, label, was, is_, times(was, is_), good.date, good.machine))
    return tuple(found)


def _not_as_it_was(check: Check, was: str, is_: str) -> bool:
    if check.kind == "number":
        return apart(was, is_, check.dimension, check.give_or_take)
    return was != is_ and check.kind in ("one", "any")


def _words(check: Check, answer: str) -> str:
    parts = [p.strip() for p in answer.split(",")] if check.options else [answer]
    return "; ".join(check.by_option[p].say if p in check.by_option else p for p in parts)
