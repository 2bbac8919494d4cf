"""Changes any node of any knowledge file: drop, swap, retype, rename, duplicate.

Knows nothing of fields, kinds or lints. A file is read as a bare tree, one node is changed, and
the whole is written again, one node a line, so that every node has a line of its own.
"""

from __future__ import annotations

import json
import random
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

import yaml

from diagnose.book import yaml_loaders


@dataclass(eq=False)
class Node:
    """A text, a list of nodes, or a group of (name, node)."""

    kind: str  # text | list | group
    text: str = ""
    parts: list[Any] = field(default_factory=list)  # list: nodes; group: [name, node]
    first: int = 0  # lines once written
    last: int = 0

    def copy(self) -> Node:
        parts = [[p[0], p[1].copy()] if self.kind == "group" else p.copy() for p in self.parts]
        return Node(self.kind, self.text, parts)

    def children(self) -> list[Node]:
        return [p[1] if self.kind == "group" else p for p in self.parts]

    def all_texts(self) -> Iterator[str]:
        """Every text and name in it."""
        if self.kind == "text":
            yield self.text
        for part in self.parts:
            if self.kind == "group":
                yield part[0]
            yield from (part[1] if self.kind == "group" else part).all_texts()


@dataclass(frozen=True)
class Change:
    """What was done, and the lines and words by which a fault of it may be known.

    `plain` is the file before, written the same way; `was_at` and `is_at` are the very lines of
    the changed nodes before and after (none after, when the node is gone).
    """

    how: str
    what: str
    lines: frozenset[int]
    words: frozenset[str]  # names and ids that the changed node held
    shape: str  # item | field
    text: str
    plain: str = ""
    was_at: frozenset[int] = frozenset()
    is_at: frozenset[int] = frozenset()


def read(text: str) -> Node:
    """The bare tree of a file."""
    return _bare(yaml.compose(text, Loader=yaml_loaders.PureText))


def _bare(node: Any) -> Node:
    if node.id == "scalar":
        return Node("text", node.value)
    if node.id == "sequence":
        return Node("list", parts=[_bare(n) for n in node.value])
    return Node("group", parts=[[k.value, _bare(v)] for k, v in node.value])


def write(root: Node) -> str:
    """The tree as YAML; sets the lines of every node."""
    lines: list[str] = []
    _write(root, 0, lines, "")
    return "\n".join(lines) + "\n"


def _write(node: Node, depth: int, lines: list[str], lead: str) -> None:
    pad = "  " * depth
    if node.kind == "text" or not node.parts:
        empty = {"list": "[]", "group": "{}"}.get(node.kind)
        lines.append(f"{pad}{lead}{empty or json.dumps(node.text, ensure_ascii=False)}")
        node.first = node.last = len(lines)
        return
    if lead:
        lines.append(f"{pad}{lead}".rstrip())
    node.first = len(lines) if lead else len(lines) + 1
    for part in node.parts:
        if node.kind == "group":
            name = json.dumps(part[0], ensure_ascii=False)
            _write(part[1], depth + bool(lead), lines, f"{name}: ")
        else:
            _write(part, depth + bool(lead), lines, "- ")
    node.last = len(lines)


def spots(node: Node) -> Iterator[tuple[Node, int]]:
    """Every (parent, place) of the tree."""
    for place, child in enumerate(node.children()):
        yield node, place
        yield from spots(child)


