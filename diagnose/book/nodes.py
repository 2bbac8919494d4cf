"""A page of YAML as text, tables and lists that know their line and column."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from pathlib import PurePosixPath

from diagnose.book.model import Where
from diagnose.book.problems import Problem

MOST_DEEP = 12


@dataclass(eq=False)
class Page:
    """One file: its name as shown to people, and its text."""

    name: str
    text: str

    @property
    def stem(self) -> str:
        """The name of the file without folder and ending."""
        return PurePosixPath(self.name).stem

    @cached_property
    def lines(self) -> list[str]:
        """The lines of the text, for carets."""
        return self.text.splitlines()

    def problem(
        self, line: int, column: int, what: str, mend: str = "", suggestion: str = ""
    ) -> Problem:
        """A fault at a place of this page."""
        source = self.lines[line - 1] if 0 < line <= len(self.lines) else ""
        return Problem(self.name, line, column, what, mend, suggestion, source)


class Node:
    """A part of a page with its place, counted from 1."""

    __slots__ = ("column", "line", "page")

    def __init__(self, page: Page, line: int, column: int) -> None:
        self.page, self.line, self.column = page, line, column

    @property
    def where(self) -> Where:
        """File, line and column."""
        return Where(self.page.name, self.line, self.column)

    def problem(self, what: str, mend: str = "", suggestion: str = "") -> Problem:
        """A fault at this node."""
        return self.page.problem(self.line, self.column, what, mend, suggestion)


class Text(Node):
    """A scalar; `value` is the text as written."""

    __slots__ = ("value",)

    def __init__(self, page: Page, line: int, column: int, value: str) -> None:
        super().__init__(page, line, column)
        self.value = value


class Items(Node):
    """A list."""

    __slots__ = ("items",)

    def __init__(self, page: Page, line: int, column: int, items: list[Node]) -> None:
        super().__init__(page, line, column)
        self.items = items


class Table(Node):
    """A mapping: by key, the key's own node and the value, in the order of the file."""

    __slots__ = ("rows",)

    def __init__(
        self, page: Page, line: int, column: int, rows: dict[str, tuple[Text, Node]]
    ) -> None:
        super().__init__(page, line, column)
        self.rows = rows

    def get(self, key: str) -> Node | None:
        """The value of a key, or None."""
        row = self.rows.get(key)
        return row[1] if row else None


def written(node: Node) -> str:
    """An answer as text; a list of answers with commas between."""
    if isinstance(node, Items):
        return ", ".join(item.value.strip() for item in node.items if isinstance(item, Text))
    return node.value.strip() if isinstance(node, Text) else ""


class Refused(Exception):
    """The page cannot be read as YAML at all; `problems` say why."""

    def __init__(self, *problems: Problem) -> None:
        super().__init__(*problems)
        self.problems = problems
