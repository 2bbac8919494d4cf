"""Files of the shop folder, read as far as they can be; their faults are collected."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from diagnose.book.answers import AnswerError, read_answer
from diagnose.book.files import ENDINGS
from diagnose.book.model import Book
from diagnose.book.near import nearest
from diagnose.book.nodes import Items, Node, written
from diagnose.book.pages import shown
from diagnose.book.records import Group, Record
from diagnose.book.shapes import Reading
from diagnose.book.yaml_nodes import read_tree


def records_in(base: Path, name: str, group: Group, reading: Reading) -> Iterator[Record]:
    """The records of every file of a folder of the shop; a file may hold one, or a list."""
    folder = base / name
    paths = sorted(folder.iterdir()) if folder.is_dir() else []
    for path in paths:
        if path.suffix not in ENDINGS or path.name.startswith("."):
            continue
        root, problems = read_tree(path, shown(path, base))
        reading.problems += problems
        for node in root.items if isinstance(root, Items) else [root]:
            record = group.read(node, reading) if node is not None else None
            if record is not None:
                yield record


def answers_in(record: Record, field: str, book: Book | None, reading: Reading) -> dict[str, str]:
    """Check -> answer of a field of facts; what cannot be used is left out with its fault.

    Without a book they stay as they are written.
    """
    facts: dict[str, str] = {}
    for check, node in record.by_name(field).items():
        answer = _fact(check, node, book, reading)
        if answer is not None:
            facts[answer[0]] = answer[1]
    return facts


def _fact(name: str, node: Node, book: Book | None, reading: Reading) -> tuple[str, str] | None:
    text = written(node)
    if book is None:
        return name, text
    check = book.checks.get(book.renamed.get(name, name))
    if check is None:
        near = nearest(name, book.checks)
        reading.fault(node, f"there is no check '{name}'", "", near)
        return None
    try:
        return check.id, read_answer(check, text, numbered=False)
    except AnswerError as error:
        reading.fault(node, error.what, error.mend, error.near)
        return None
