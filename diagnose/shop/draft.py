"""New knowledge files of a shop: written with every heading, tried before they are kept."""

from __future__ import annotations

import tempfile
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from diagnose.book.kinds import BY_NAME
from diagnose.book.loader import load_book
from diagnose.book.model import Book
from diagnose.book.problems import BookError, Problem
from diagnose.book.records import Group
from diagnose.book.writing import write_new
from diagnose.case.case_text import PlainText
from diagnose.shop.folders import KNOWLEDGE, own_knowledge
from diagnose.shop.knowledge import faulty_files

TO_FILL = "to fill"  # how a text begins that a person has still to write
LONG = 40  # letters from which a list is written one a line


class InFull(PlainText):
    """Writes the same list twice rather than a name for it."""

    def ignore_aliases(self, data: Any) -> bool:  # noqa: ARG002 - PyYAML's signature
        return True


@dataclass(frozen=True)
class Draft:
    """Files to be written below the knowledge folder, the id of the main one first."""

    id: str
    files: Mapping[str, str]

    @property
    def to_fill(self) -> list[str]:
        """The lines a person has still to write: `file:line: text`."""
        return [
            f"{name}:{number}: {line.strip()}"
            for name, text in self.files.items()
            for number, line in enumerate(text.splitlines(), 1)
            if TO_FILL in line and not line.lstrip().startswith("#")
        ]


def ids_of(book: Book) -> set[str]:
    """Every id of the book, of whatever kind, and the old ones."""
    shelves: tuple[Mapping[str, object], ...] = (
        *(book.causes, book.checks, book.findings, book.mechanisms, book.rules),
        *(book.stops, book.cautions, book.sources, book.cards, book.terms, book.renamed),
    )
    return {name for shelf in shelves for name in shelf}


def to_fill(told: str) -> str:
    """A text that holds the place of what a person has still to write."""
    return f"{TO_FILL}: {told}"


def page(kind: str, rows: Mapping[str, Any], inside: str) -> tuple[str, str]:
    """(path below the knowledge folder, text) of one entry, every heading of its kind there.

    Headings without a value stand as remarks that say what they are for. `inside` is the folder
    below that of the kind, "" for none.
    """
    form = BY_NAME[kind]
    place = "/".join(part for part in (form.place, inside, f"{rows['id']}.yaml") if part)
    schema = form.name if form.one_file_each else form.place
    up = "../" * place.count("/")
    head = f"# yaml-language-server: $schema={up}schema/{schema}.json\n"
    body = _headings(form.group, rows)
    if not form.one_file_each:
        lines = body.splitlines(keepends=True)
        body = "- " + "".join(line if n == 0 else f"  {line}" for n, line in enumerate(lines))
    return place, head + body


def _headings(group: Group, rows: Mapping[str, Any]) -> str:
    parts = []
    for field in group.fields:
        if field.name in rows:
            parts.append(_value(field.name, rows[field.name]))
        else:
            parts.append(f"# {field.name}:  {field.help or field.required}\n")
    return "".join(parts)


def _value(name: str, value: Any) -> str:
    flow: bool | None = False
    if isinstance(value, list):
        long = any(isinstance(v, str) and len(v) > LONG for v in value)
        flow = False if long or name == "examples" else None
    text: str = yaml.dump(
        {name: value},
        Dumper=InFull,
        sort_keys=False,
        allow_unicode=True,
        default_flow_style=flow,
        width=100,
    )
    return text


def tried(shipped: Path, shop: Path, draft: Draft) -> Book:
    """The book as it would be with the draft. Raises BookError when the draft has faults."""
    with tempfile.TemporaryDirectory() as aside:
        base = Path(aside) / "draft" / KNOWLEDGE
        for name, text in draft.files.items():
            path = base / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8", newline="\n")
        return load_book(shipped, [*own_knowledge(shop), base], faulty_files(shipped, shop))


def put(shop: Path, draft: Draft) -> list[Path]:
    """Write the files of the draft, none of which may be there. Raises BookError."""
    base = shop / KNOWLEDGE
    there = [base / name for name in draft.files if (base / name).exists()]
    if there:
        raise BookError([_taken(path) for path in there])
    # what others refer to comes last in `files`; written first, nothing refers into the void
    paths = []
    for name, text in reversed(list(draft.files.items())):
        path = base / name
        if not write_new(path, text):
            raise BookError([_taken(path)])
        paths.append(path)
    return paths[::-1]


def _taken(path: Path) -> Problem:
    mend = "give another name, or open that file in an editor"
    return Problem(path.as_posix(), 0, 0, "this file is there already", mend)
