"""The files of a lesson pack, a folder or one zip file, read with care before anything is kept."""

from __future__ import annotations

import os
import stat
import struct
import zipfile
from collections.abc import Iterator
from pathlib import Path, PurePosixPath

from diagnose.book.files import ENDINGS
from diagnose.book.pages import MOST_BYTES
from diagnose.book.problems import BookError, Problem

CARD = "pack.yaml"
ROOMS = ("knowledge", "cases")
MOST_FILES = 500
MOST_IN_ALL = 8 * MOST_BYTES
# what zipfile raises for bytes that are no zip file, or a strange one
BROKEN = (
    zipfile.BadZipFile,
    zipfile.LargeZipFile,
    EOFError,
    ValueError,
    RuntimeError,
    struct.error,
)
READ_ME = ("readme", "readme.md", "readme.txt")


def read_pack(path: Path) -> dict[str, bytes]:
    """The files by their path within the pack; a file of remarks (README) is passed over.

    Raises BookError for a missing or broken pack, links, names that lead out of the pack, files
    that no pack holds, more than 500 files, a file over 1 MiB, more than 8 MiB in all.
    """
    if path.is_dir():
        found = _of_folder(path)
    elif path.is_file():
        found = _of_zip(path)
    else:
        raise BookError([_fault(path, "there is no such pack", "name a folder or a .zip file")])
    files: dict[str, bytes] = {}
    total = 0
    for name, raw in found:
        _allowed(path, name)
        if name.lower() in READ_ME:
            continue
        total += len(raw)
        if name in files:
            raise BookError([_fault(path, f"{name} stands in it twice")])
        files[name] = raw
        if len(files) > MOST_FILES or total > MOST_IN_ALL:
            what = f"this is more than {MOST_FILES} files or 8 MiB, the most a pack can be"
            raise BookError([_fault(path, what, "this is hardly a pack of lessons")])
    return files


def _of_folder(base: Path) -> Iterator[tuple[str, bytes]]:
    for here, folders, names in os.walk(base):
        folders.sort()
        for name in sorted((*folders, *names)):
            path = Path(here) / name
            inside = path.relative_to(base).as_posix()
            if path.is_symlink():
                raise BookError([_leads_out(base, inside, "is a link")])
            if path.name.startswith(".") or path.is_dir():
                continue
            if not path.is_file():
                raise BookError([_fault(base, f"{inside} is not a plain file")])
            if path.stat().st_size > MOST_BYTES:
                raise BookError([_too_big(base, inside)])
            try:
                yield inside, path.read_bytes()
            except OSError as error:
                raise BookError([_fault(base, f"{inside}: {error.strerror}")]) from None


def _of_zip(path: Path) -> Iterator[tuple[str, bytes]]:
    try:
        with zipfile.ZipFile(path) as pack:
            for info in pack.infolist():
                if not info.is_dir():
                    yield info.filename, _unpacked(path, pack, info)
    except BROKEN as error:
        what = f"this is no pack that can be read: {error}"
        raise BookError([_fault(path, what, "ask for it again, as a folder or a .zip")]) from None
    except OSError as error:
        raise BookError([_fault(path, error.strerror or "cannot be read")]) from None


def _unpacked(path: Path, pack: zipfile.ZipFile, info: zipfile.ZipInfo) -> bytes:
    import zlib

    if stat.S_ISLNK(info.external_attr >> 16):
        raise BookError([_leads_out(path, info.filename, "is a link")])
    if info.flag_bits & 0x1:
        raise BookError([_fault(path, f"{info.filename} is locked with a password")])
    if info.file_size > MOST_BYTES:
        raise BookError([_too_big(path, info.filename)])
    try:
        with pack.open(info) as file:
            raw = file.read(MOST_BYTES + 1)  # what the list says of its size need not be true
    except zlib.error:
        raise BookError([_fault(path, f"{info.filename} is broken")]) from None
    if len(raw) > MOST_BYTES:
        raise BookError([_too_big(path, info.filename)])
    return raw


def _allowed(path: Path, name: str) -> None:
    inside = PurePosixPath(name)
    out = inside.is_absolute() or ".." in inside.parts
    if out or any(sign in name for sign in ("\\", ":", "\0")) or not name.isprintable():
        raise BookError([_leads_out(path, name, "leads out of the pack")])
    if name == CARD or name.lower() in READ_ME:
        return
    hidden = any(part.startswith(".") for part in inside.parts)
    if hidden or len(inside.parts) < 2 or inside.parts[0] not in ROOMS:
        mend = f"a pack holds {CARD} and the folders {' and '.join(ROOMS)}"
        raise BookError([_fault(path, f"'{name}' has no place in a pack", mend)])
    if inside.suffix not in ENDINGS:
        raise BookError([_fault(path, f"'{name}' is no YAML file", "a pack holds nothing else")])


def _leads_out(path: Path, name: str, how: str) -> Problem:
    mend = "do not take it; ask whoever made it"
    return _fault(path, f"'{name}' {how}: nothing of this pack is taken", mend)


def _too_big(path: Path, name: str) -> Problem:
    return _fault(path, f"'{name}' is over 1 MiB, the most that is read", "leave it out")


def _fault(path: Path, what: str, mend: str = "") -> Problem:
    return Problem(path.as_posix(), 0, 0, what, mend)
