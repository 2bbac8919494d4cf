"""A case as the text of its file."""

from __future__ import annotations

from typing import Any

import yaml

from diagnose.case.entries import Case, Closed, Entry
from diagnose.case.fields import SCHEMA


class PlainText(yaml.SafeDumper):
    """Writes every text bare where YAML allows it; nothing is quoted to keep it a text."""

    yaml_implicit_resolvers = {}  # noqa: RUF012 - the stubs call it an instance variable


def case_text(case: Case) -> str:
    """The case as YAML that `load_case` reads back to the same case."""
    rows: dict[str, Any] = {"schema": str(SCHEMA), "title": case.title}
    if case.complaint or case.planned is None:
        rows["complaint"] = list(case.complaint)
    if case.planned is not None:
        rows["planned"] = case.planned.rows()
    for name in ("machine", "wheel", "part"):
        if getattr(case, name):
            rows[name] = getattr(case, name)
    if case.given:
        rows["facts"] = dict(case.given)
    if case.minutes_to_spare is not None:
        rows["minutes_to_spare"] = _number(case.minutes_to_spare)
    if case.tools is not None:
        rows["tools"] = list(case.tools)
    if case.practised:
        rows["practised"] = "yes"
    if case.note:
        rows["note"] = case.note
    if case.now:
        rows["now"] = dict(case.now)
    if case.entries:
        rows["entries"] = [_row(entry) for entry in case.entries]
    if case.closed is not None:
        rows["closed"] = _closed(case.closed)
    return yaml_text(rows)


def yaml_text(rows: dict[str, Any]) -> str:
    """Rows of texts as a page that a person can read and go on writing."""
    nested = any(isinstance(value, dict | list) for value in rows.values())
    text: str = yaml.dump(
        rows,
        Dumper=PlainText,
        sort_keys=False,
        allow_unicode=True,
        default_flow_style=None if nested else False,  # else the whole page is one { } line
        width=100,
    )
    return text


def _number(value: float) -> str:
    return repr(value).removesuffix(".0")


def _closed(closed: Closed) -> dict[str, Any]:
    rows: dict[str, Any] = {"date": closed.date}
    if closed.cured_by:
        rows["cured_by"] = list(closed.cured_by)
    if closed.something_new:
        rows["something_new"] = closed.something_new
    if not closed.cured:
        rows["not_cured"] = "yes"
    if closed.done:
        rows["done"] = closed.done
    if closed.minutes is not None:
        rows["minutes"] = _number(closed.minutes)
    for name in ("proved", "note"):
        if getattr(closed, name):
            rows[name] = getattr(closed, name)
    if closed.pictures:
        rows["pictures"] = list(closed.pictures)
    return rows


def _row(entry: Entry) -> dict[str, str]:
    if entry.kind == "tried":
        return {"tried": entry.name, "outcome": entry.outcome}
    if entry.kind == "cleared":
        return {"cleared": entry.name, "how": entry.value}
    if entry.kind == "later":
        return {"later": entry.name}
    number = str(entry.replaces) if entry.kind == "correct" else entry.name
    row = {entry.kind: number, "value": entry.value}
    if entry.how != "said":
        row["how"] = entry.how
    if not entry.sure:
        row["sure"] = "think so"
    return row
