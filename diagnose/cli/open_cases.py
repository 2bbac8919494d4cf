"""The cases of the shop folder: which are open, which file a new or resumed one is kept in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from diagnose.book.model import Book
from diagnose.book.problems import BookError
from diagnose.book.writing import write_new
from diagnose.case.case_text import case_text
from diagnose.case.entries import Case
from diagnose.case.files import load_case
from diagnose.cli.typed import command, pick

MOST_OFFERED = 5


@dataclass(frozen=True)
class Kept:
    """A case and the file that holds it."""

    case: Case
    path: Path


def open_cases(folder: Path, book: Book, say: Callable[[str], None]) -> list[Kept]:
    """Cases not yet cured, the last touched first; a file at fault is named and left alone."""
    found: list[Kept] = []
    for path in sorted(_files(folder), key=lambda p: (-_touched(p), p.name)):
        try:
            case = load_case(path, book)
        except BookError as error:
            say(f"Left alone, as it cannot be read: {error.problems[0].render()}")
            continue
        if not cured(case) and case.closed is None and not closed_twin(path, case):
            found.append(Kept(case, path))
        if len(found) == MOST_OFFERED:
            break
    return found


def _files(folder: Path) -> list[Path]:
    found = folder.glob("*.yaml") if folder.is_dir() else ()
    return [p for p in found if not p.name.startswith(".")]


def _touched(path: Path) -> float:
    try:
        return path.stat().st_mtime
    except OSError:  # another process has just closed it
        return 0.0


def closed_twin(path: Path, case: Case) -> bool:
    """True when the case stands among the closed ones: the process that closed it was killed."""
    twin = path.parent / "closed" / path.name
    try:
        return twin.read_text(encoding="utf-8").startswith(case_text(case))
    except (OSError, UnicodeDecodeError):
        return False


def cured(case: Case) -> bool:
    """True when the last thing tried took the fault away for good."""
    tried = [e for e in case.entries if e.kind == "tried"]
    return bool(tried) and tried[-1].outcome == "gone and stays"


def offer(found: list[Kept], read: Callable[[], str], say: Callable[[str], None]) -> Kept | None:
    """Let the person go on with an open case; None for a new one."""
    say("Go on with a case, or begin a new one?\n")
    say("   0  a new case")
    for number, kept in enumerate(found, 1):
        when = date.fromtimestamp(kept.path.stat().st_mtime).isoformat()
        answers = sum(1 for e in kept.case.entries if e.kind == "answer")
        say(f"{number:>4}  {kept.case.title} ({when}, answers: {answers})")
    say("\nA number")
    while True:
        line = read().strip()
        if line in ("0", "") or command(line) == "quit":
            return None
        if line.isdecimal() and int(line) <= len(found):
            return found[int(line) - 1]
        say(pick(len(found), 0))


def resumed(path: Path, book: Book, say: Callable[[str], None]) -> Kept:
    """The case of a file to go on with. A file a person wrote is never rewritten.

    Raises BookError when the file cannot be used.
    """
    case = load_case(path, book)
    if case.closed is not None:
        say(f"{path.as_posix()} was closed on {case.closed.date} and stays so.")
        inside = path.parent.name == "closed"
        other = again(path.parent.parent / path.name if inside else path)
        say(f"Going on in {other.as_posix()} as a case of its own.")
        return Kept(replace(case, closed=None), other)
    if path.read_text(encoding="utf-8-sig") == case_text(case):
        return Kept(case, path)
    other = _free(path.with_name(f"{path.stem}-continued.yaml"))
    say(f"{path.as_posix()} was written by hand and stays as it is; going on in {other.name}.")
    return Kept(case, other)


def new_path(folder: Path, case: Case) -> Path:
    """A file name for a new case: the day and the complaint, never one that is taken."""
    return _free(folder / f"{date.today().isoformat()}-{case.complaint[0]}.yaml")


def again(path: Path) -> Path:
    """A free name beside a case file, for going on without touching it."""
    return _free(path.with_name(f"{path.stem}-again.yaml"))


def claimed(path: Path, text: str) -> Path:
    """Write a new case; when another takes the name first, the next free one. The path."""
    wanted = path
    while not write_new(path, text):
        path = _free(wanted)
    return path


def _free(path: Path) -> Path:
    number, free = 1, path
    while free.exists():
        number += 1
        free = path.with_name(f"{path.stem}-{number}{path.suffix}")
    return free
