"""Files written whole or not at all."""

from __future__ import annotations

import contextlib
import os
from pathlib import Path

from diagnose.book.problems import BookError, Problem


def write_whole(path: Path, text: str) -> None:
    """Write the text as UTF-8: aside first, flushed to the disk, then renamed over `path`.

    Whatever happens, `path` holds the old text or the new one, never a part. The folder is made
    when it is missing. Raises BookError when the place cannot be written.
    """
    target = Path(os.path.realpath(path))
    aside = target.with_name(f".{target.name}.{os.getpid()}.part")
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        if target.is_dir():
            raise IsADirectoryError(f"{path} is a folder")
        _write(aside, text)
        os.replace(aside, target)
        _settle(target.parent)
    except OSError as error:
        raise BookError([_cannot(path, error)]) from None
    finally:
        with contextlib.suppress(OSError):
            aside.unlink()


def _write(aside: Path, text: str) -> None:
    with open(aside, "w", encoding="utf-8", newline="\n") as file:
        file.write(text)
        file.flush()
        os.fsync(file.fileno())


def _settle(folder: Path) -> None:
    # Not every system lets a folder be opened; the rename is done either way.
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _cannot(path: Path, error: OSError) -> Problem:
    what = "nothing can be written here"
    if isinstance(error, IsADirectoryError):
        return Problem(path.as_posix(), 0, 0, "this is a folder, not a file", "name a file in it")
    reason = error.strerror or str(error)
    mend = "name a file in a folder that is yours to write"
    return Problem(path.as_posix(), 0, 0, f"{what}: {reason}", mend)
