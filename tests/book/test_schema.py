"""The JSON Schema that editors use agrees with the loader."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from diagnose.book.kinds import KINDS
from diagnose.book.nodes import Items, Node, Table, Text
from diagnose.book.number_shapes import number
from diagnose.book.schema import schemas, write_schemas
from diagnose.book.yaml_nodes import read_tree
from tests.small import SMALL, small_book

NAMES = {kind.place: f"{kind.name if kind.one_file_each else kind.place}.json" for kind in KINDS}


def as_an_editor_sees_it(node: Node | None) -> Any:
    """YAML 1.2 without dates: plain numbers are numbers, everything else stays text."""
    if isinstance(node, Items):
        return [as_an_editor_sees_it(item) for item in node.items]
    if isinstance(node, Table):
        return {key: as_an_editor_sees_it(value) for key, (_, value) in node.rows.items()}
    assert isinstance(node, Text)
    value = None if node.value.endswith("%") else number(node.value)
    return node.value if value is None else value


def schema_for(path: Path) -> dict[str, Any]:
    inside = path.relative_to(SMALL)
    place = inside.parts[0] if len(inside.parts) > 1 else inside.stem
    return schemas(small_book().words)[NAMES.get(place, "words.json")]


@pytest.mark.parametrize("path", sorted(SMALL.rglob("*.yaml")), ids=lambda p: p.name)
def test_a_file_that_loads_is_valid(path: Path) -> None:
    root, _ = read_tree(path)
    jsonschema.Draft7Validator(schema_for(path)).validate(as_an_editor_sees_it(root))


@pytest.mark.parametrize("name", sorted(schemas(small_book().words)))
def test_every_schema_is_draft_07(name: str) -> None:
    schema = schemas(small_book().words)[name]
    jsonschema.Draft7Validator.check_schema(schema)
    assert schema["$schema"] == "http://json-schema.org/draft-07/schema#"


def test_a_mistyped_field_and_a_word_off_the_scale_are_invalid() -> None:
    path = SMALL / "causes/wheel/unbalanced-wheel.yaml"
    root, _ = read_tree(path)
    validator = jsonschema.Draft7Validator(schema_for(path))
    for old, new in (("summary", "sumary"), ("how_common", "how_comon")):
        tree = as_an_editor_sees_it(root)
        tree[new] = tree.pop(old)
        assert not validator.is_valid(tree)
    tree = as_an_editor_sees_it(root)
    tree["how_common"] = "frequent"
    assert not validator.is_valid(tree)


def test_the_schemas_are_written_as_files(tmp_path: Path) -> None:
    paths = write_schemas(small_book().words, tmp_path / "schema")
    assert {p.name for p in paths} == set(schemas(small_book().words))
    assert all(json.loads(p.read_text(encoding="utf-8")) for p in paths)
