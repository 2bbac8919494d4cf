"""A small whole knowledge for tests, and copies of it with one thing changed."""

from __future__ import annotations

import shutil
from functools import cache
from pathlib import Path

from diagnose.book.loader import load_book
from diagnose.book.model import Book
from diagnose.book.problems import BookError, Problem

SMALL = Path(__file__).parent / "small_knowledge"


@cache
def small_book() -> Book:
    """The small knowledge, loaded once."""
    return load_book(SMALL)


def copy_small(tmp_path: Path) -> Path:
    """A copy of the small knowledge to change."""
    folder = tmp_path / "knowledge"
    shutil.copytree(SMALL, folder)
    return folder


def change(folder: Path, file: str, old: str, new: str) -> None:
    """Replace the first `old` of a file; it must be there."""
    path = folder / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def faults(folder: Path) -> tuple[Problem, ...]:
    """The faults of a knowledge folder; none when it loads."""
    try:
        load_book(folder)
    except BookError as error:
        return error.problems
    return ()
