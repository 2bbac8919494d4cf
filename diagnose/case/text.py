"""A case written as the text of its file."""

from __future__ import annotations

from collections.abc import Mapping

from diagnose.case.entries import Case, Entry

SCHEMA = 1


def case_text(case: Case) -> str:
    """The case as YAML that `load_case` reads back to the same case."""
    import yaml

    body: dict[str, object] = {"schema": str(SCHEMA), "title": case.title}
    body["complaint"] = list(case.complaint)
    for name in ("machine", "wheel", "part", "note"):
        if getattr(case, name):
            body[name] = getattr(case, name)
    if case.given:
        body["facts"] = dict(case.given)
    if case.minutes_to_spare is not None:
        body["minutes_to_spare"] = f"{case.minutes_to_spare:g}"
    if case.tools is not None:
        body["tools"] = list(case.tools)
    if case.practised:
        body["practised"] = "yes"
    body["entries"] = [entry_mapping(e) for e in case.entries]
    return str(yaml.dump(body, sort_keys=False, allow_unicode=True, width=100))


def entry_mapping(entry: Entry) -> Mapping[str, str]:
    """One entry as it is written in the file."""
    if entry.kind == "tried":
        return {"tried": entry.name, "outcome": entry.outcome}
    if entry.kind == "cleared":
        return {"cleared": entry.name, "how": entry.value}
    if entry.kind == "later":
        return {"later": entry.name}
    line: dict[str, str] = {"answer": entry.name, "value": entry.value}
    if entry.kind == "correct":
        line = {"correct": str(entry.replaces), "value": entry.value}
    if entry.how != "said":
        line["how"] = entry.how
    if not entry.sure:
        line["sure"] = "think so"
    return line
