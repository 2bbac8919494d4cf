"""The files of lessons in the shop folder: lessons/001.yaml and on; the last one counts.

Each is written whole under a name that was not there before, so that learning can be undone by
taking the last away and two that learn at once lose nothing.
"""

from __future__ import annotations

import contextlib
import re
from pathlib import Path
from typing import Any

from diagnose.book.model import Book
from diagnose.book.pages import shown
from diagnose.book.problems import BookError, Problem
from diagnose.book.records import Record
from diagnose.book.shapes import Reading
from diagnose.book.writing import write_new
from diagnose.book.yaml_nodes import read_tree
from diagnose.case.case_text import yaml_text
from diagnose.lessons.fields import LESSONS
from diagnose.lessons.model import Lessons, NoLink, Refused, Share, Strength

FOLDER = "lessons"
NAME = re.compile(r"\d{3,}\.yaml\Z")
HEAD = "# Written by: diagnose lessons learn. To undo it: diagnose lessons revert\n"


def files(shop: Path) -> list[Path]:
    """The files of lessons, the one that counts last."""
    base = shop / FOLDER
    found = base.iterdir() if base.is_dir() else ()
    return sorted((p for p in found if NAME.match(p.name)), key=lambda p: (int(p.stem), p.name))


def load_lessons(shop: Path, book: Book) -> tuple[Lessons, tuple[Problem, ...]]:
    """The lessons in force and the faults of their file; a file at fault teaches nothing."""
    there = files(shop)
    return read_lessons(there[-1], shop, book) if there else (Lessons(), ())


def read_lessons(path: Path, shop: Path, book: Book) -> tuple[Lessons, tuple[Problem, ...]]:
    """The lessons of one file; what names a cause, sign or complaint no longer known is skipped."""
    reading = Reading()
    root, problems = read_tree(path, shown(path, shop))
    record = LESSONS.read(root, reading) if root is not None else None
    faults = (*problems, *reading.problems)
    if record is None or faults:
        return Lessons(), faults
    found = Lessons(
        record.text("learned"),
        _count(record, "cases"),
        tuple(_share(r, book) for r in record.groups("shares")),
        tuple(_strength(r, book) for r in record.groups("strengths")),
        tuple(
            NoLink(_names(r, "complaint", book), _name(r, "cause", book), _count(r, "cases"))
            for r in record.groups("no_links")
        ),
        tuple(_refused(r, book) for r in record.groups("refused")),
        record.number("typical_before"),
        record.number("typical_after"),
    )
    return found, ()


def put_lessons(shop: Path, lessons: Lessons) -> Path:
    """Write the lessons as the file that counts from now on. Raises BookError."""
    there = files(shop)
    number = int(there[-1].stem) + 1 if there else 1
    while not write_new(shop / FOLDER / f"{number:03}.yaml", lessons_text(lessons)):
        number += 1
    return shop / FOLDER / f"{number:03}.yaml"


def revert(shop: Path, *, whole: bool = False) -> list[Path]:
    """Take away the last file of lessons, or all; what was taken. Raises BookError."""
    there = files(shop)
    gone = list(reversed(there)) if whole else there[-1:]
    for path in gone:
        try:
            with contextlib.suppress(FileNotFoundError):
                path.unlink()
        except OSError as error:
            what = f"this file cannot be taken away: {error.strerror or error}"
            raise BookError([Problem(path.as_posix(), 0, 0, what)]) from None
    return gone


def lessons_text(lessons: Lessons) -> str:
    """The lessons as the text of their file."""
    rows: dict[str, Any] = {
        "learned": lessons.date,
        "cases": str(lessons.cases),
        "typical_before": _written(lessons.typical_before),
        "typical_after": _written(lessons.typical_after),
    }
    for name in ("shares", "strengths", "no_links", "refused"):
        lines = [_row(part) for part in getattr(lessons, name)]
        if lines:
            rows[name] = lines
    return HEAD + yaml_text(rows)


def _row(part: Share | Strength | NoLink | Refused) -> dict[str, Any]:
    """The fields of a part, those that are empty left out."""
    row = {name: getattr(part, name) for name in part.__dataclass_fields__}
    return {name: _written(value) for name, value in row.items() if value not in ((), "")}


def _written(value: object) -> str | list[str]:
    if isinstance(value, tuple):
        return [str(part) for part in value]
    return f"{value:.10g}" if isinstance(value, float) else str(value)


def _share(r: Record, book: Book) -> Share:
    return Share(
        _names(r, "complaint", book), _name(r, "cause", book), _count(r, "acted"),
        _count(r, "cases"), r.number("before"), r.number("after"), r.number("odds"),
        r.text("machine"),
    )  # fmt: skip


def _strength(r: Record, book: Book) -> Strength:
    return Strength(
        _name(r, "cause", book), _name(r, "finding", book), r.text("value"), _count(r, "seen"),
        _count(r, "cases"), r.number("book"), r.number("before"), r.number("after"),
        r.text("machine"),
    )  # fmt: skip


def _refused(r: Record, book: Book) -> Refused:
    return Refused(
        r.text("kind"), _names(r, "what", book), _count(r, "cases"), r.number("before"),
        r.number("after"), r.text("machine"),
    )  # fmt: skip


def _count(record: Record, name: str) -> int:
    return int(record.number(name))


def _name(record: Record, name: str, book: Book) -> str:
    word = record.text(name)
    return book.renamed.get(word, word)


def _names(record: Record, name: str, book: Book) -> tuple[str, ...]:
    return tuple(book.renamed.get(word, word) for word in record.texts(name))
