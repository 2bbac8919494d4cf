"""Where two records of an entry say something different, field by field and part by part."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import Any

from diagnose.audit.aligning import align
from diagnose.audit.told_parts import (
    FREE_ORDER,
    ORDERED_IN_CONDITIONS,
    comparable,
    in_words,
    is_rate,
    known_by,
    node_of,
    parts_of,
    spoken,
)
from diagnose.book.nodes import Items, Node, Table
from diagnose.book.records import Record


@dataclass(frozen=True)
class Difference:
    """One place: the way into the entry in words, what happened there, before and after.

    what: changed | new | gone | moved. `node` is that of the new version; of the old one for
    what is gone.
    """

    what: str
    field: str
    before: str
    after: str
    node: Node


Way = tuple[str, ...]


def differences(old: Record, new: Record, way: Way = ()) -> Iterator[Difference]:
    """Every place where the two say something different, in the order of the field table."""
    if comparable(old) == comparable(new):
        return
    for name in dict.fromkeys((*new.values, *old.values)):
        here = (*way, spoken(name))
        if name not in new.values:
            yield _gone(here, old.values[name], _key(old.node, name))
        elif name not in old.values:
            yield _new(here, new.values[name], _key(new.node, name))
        else:
            before, after = old.values[name], new.values[name]
            yield from _between(before, old.at(name), after, new.at(name), here, name)


def _between(
    old: Any, old_node: Node, new: Any, new_node: Node, way: Way, field: str
) -> Iterator[Difference]:
    if comparable(old, field) == comparable(new, field):
        return
    if isinstance(old, Record) and isinstance(new, Record):
        yield from differences(old, new, way)
    elif isinstance(old, (dict, Table)) and isinstance(new, (dict, Table)):
        yield from _by_name(old, old_node, new, new_node, way, field)
    elif _is_list(old) and _is_list(new):
        yield from _of_lists(old, old_node, new, new_node, way, field)
    else:
        yield Difference("changed", ", ".join(way), in_words(old), in_words(new), new_node)


def _is_list(value: Any) -> bool:
    return isinstance(value, Items) or (isinstance(value, tuple) and not is_rate(value))


def _by_name(
    old: Any, old_node: Node, new: Any, new_node: Node, way: Way, field: str
) -> Iterator[Difference]:
    before, after = _rows(old), _rows(new)
    for name in dict.fromkeys((*after, *before)):
        here = (*way, name)
        if name not in after:
            yield _gone(here, before[name], _key(old_node, name))
        elif name not in before:
            yield _new(here, after[name], _key(new_node, name))
        else:
            inner = name if name == ORDERED_IN_CONDITIONS else field
            places = _value(old_node, name), _value(new_node, name)
            yield from _between(before[name], places[0], after[name], places[1], here, inner)


def _rows(value: Any) -> Mapping[str, Any]:
    return {k: v for k, (_, v) in value.rows.items()} if isinstance(value, Table) else value


def _of_lists(
    old: Any, old_node: Node, new: Any, new_node: Node, way: Way, field: str
) -> Iterator[Difference]:
    before, after = parts_of(old), parts_of(new)
    lists = before, after
    paired = align(
        [comparable(p, field) for p in before],
        [comparable(p, field) for p in after],
        lambda is_new, place: known_by(lists[is_new][place]),
        lambda a, b: _alike(before[a], after[b]),
    )
    for a, b in paired.changed:
        places = _item(old_node, before[a], a), _item(new_node, after[b], b)
        here = (*way[:-1], f"{way[-1]} {known_by(before[a]) or b + 1}")
        yield from _between(before[a], places[0], after[b], places[1], here, field)
    if field not in FREE_ORDER:
        for a, b in paired.moved:
            told = f"number {a + 1}", f"number {b + 1}"
            part = f"'{known_by(after[b]) or in_words(after[b])}'"
            yield Difference("moved", ", ".join((*way, part)), *told, _item(new_node, after[b], b))
    for a in paired.gone:
        yield _gone(way, before[a], _item(old_node, before[a], a))
    for b in paired.new:
        yield _new(way, after[b], _item(new_node, after[b], b))


def _alike(old: Any, new: Any) -> float:
    """What two parts have in common: the share of fields that are the same, or of letters."""
    if isinstance(old, Record) and isinstance(new, Record):
        names = old.values.keys() | new.values.keys()
        same = [n for n in names & old.values.keys() & new.values.keys() if _same(old, new, n)]
        return len(same) / max(1, len(names))
    if isinstance(old, Record) or isinstance(new, Record):
        return 0.0
    return SequenceMatcher(None, in_words(old), in_words(new), autojunk=False).ratio()


def _same(old: Record, new: Record, name: str) -> bool:
    return comparable(old.values[name], name) == comparable(new.values[name], name)


def _gone(way: Way, value: Any, node: Node) -> Difference:
    return Difference("gone", ", ".join(way), in_words(value), "", node)


def _new(way: Way, value: Any, node: Node) -> Difference:
    return Difference("new", ", ".join(way), "", in_words(value), node)


def _key(group: Node, name: str) -> Node:
    """Where the name of a field stands, or the group when it is not written there."""
    return group.rows[name][0] if isinstance(group, Table) and name in group.rows else group


def _value(group: Node, name: str) -> Node:
    return group.rows[name][1] if isinstance(group, Table) and name in group.rows else group


def _item(whole: Node, part: Any, place: int) -> Node:
    if isinstance(whole, Items) and place < len(whole.items):
        return whole.items[place]
    return node_of(part, whole)
