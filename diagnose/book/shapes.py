"""The shapes a value in a file can have: each reads a node, names its faults, gives its schema."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Protocol

from diagnose.book.near import listed, nearest
from diagnose.book.nodes import Items, Node, Table, Text
from diagnose.book.problems import Problem

ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*\Z")
ID_MEND = "small letters and digits, words joined by hyphens: loose-wheel"
Schema = dict[str, Any]


class Reading:
    """What one reading of the files collects: faults, and words that must name something."""

    def __init__(self, scales: Mapping[str, Mapping[str, float]] | None = None) -> None:
        self.problems: list[Problem] = []
        self.references: list[tuple[tuple[str, ...], Text]] = []
        self.scales = scales
        self.unread: set[tuple[str, str]] = set()  # (kind, id) that may be there; "" = any id
        self.blind = False  # a file gave no tree: what depends on the whole is not looked at

    def fault(self, node: Node, what: str, mend: str = "", suggestion: str = "") -> None:
        """Note a fault at a node."""
        self.problems.append(node.problem(what, mend, suggestion))

    def not_among(self, node: Node, word: str, known: Iterable[str], what: str = "") -> None:
        """Note that a word is none of the known ones; the nearest is offered."""
        choices = list(known)
        text = what or f"'{word}' is not one of the words for this"
        self.fault(node, text, f"it can be: {listed(choices)}", nearest(word, choices))


class Shape(Protocol):
    """One kind of value. `read` gives None after noting a fault."""

    def read(self, node: Node, reading: Reading) -> Any: ...

    def schema(self) -> Schema: ...


def plain(node: Node, reading: Reading, wanted: str = "a few words") -> str | None:
    """The text of a scalar, blanks trimmed, or None with a fault."""
    if isinstance(node, Text) and node.value.strip():
        return node.value.strip()
    if isinstance(node, Text):
        reading.fault(node, f"nothing is written here; {wanted} should be")
    else:
        kind = "list" if isinstance(node, Items) else "group of fields"
        reading.fault(node, f"this is a {kind}; {wanted} should stand here")
    return None


@dataclass(frozen=True)
class Words:
    """Free text."""

    def read(self, node: Node, reading: Reading) -> str | None:
        return plain(node, reading)

    def schema(self) -> Schema:
        return {"type": "string", "minLength": 1}


@dataclass(frozen=True)
class Id:
    """A name of our own making: kebab-case."""

    def read(self, node: Node, reading: Reading) -> Text | None:
        word = plain(node, reading, "a name")
        if word is None or not isinstance(node, Text):
            return None
        if not ID.match(word):
            reading.fault(node, f"'{word}' cannot be a name here", ID_MEND)
            return None
        return node

    def schema(self) -> Schema:
        return {"type": "string", "pattern": "^[a-z0-9]+(-[a-z0-9]+)*$"}


@dataclass(frozen=True)
class Tag:
    """A free label; blanks and capitals do not matter: `Feeler gauge` is `feeler-gauge`."""

    def read(self, node: Node, reading: Reading) -> str | None:
        word = plain(node, reading, "a label")
        if word is None:
            return None
        tag = "-".join(word.lower().split())
        if not ID.match(tag):
            reading.fault(node, f"'{word}' cannot be a label", ID_MEND)
            return None
        return tag

    def schema(self) -> Schema:
        return {"type": "string", "minLength": 1}


@dataclass(frozen=True)
class Ref:
    """The id of something written elsewhere, of one of the kinds; checked when all is read."""

    kinds: tuple[str, ...]

    def read(self, node: Node, reading: Reading) -> str | None:
        word = plain(node, reading, f"the id of a {self.kinds[0]}")
        if word is None or not isinstance(node, Text):
            return None
        reading.references.append((self.kinds, node))
        return word

    def schema(self) -> Schema:
        return {**Id().schema(), "description": "id of a " + " or ".join(self.kinds)}


def ref(*kinds: str) -> Ref:
    """Reference to one of the kinds."""
    return Ref(kinds)


@dataclass(frozen=True)
class OneOf:
    """One of a closed set of words."""

    choices: tuple[str, ...]

    def read(self, node: Node, reading: Reading) -> str | None:
        word = plain(node, reading, f"one of {listed(self.choices)}")
        if word is None:
            return None
        if word not in self.choices:
            reading.not_among(node, word, self.choices)
            return None
        return word

    def schema(self) -> Schema:
        return {"enum": list(self.choices)}


def one_of(*choices: str) -> OneOf:
    """One of these words."""
    return OneOf(choices)


@dataclass(frozen=True)
class Flag:
    """Yes or no."""

    def read(self, node: Node, reading: Reading) -> bool | None:
        word = plain(node, reading, "yes or no")
        if word is None:
            return None
        if word.lower() not in ("yes", "no", "true", "false"):
            reading.fault(node, f"'{word}' is neither yes nor no", "write yes or no")
            return None
        return word.lower() in ("yes", "true")

    def schema(self) -> Schema:
        return {"enum": ["yes", "no", True, False]}


@dataclass(frozen=True)
class Raw:
    """Kept as it stands and read later, when every fact is known."""

    form: str  # name of a definition of the schema
    may_be_blank: bool = False  # whoever reads it later says so better

    def read(self, node: Node, reading: Reading) -> Node | None:
        if not self.may_be_blank and isinstance(node, Text) and not node.value.strip():
            reading.fault(node, "nothing is written here")
            return None
        return node

    def schema(self) -> Schema:
        return {"$ref": f"#/definitions/{self.form}"}


@dataclass(frozen=True)
class Many:
    """A list; a single value may stand for a list of one."""

    shape: Shape
    at_least: int = 0
    few: str = ""  # what to say when there are fewer

    def read(self, node: Node, reading: Reading) -> tuple[Any, ...]:
        items = node.items if isinstance(node, Items) else [node]
        if len(items) < self.at_least:
            reading.fault(node, self.few or f"at least {self.at_least} should be listed here")
        found = [self.shape.read(item, reading) for item in items]
        return tuple(item for item in found if item is not None)

    def schema(self) -> Schema:
        items: Schema = {"type": "array", "items": self.shape.schema()}
        if self.at_least:
            items["minItems"] = self.at_least
            return items
        return {"anyOf": [items, self.shape.schema()]}


@dataclass(frozen=True)
class ByName:
    """A group of our own names, each with a value of one shape: a dict by the name."""

    shape: Shape
    key: Shape = Id()

    def read(self, node: Node, reading: Reading) -> dict[str, Any] | None:
        if not isinstance(node, Table):
            reading.fault(node, "this should be a group of 'name: value'")
            return None
        found: dict[str, Any] = {}
        for name, (key, value) in node.rows.items():
            read_key = self.key.read(key, reading)
            read_value = self.shape.read(value, reading)
            if read_key is not None and read_value is not None:
                found[name] = read_value
        return found

    def schema(self) -> Schema:
        return {"type": "object", "additionalProperties": self.shape.schema()}
