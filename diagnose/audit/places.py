"""From an entry and a way into it to the place in its file, for line, column and caret."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from diagnose.audit.lint import Remark, Step
from diagnose.audit.shelves import SHELVES
from diagnose.book.advice import Tick
from diagnose.book.model import Book
from diagnose.book.nodes import Items, Node, Table, Text
from diagnose.book.problems import Problem
from diagnose.book.yaml_nodes import read_tree


class Places:
    """Finds the nodes of entries; a page is read when the first remark on it is made."""

    def __init__(self, book: Book, bases: Sequence[Path]) -> None:
        self.book, self.bases = book, [Path(b) for b in bases]
        self._pages: dict[str, Node | None] = {}

    def problem(self, remark: Remark) -> Problem:
        """The remark as a fault with its place; of the file as a whole when it has none."""
        node = self.node(remark.kind, remark.entry, remark.path)
        if node is None:
            return Problem(self._file(remark), 0, 0, remark.what, remark.mend, remark.near)
        return node.problem(remark.what, remark.mend, remark.near)

    def node(self, kind: str, entry: str, path: Sequence[Step]) -> Node | None:
        """The node of a field of an entry, or the nearest one above that is written."""
        node = self._entry(kind, entry)
        for step in path:
            deeper = _into(node, step) if node is not None else None
            if deeper is None:
                break
            node = deeper
        return node

    def _file(self, remark: Remark) -> str:
        if remark.kind == "words":
            return f"{self.bases[0].name}/words.yaml"
        return self._written_in(remark.kind, remark.entry) or remark.entry

    def _entry(self, kind: str, entry: str) -> Node | None:
        if kind == "words":
            return self._page(f"{self.bases[0].name}/words.yaml")
        name = self._written_in(kind, entry)
        root = self._page(name) if name else None
        if isinstance(root, Items):
            return next((n for n in root.items if _id(n) == entry), None)
        return root

    def _written_in(self, kind: str, entry: str) -> str:
        thing = getattr(self.book, SHELVES[kind])[entry]
        if isinstance(thing, Tick):
            return thing.place[0]
        where = getattr(thing, "where", None)
        return where.file if where is not None else ""

    def _page(self, name: str) -> Node | None:
        if name not in self._pages:
            self._pages[name] = None
            # a file of a shop is named with the folder of the shop before it
            tops = [top for base in self.bases for top in (base, base.parent)]
            for top in tops:
                path = top.parent / name
                if name.startswith(f"{top.name}/") and path.is_file():
                    self._pages[name] = read_tree(path, name)[0]
                    break
        return self._pages[name]


def _id(node: Node) -> str:
    own = node.get("id") if isinstance(node, Table) else None
    return own.value.strip() if isinstance(own, Text) else ""


def _into(node: Node, step: Step) -> Node | None:
    if isinstance(step, int):
        if not isinstance(node, Items):
            return node if step == 0 else None
        return node.items[step] if step < len(node.items) else None
    return node.get(step) if isinstance(node, Table) else None
