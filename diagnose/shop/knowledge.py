"""The shipped knowledge with the shop's own beside it; a faulty file of the shop is left out."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from diagnose.book.files import display, knowledge_files
from diagnose.book.kept import load_kept
from diagnose.book.loader import load_book
from diagnose.book.model import Book
from diagnose.book.problems import BookError, Problem
from diagnose.shop.closed import closed_cases, tried_here
from diagnose.shop.folders import KNOWLEDGE, own_knowledge

DRAFT, TRIED = "draft", "tried"


def load_with_own(shipped: Path, shop: Path) -> tuple[Book, tuple[Problem, ...]]:
    """The book of the shipped folder with that of the shop, and the faults of what is left out.

    A file of the shop that cannot be used is left out whole, then those that need it. What came
    in a pack is a draft until a case closed here names it. Raises BookError when the
    shipped knowledge itself has faults.
    """
    own = own_knowledge(shop)
    book, _, told = _usable(shipped, own)
    return _drafts(book, own, shop), told


def faulty_files(shipped: Path, shop: Path) -> frozenset[Path]:
    """The knowledge files of the shop that cannot be used. Raises BookError as above."""
    return _usable(shipped, own_knowledge(shop))[1]


def _usable(
    shipped: Path, own: Sequence[Path]
) -> tuple[Book, frozenset[Path], tuple[Problem, ...]]:
    files = {display(base, p, own=True): p for base in own for p in knowledge_files(base)}
    left: set[Path] = set()
    told: list[Problem] = []
    while True:
        try:
            return load_kept(shipped, own, left), frozenset(left), tuple(told)
        except BookError as error:
            out, problems = _at_fault(error.problems, files, left, shipped, own)
            left |= out
            told += problems


def _at_fault(
    problems: Sequence[Problem],
    files: Mapping[str, Path],
    left: Collection[Path],
    shipped: Path,
    own: Sequence[Path],
) -> tuple[set[Path], list[Problem]]:
    """Files to leave out, and the faults to tell. Raises BookError when it is the shipped one."""
    faulty = [p for p in problems if p.file in files]
    if faulty:
        return {files[p.file] for p in faulty}, faulty
    load_book(shipped)  # raises when the fault is its own
    if not own:
        raise BookError(problems)  # the shipped files were mended between two readings
    rest = [p for p in files.values() if p not in left]
    for path in rest:
        if not _faults_of_shipped(shipped, own, {*left, path}, files):
            name = next(n for n, p in files.items() if p == path)
            return {path}, [_spoils(name, problems[0])]
    what = "the shop's own knowledge as a whole does not go with the shipped one"
    return set(rest), [_spoils(own[-1].as_posix(), problems[0], what)]


def _faults_of_shipped(
    shipped: Path, own: Sequence[Path], left: Collection[Path], files: Mapping[str, Path]
) -> bool:
    try:
        load_book(shipped, own, left)
    except BookError as error:
        return not any(p.file in files for p in error.problems)
    return False


def _spoils(name: str, fault: Problem, what: str = "") -> Problem:
    said = what or f"with this file {fault.place} no longer holds: {fault.what}"
    return Problem(name, 0, 0, said, fault.mend)


def _drafts(book: Book, own: Sequence[Path], shop: Path) -> Book:
    names = [
        "your shop" if base == shop / KNOWLEDGE else f"pack {base.parent.name}" for base in own
    ]
    book = replace(book, origins=tuple(names))
    packed = {n for n, base in enumerate(own, 1) if base != shop / KNOWLEDGE}
    if not packed & set(book.own.values()):
        return book
    tried = tried_here(closed_cases(shop, book)[0])
    causes = {
        name: replace(cause, status=TRIED if name in tried else DRAFT)
        for name, cause in book.causes.items()
        if book.own.get(name) in packed
    }
    return replace(book, causes={**book.causes, **causes})
