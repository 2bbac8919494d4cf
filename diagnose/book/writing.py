"""Files written whole or not at all."""

from __future__ import annotations

import contextlib
import errno
import os
import threading
from pathlib import Path

from diagnose.book.problems import BookError, Problem

# what systems say where a drive knows no hard links (FAT, some shared drives)
NO_LINKS = (errno.EPERM, errno.EOPNOTSUPP, errno.ENOSYS, errno.EMLINK, errno.EACCES)


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


def write_new(path: Path, content: str | bytes) -> bool:
    """Write a file that was not there, whole; False, with nothing changed, when it is there.

    Of two that write the same path at once exactly one gets True. Raises BookError when the
    place cannot be written.
    """
    target = Path(os.path.realpath(path))
    aside = target.with_name(f".{target.name}.{os.getpid()}.{threading.get_ident()}.part")
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        _write(aside, content)
        made = _claim(aside, target)
        _settle(target.parent)
    except OSError as error:
        raise BookError([_cannot(path, error)]) from None
    finally:
        with contextlib.suppress(OSError):
            aside.unlink()
    return made


def _claim(aside: Path, target: Path) -> bool:
    try:
        os.link(aside, target)
    except FileExistsError:
        return False
    except OSError as error:
        if error.errno not in NO_LINKS:
            raise
        return _claim_without_links(aside, target)
    return True


def _claim_without_links(aside: Path, target: Path) -> bool:
    # a drive without hard links: the name is claimed first, then the whole file put over it
    try:
        os.close(os.open(target, os.O_CREAT | os.O_EXCL | os.O_WRONLY))
    except FileExistsError:
        return False
    os.replace(aside, target)
    return True


def _write(aside: Path, content: str | bytes) -> None:
    raw = content.encode("utf-8") if isinstance(content, str) else content
    with open(aside, "wb") as file:
        file.write(raw)
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
