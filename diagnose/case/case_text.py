"""A case as the text of its file."""

from __future__ import annotations

from typing import Any

import yaml

from diagnose.case.entries import Case, Entry
from diagnose.case.fields import SCHEMA


class PlainText(yaml.SafeDumper):
    """Writes every text bare where YAML allows it; nothing is quoted to keep it a text."""

    yaml_implicit_resolvers = {}  # noqa: RUF012 - the stubs call it an instance variable


def case_text(case: Case) -> str:
    """The case as YAML that `load_case` reads back to the same case."""
    rows: dict[str, Any] = {"schema": str(SCHEMA), "title": case.title}
    rows["complaint"] = list(case.complaint)
    for name in ("machine", "wheel", "part"):
        if getattr(case, name):
            rows[name] = getattr(case, name)
    if case.given:
        rows["facts"] = dict(case.given)
    if case.minutes_to_spare is not None:
        rows["minutes_to_spare"] = repr(case.minutes_to_spare).removesuffix(".0")
    if case.tools is not None:
        rows["tools"] = list(case.tools)
    if case.practised:
        rows["practised"] = "yes"
    if case.note:
        rows["note"] = case.note
    if case.entries:
        rows["entries"] = [_row(entry) for entry in case.entries]
    return yaml.dump(
        rows,
        Dumper=PlainText,
        sort_keys=False,
        allow_unicode=True,
        default_flow_style=None,
        width=100,
    )


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
