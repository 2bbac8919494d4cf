"""The values of a record: in a form fit to be compared, and in words for people."""

from __future__ import annotations

from collections.abc import Hashable
from typing import Any

from diagnose.book.nodes import Items, Node, Table, Text
from diagnose.book.number_shapes import number
from diagnose.book.records import Record

# lists whose order says nothing; in all others it is the order of steps, answers or values
_FREE = (
    "in_words sources settles together_with needs tools changes spoiled_by cautions renewed_by "
    "shows leads_through look_alikes examples possible_when more_likely_when be_sure replaces "
    "complaint leads_to raises clears then when if asked_when applies_when answers "
)
FREE_ORDER = frozenset(_FREE.split())
ORDERED_IN_CONDITIONS = "between"
_KNOWN_BY = ("id", "title", "finding", "check", "to", "stop", "caution", "do", "because")


def comparable(value: Any, field: str = "") -> Hashable:
    """A value without its place; lists of free order sorted, numbers by what they are worth."""
    if isinstance(value, Text):
        return value.value.strip()
    if isinstance(value, Record):
        return tuple(sorted((n, comparable(v, n)) for n, v in value.values.items()))
    if isinstance(value, Table):
        inner = {k: k if k == ORDERED_IN_CONDITIONS else field for k in value.rows}
        return tuple(sorted((k, comparable(v, inner[k])) for k, (_, v) in value.rows.items()))
    if isinstance(value, dict):
        return tuple(sorted((k, comparable(v, field)) for k, v in value.items()))
    if is_rate(value):
        return value[0] if number(value[1]) is not None else str(value[1])
    if isinstance(value, (Items, tuple)):
        parts = [comparable(p, field) for p in parts_of(value)]
        return tuple(sorted(parts, key=repr) if field in FREE_ORDER else parts)
    return value if isinstance(value, Hashable) else str(value)


def is_rate(value: Any) -> bool:
    """True for a rate: its probability and the word or number as written."""
    return isinstance(value, tuple) and len(value) == 2 and isinstance(value[0], float)


def parts_of(value: Any) -> tuple[Any, ...]:
    """The parts of a list; of a bare node that is none, itself."""
    if isinstance(value, Items):
        return tuple(value.items)
    return value if isinstance(value, tuple) else (value,)


def known_by(value: Any) -> str:
    """By what a part of a list is known: its id, its title, what it names; "" for a text."""
    if not isinstance(value, Record):
        return ""
    for name in _KNOWN_BY:
        text = value.text(name)
        if text:
            return f"{text} {value.text('is')}".strip()
    return ""


def in_words(value: Any) -> str:
    """A value as a person would read it, on one line."""
    if isinstance(value, Text):
        return value.value.strip()
    if isinstance(value, Record):
        return "; ".join(f"{spoken(n)}: {in_words(v)}" for n, v in value.values.items())
    if isinstance(value, Table):
        return ", ".join(f"{k}: {in_words(v)}" for k, (_, v) in value.rows.items())
    if isinstance(value, dict):
        return ", ".join(f"{k}: {in_words(v)}" for k, v in value.items())
    if is_rate(value):
        return str(value[1])
    if isinstance(value, (Items, tuple)):
        return " / ".join(in_words(p) for p in parts_of(value))
    if isinstance(value, bool):
        return "yes" if value else "no"
    return f"{value:g}" if isinstance(value, float) else str(value)


def spoken(field: str) -> str:
    """The name of a field in words."""
    return field.replace("_", " ")


def node_of(value: Any, written: Node) -> Node:
    """Where a value stands: its own node, or the one it was read from."""
    if isinstance(value, Record):
        return value.node
    return value if isinstance(value, Node) else written
