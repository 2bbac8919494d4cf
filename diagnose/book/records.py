"""Field tables: which fields a part of a file has, and reading a group of fields by them."""

from __future__ import annotations

from collections.abc import Mapping, Set
from dataclasses import dataclass
from typing import Any

from diagnose.book.near import listed, nearest
from diagnose.book.nodes import Node, Table, Text
from diagnose.book.shapes import Reading, Schema, Shape


@dataclass(frozen=True)
class Field:
    """One field: its shape, what to say when it is missing ("" = may be left out), its help."""

    name: str
    shape: Shape
    required: str = ""
    help: str = ""


@dataclass(frozen=True)
class Record:
    """A group of fields once read. Absent and faulty fields give the empty value of their type."""

    node: Node
    values: Mapping[str, Any]
    nodes: Mapping[str, Node]
    mistyped: frozenset[str] = frozenset()  # fields that an unknown name was perhaps meant for

    def __contains__(self, name: str) -> bool:
        return name in self.values

    def at(self, name: str) -> Node:
        """The node of a field's value, or of the whole group when the field is absent."""
        return self.nodes.get(name, self.node)

    def text(self, name: str) -> str:
        """A text or reference, or ""."""
        value = self.values.get(name, "")
        return value.value.strip() if isinstance(value, Text) else str(value)

    def texts(self, name: str) -> tuple[str, ...]:
        """A list of texts, or ()."""
        parts = self.values.get(name, ())
        return tuple(p.value.strip() if isinstance(p, Text) else p for p in parts)

    def number(self, name: str, default: float = 0.0) -> float:
        """A plain number, or the probability of a word of the scale."""
        value = self.values.get(name, default)
        return float(value[0]) if isinstance(value, tuple) else float(value)

    def word(self, name: str) -> str:
        """The word of a scale as written, or ""."""
        value = self.values.get(name)
        return str(value[1]) if value else ""

    def flag(self, name: str) -> bool:
        """Yes or no; no when absent."""
        return bool(self.values.get(name, False))

    def raw(self, name: str) -> Node | None:
        """The node of a field that is read later."""
        node = self.values.get(name)
        return node if isinstance(node, Node) else None

    def group(self, name: str) -> Record | None:
        """A group of fields within this one."""
        value = self.values.get(name)
        return value if isinstance(value, Record) else None

    def groups(self, name: str) -> tuple[Record, ...]:
        """A list of groups within this one."""
        return tuple(self.values.get(name, ()))

    def by_name(self, name: str) -> Mapping[str, Any]:
        """A group of our own names."""
        return dict(self.values.get(name, {}))


@dataclass(frozen=True)
class Group:
    """A group of fields."""

    fields: tuple[Field, ...]
    what: str = "this"

    def read(self, node: Node, reading: Reading) -> Record | None:
        """The group as a record; None when the node is no group at all."""
        if not isinstance(node, Table):
            names = listed(f.name for f in self.fields)
            reading.fault(node, f"{self.what} is written as fields", f"the fields are: {names}")
            return None
        values: dict[str, Any] = {}
        nodes: dict[str, Node] = {}
        known = {f.name: f for f in self.fields}
        excused: set[str] = set()  # a mistyped name is one fault, not two
        for name, (key, value) in node.rows.items():
            field = known.get(name)
            if field is None:
                excused.add(self._unknown(key, known, reading))
            elif not _blank(value):
                nodes[name] = value
                read = field.shape.read(value, reading)
                if read is not None:
                    values[name] = read
        self._missing(node, nodes.keys() | excused, reading)
        return Record(node, values, nodes, frozenset(excused))

    def _unknown(self, key: Text, known: Mapping[str, Field], reading: Reading) -> str:
        near = nearest(key.value, known)
        mend = "" if near else f"the fields are: {listed(known, 30)}"
        reading.fault(key, f"{self.what} has no field '{key.value}'", mend, near)
        return near

    def _missing(self, node: Table, there: Set[str], reading: Reading) -> None:
        for field in self.fields:
            if field.required and field.name not in there:
                place = node.rows[field.name][0] if field.name in node.rows else node
                what = f"{self.what} has no '{field.name}:'"
                reading.fault(place, what, field.required)

    def schema(self) -> Schema:
        """The group as JSON Schema."""
        properties = {}
        for field in self.fields:
            form = field.shape.schema()
            told = field.help or field.required
            properties[field.name] = {"allOf": [form], "description": told} if told else form
        required = [f.name for f in self.fields if f.required]
        found: Schema = {"type": "object", "properties": properties, "additionalProperties": False}
        return {**found, "required": required} if required else found


def _blank(node: Node) -> bool:
    return isinstance(node, Text) and not node.value.strip()
