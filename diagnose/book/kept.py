"""The book kept between runs, so that a few hundred small files need not be read each time.

Kept under the content of the files and the form of the book: when either changes the name is
another and the files are read. Whatever is missing, damaged or strange is passed over; the folder
may be deleted at any time. DIAGNOSE_CACHE names the folder; "off" keeps nothing.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import sys
from collections.abc import Collection, Sequence
from pathlib import Path

from diagnose.book import packed
from diagnose.book.files import knowledge_files
from diagnose.book.loader import load_book
from diagnose.book.model import Book
from diagnose.book.problems import BookError
from diagnose.book.writing import write_whole

MOST_KEPT = 4  # books kept: the newest
LARGEST = 64 * 2**20  # bytes; a larger file is not one of ours


def load_kept(folder: Path, extra: Sequence[Path] = (), leave_out: Collection[Path] = ()) -> Book:
    """As `load_book`, from what is kept when the files have not changed.

    Raises BookError as `load_book` does; a book with faults is never kept.
    """
    place = _place()
    if place is None:
        return load_book(folder, extra, leave_out)
    key = _key([Path(folder), *map(Path, extra)], leave_out)
    path = place / f"{key[:32]}.book"
    book = _read(path, key)
    if book is None:
        book = load_book(folder, extra, leave_out)
        _keep(path, key, book)
    return book


def _place() -> Path | None:
    named = os.environ.get("DIAGNOSE_CACHE", "")
    if named == "off":
        return None
    if named:
        return Path(named)
    try:
        home = Path.home()
    except RuntimeError:
        return None
    usual = {
        "win32": os.environ.get("LOCALAPPDATA", str(home / "AppData" / "Local")),
        "darwin": str(home / "Library" / "Caches"),
    }.get(sys.platform, os.environ.get("XDG_CACHE_HOME") or str(home / ".cache"))
    return Path(usual) / "diagnose"


def _key(bases: Sequence[Path], leave_out: Collection[Path]) -> str:
    digest = hashlib.sha256(packed.form().encode())
    for base in bases:
        digest.update(b"\0folder\0" + os.fsencode(base.resolve()))
        for path in knowledge_files(base):
            if path in leave_out:
                continue
            digest.update(os.fsencode(path.relative_to(base)) + b"\0")
            with contextlib.suppress(OSError):
                data = path.read_bytes()
                digest.update(str(len(data)).encode() + b"\0" + data)
    return digest.hexdigest()


def _read(path: Path, key: str) -> Book | None:
    try:
        if path.stat().st_size > LARGEST:
            return None
        head, _, body = path.read_bytes().partition(b"\n")
        if head.decode("ascii") != f"{key} {hashlib.sha256(body).hexdigest()}":
            return None
        return packed.from_text(body.decode("utf-8"))
    except (OSError, ValueError):
        return None


def _keep(path: Path, key: str, book: Book) -> None:
    body = packed.to_text(book)
    head = f"{key} {hashlib.sha256(body.encode('utf-8')).hexdigest()}"
    with contextlib.suppress(BookError, OSError):
        write_whole(path, f"{head}\n{body}")
        kept = sorted(path.parent.glob("*.book"), key=lambda p: p.stat().st_mtime, reverse=True)
        for old in kept[MOST_KEPT:]:
            old.unlink()
