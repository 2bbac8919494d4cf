"""Files as pages: opened with care, each way to fail with its own plain words."""

from __future__ import annotations

import os
import stat
from pathlib import Path

from diagnose.book.nodes import Page, Refused
from diagnose.book.problems import Problem

MOST_BYTES = 1 << 20


def shown(path: Path, base: Path | None = None) -> str:
    """The path as people see it: from the folder above `base`, else as given, with slashes."""
    if base is not None:
        return path.relative_to(base.parent).as_posix()
    return path.as_posix()


def read_page(path: Path, name: str = "") -> Page:
    """The text of a file.

    Raises Refused when it is missing, a folder, no plain file, larger than 1 MiB, locked, or
    not UTF-8.
    """
    name = name or shown(path)
    try:
        return Page(name, _decode(name, _bytes(path, name)))
    except FileNotFoundError:
        raise Refused(_whole(name, "there is no such file", _beside(path))) from None
    except PermissionError:
        mend = "ask for leave to read it, or copy it to where you may"
        raise Refused(_whole(name, "this file is locked against reading", mend)) from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise Refused(_whole(name, f"this file cannot be read: {reason}")) from None


def page_of(name: str, raw: bytes) -> Page:
    """A page from bytes that come from elsewhere than a file.

    Raises Refused when there are more than 1 MiB of them or they are not UTF-8.
    """
    if len(raw) > MOST_BYTES:
        what = "this is more than 1 MiB, the most that is read"
        raise Refused(_whole(name, what, "this is hardly the text you mean"))
    return Page(name, _decode(name, raw))


def _bytes(path: Path, name: str) -> bytes:
    status = os.stat(path)
    if stat.S_ISDIR(status.st_mode):
        raise Refused(_whole(name, "this is a folder, not a file", "name a file in it"))
    if not stat.S_ISREG(status.st_mode):
        raise Refused(_whole(name, "this is not a plain file", "name a text file"))
    with open(path, "rb") as file:
        raw = file.read(MOST_BYTES + 1)
    if len(raw) > MOST_BYTES:
        size = max(status.st_size, len(raw)) / MOST_BYTES
        what = f"this file is {size:.1f} MiB; 1 MiB is the most that is read"
        raise Refused(_whole(name, what, "this is hardly the file you mean"))
    return raw


def _decode(name: str, raw: bytes) -> str:
    try:
        return raw.decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n")
    except UnicodeDecodeError as error:
        before = raw[: error.start]
        line = before.count(b"\n") + 1
        column = error.start - (before.rfind(b"\n") + 1) + 1
        what = f"this file is not UTF-8 text (byte {raw[error.start]:#04x})"
        mend = "save it again as UTF-8"
        raise Refused(Problem(name, line, column, what, mend)) from None


def _whole(name: str, what: str, mend: str = "") -> Problem:
    return Problem(name, 0, 0, what, mend)


def _beside(path: Path) -> str:
    from diagnose.book.near import nearest

    try:
        names = [p.name for p in path.parent.iterdir()]
    except OSError:
        return "look at the name of the folder"
    near = nearest(path.name, names)
    return f"did you mean {path.with_name(near).as_posix()}?" if near else "look at its name"
