"""JSON Schema (draft-07) of every kind, from the field tables, for editors that complete words."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path

from diagnose.book.fields_signs import WORDS
from diagnose.book.kinds import KINDS
from diagnose.book.records import Group
from diagnose.book.scale import Words
from diagnose.book.shapes import Schema
from diagnose.book.writing import write_whole

DRAFT = "http://json-schema.org/draft-07/schema#"
_ONE = {"type": ["string", "number", "boolean"]}
_COMPARED: Schema = {
    "type": "object",
    "properties": {
        "above": _ONE,
        "below": _ONE,
        "between": {"type": "array", "items": _ONE, "minItems": 2, "maxItems": 2},
        "within": _ONE,
        "of": {"type": "string"},
    },
    "additionalProperties": False,
}
_FACTS: Schema = {
    "type": "object",
    "additionalProperties": {"anyOf": [_ONE, {"type": "array", "items": _ONE}, _COMPARED]},
}


def schemas(words: Words, others: Mapping[str, Group] | None = None) -> dict[str, Schema]:
    """The schema of each kind by file name: `cause.json`, `rules.json`, `words.json`.

    `others` are field tables from outside the knowledge: case files, cards.
    """
    definitions = _definitions(words)
    found: dict[str, Schema] = {}
    for name, group in {"words": WORDS, **(others or {})}.items():
        found[f"{name}.json"] = {"$schema": DRAFT, "title": name, **group.schema(), **definitions}
    for kind in KINDS:
        one = kind.group.schema()
        name = kind.name if kind.one_file_each else kind.place
        form = one if kind.one_file_each else {"type": "array", "items": one}
        found[f"{name}.json"] = {"$schema": DRAFT, "title": name, **form, **definitions}
    return found


def _definitions(words: Words) -> Schema:
    scales: Mapping[str, Mapping[str, float]] = {
        "how_often": words.how_often,
        "how_common": words.how_common,
        "change": words.change,
    }
    forms: Schema = {
        name: {"anyOf": [{"enum": list(scale)}, {"type": "number", "exclusiveMinimum": 0}]}
        for name, scale in scales.items()
    }
    forms["condition"] = {"anyOf": [_FACTS, {"type": "array", "items": _FACTS}]}
    forms["quantity"] = _ONE
    forms["answer"] = {"anyOf": [_ONE, {"type": "array", "items": _ONE}]}
    forms["card"] = {"type": ["string", "object"]}
    return {"definitions": forms}


def write_schemas(
    words: Words, folder: Path, others: Mapping[str, Group] | None = None
) -> list[Path]:
    """Write every schema into the folder. Raises BookError when it cannot be written."""
    paths = []
    for name, schema in sorted(schemas(words, others).items()):
        path = folder / name
        write_whole(path, json.dumps(schema, indent=2, ensure_ascii=False) + "\n")
        paths.append(path)
    return paths
