"""The cases of the shop folder: open ones, closed ones, and closing one.

A closed case goes whole into a file of its own that was not there before, so that two who close
at once lose nothing and no lock is needed; only then is the open file taken away. A process
killed between the two leaves both, and the open one counts as closed.
"""

from __future__ import annotations

import contextlib
from collections.abc import Collection, Iterable
from dataclasses import dataclass, replace
from pathlib import Path

from diagnose.book.files import ENDINGS
from diagnose.book.model import Book
from diagnose.book.problems import BookError, Problem
from diagnose.book.writing import write_new
from diagnose.case.case_text import case_text
from diagnose.case.entries import Case, Closed
from diagnose.case.files import load_case
from diagnose.shop.folders import CASES, CLOSED, packs


@dataclass(frozen=True)
class Kept:
    """A case and its file. `pack` names the pack it came in; "" for a case of the shop."""

    case: Case
    path: Path
    pack: str = ""

    @property
    def date(self) -> str:
        """The day it was closed; "" for an open case."""
        return self.case.closed.date if self.case.closed else ""


@dataclass(frozen=True)
class Cases:
    """What the shop folder holds: open and closed cases, and the faults of what was left out."""

    open: tuple[Kept, ...]
    closed: tuple[Kept, ...]
    problems: tuple[Problem, ...]


def closed_cases(
    shop: Path, book: Book, having: Collection[str] = ()
) -> tuple[tuple[Kept, ...], tuple[Problem, ...]]:
    """The shop's own closed cases, the latest first, and the faults of those left out.

    With `having` only files are read in which one of these words stands.
    """
    found, problems = _read(_files(shop), book, having)
    closed = [k for k in found if k.case.closed is not None]
    return tuple(sorted(closed, key=_latest_first)), problems


def cases_of(shop: Path, book: Book) -> Cases:
    """Every case of the shop folder; those of packs among the closed ones."""
    found, problems = _read(_files(shop), book)
    for pack in packs(shop):
        more, faults = _read(sorted((pack / CASES).glob("*.yaml")), book, pack=pack.name)
        found, problems = found + more, problems + faults
    closed = sorted((k for k in found if k.case.closed is not None), key=_latest_first)
    own = {k.path.stem: k.case for k in closed if not k.pack}
    still = [k for k in found if k.case.closed is None and not _same(own.get(k.path.stem), k.case)]
    return Cases(tuple(still), tuple(closed), problems)


def _latest_first(kept: Kept) -> tuple[int, str]:
    return -int(kept.date.replace("-", "") or 0), kept.path.as_posix()


def _files(shop: Path) -> list[Path]:
    folders = (shop / CASES, shop / CLOSED)
    return [p for f in folders if f.is_dir() for p in sorted(f.iterdir()) if _wanted(p)]


def _wanted(path: Path) -> bool:
    return path.suffix in ENDINGS and not path.name.startswith(".") and not path.is_dir()


def _read(
    paths: Iterable[Path], book: Book, having: Collection[str] = (), pack: str = ""
) -> tuple[tuple[Kept, ...], tuple[Problem, ...]]:
    found: list[Kept] = []
    problems: list[Problem] = []
    for path in paths:
        if having and not _holds(path, having):
            continue
        try:
            found.append(Kept(load_case(path, book), path, pack))
        except BookError as error:
            if path.exists():  # else another process has just closed it
                problems += error.problems
    return tuple(found), tuple(problems)


def _holds(path: Path, words: Collection[str]) -> bool:
    try:
        text = path.read_text(encoding="utf-8", errors="replace")
    except OSError:
        return True  # the reader says better what is wrong with it
    return any(word in text for word in words)


def _same(one: Case | None, other: Case) -> bool:
    """True for the same job with the same entries, closed or not."""
    return one is not None and (one.title, one.complaint, _bare(one)) == (
        other.title,
        other.complaint,
        _bare(other),
    )


def _bare(case: Case) -> tuple[object, ...]:
    return tuple(replace(entry, line=0) for entry in case.entries)


def tried_here(closed: Iterable[Kept]) -> frozenset[str]:
    """The causes that a closed case of this shop names as its cure."""
    return frozenset(
        cause for k in closed if k.case.closed and not k.pack for cause in k.case.closed.cured_by
    )


def close_case(shop: Path, case: Case, path: Path | None, closed: Closed) -> Path:
    """Write the closed case among the closed ones and take the open file away; the new path.

    A file that a person wrote, or that lies outside the shop, stays where it is. Raises
    BookError, with nothing changed, when the case is closed already or nothing can be written.
    """
    if case.closed is not None:
        raise BookError([_already(path or Path("case"), case.closed)])
    text = case_text(replace(case, closed=closed))
    stem = path.stem if path is not None else "-".join((closed.date, *case.complaint[:1]))
    target, number = shop / CLOSED / f"{stem}.yaml", 1
    while not write_new(target, text):
        there = _closed_in(target)
        if there and there.startswith(case_text(case)):
            raise BookError([_already(target)])
        number += 1
        target = shop / CLOSED / f"{stem}-{number}.yaml"
    if path is not None and path.resolve().parent == (shop / CASES).resolve():
        _take_away(path, case)
    return target


def _closed_in(path: Path) -> str:
    with contextlib.suppress(OSError, UnicodeDecodeError):
        return path.read_text(encoding="utf-8")
    return ""


def _take_away(path: Path, case: Case) -> None:
    with contextlib.suppress(OSError, UnicodeDecodeError):
        if path.read_text(encoding="utf-8") == case_text(case):
            path.unlink()


def _already(path: Path, closed: Closed | None = None) -> Problem:
    when = f" on {closed.date}" if closed else ""
    what = f"this case is closed already{when}"
    return Problem(path.as_posix(), 0, 0, what, "nothing was changed; look at it there")