def mutate(text: str, chance: random.Random) -> Change:
    """One change of one node, drawn by chance; the text after it in `Change.text`."""
    while True:
        root = read(text)
        how = chance.choice(("drop", "swap", "retype", "rename", "duplicate"))
        parent, place = chance.choice(list(spots(root)))
        child = parent.children()[place]
        words = frozenset(w for w in child.all_texts() if " " not in w)
        plain = write(root)
        stood = {id(p): _lines(p) for p in _all(root)}
        told = _DO[how](parent, place, chance)
        if told is None:
            continue
        what, touched, gone = told
        out = write(root)
        top = {parent.first, parent.first + 1}  # its name, and where its first part stands
        if gone:  # nothing is left at the place: its neighbours and its parent stand for it
            near = parent.children()[max(0, place - 1) : place + 1]
            lines = top | {parent.last} | {n.first for n in near}
        else:
            lines = top | {n for t in touched for n in range(t.first, t.last + 1)}
        shape = "field" if parent.kind == "group" else "item"
        was = stood[id(child)].union(*(stood.get(id(t), frozenset()) for t in touched))
        now: frozenset[int] = frozenset().union(*map(_lines, touched))
        return Change(how, what, frozenset(lines), words, shape, out, plain, was, now)


def _all(node: Node) -> Iterator[Node]:
    yield node
    for child in node.children():
        yield from _all(child)


def _lines(node: Node) -> frozenset[int]:
    return frozenset(range(node.first, node.last + 1))


Told = tuple[str, list[Node], bool] | None


def _drop(parent: Node, place: int, _: random.Random) -> Told:
    part = parent.parts.pop(place)
    return f"drop {_called(part)}", [], True


def _swap(parent: Node, place: int, chance: random.Random) -> Told:
    others = [n for n in range(len(parent.parts)) if n != place]
    if not others:
        return None
    other = chance.choice(others)
    a, b = parent.parts[place], parent.parts[other]
    if parent.kind == "group":
        a[1], b[1] = b[1], a[1]
        return f"swap {a[0]} and {b[0]}", [a[1], b[1]], False
    parent.parts[place], parent.parts[other] = b, a
    return f"swap items {place} and {other}", [a, b], False


def _retype(parent: Node, place: int, chance: random.Random) -> Told:
    child = parent.children()[place]
    forms: list[Node] = [Node("text", "12"), Node("text", ""), Node("text", "two words")]
    forms += [Node("list", parts=[child.copy()])] if child.kind != "list" else []
    forms += [Node("group", parts=[["value", child.copy()]])]
    new = chance.choice(forms)
    if parent.kind == "group":
        parent.parts[place][1] = new
    else:
        parent.parts[place] = new
    return f"retype {_called(parent.parts[place])} to {new.kind} {new.text!r}", [new], False


def _rename(parent: Node, place: int, chance: random.Random) -> Told:
    part = parent.parts[place]
    child = part[1] if parent.kind == "group" else part
    if parent.kind == "group" and (child.kind != "text" or chance.random() < 0.5):
        old, part[0] = part[0], _slip(part[0], chance)
        return f"rename {old} to {part[0]}", [child], False
    if child.kind != "text" or len(child.text) < 2:
        return None
    old, child.text = child.text, _slip(child.text, chance)
    return f"rename {old!r} to {child.text!r}", [child], False


def _duplicate(parent: Node, place: int, _: random.Random) -> Told:
    part = parent.parts[place]
    twin = [part[0], part[1].copy()] if parent.kind == "group" else part.copy()
    parent.parts.insert(place + 1, twin)
    nodes: list[Node] = [p[1] if parent.kind == "group" else p for p in (part, twin)]
    return f"duplicate {_called(part)}", nodes, False


def _slip(word: str, chance: random.Random) -> str:
    """The word with one letter left out, doubled, or changed."""
    place = chance.randrange(len(word))
    how = chance.choice(("out", "double", "other"))
    if how == "out" and len(word) > 1:
        return word[:place] + word[place + 1 :]
    letter = word[place] if how == "double" else chance.choice("abcdefghijklmnopqrstuvwxyz")
    return word[: place + (how == "double")] + letter + word[place + 1 :]


def _called(part: Any) -> str:
    if isinstance(part, list):
        return f"field {part[0]}"
    return f"item {part.text[:30]!r}" if part.kind == "text" else "item"


_DO = {
    "drop": _drop,
    "swap": _swap,
    "retype": _retype,
    "rename": _rename,
    "duplicate": _duplicate,
}
