"""Closing a case from options or from a few questions; nothing is written before the last."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from diagnose.cli.asking import Asker
from diagnose.cli.console import say, tell
from diagnose.cli.exits import DONE, WRONG
from diagnose.cli.room import Room
from diagnose.cli.source import fault
from diagnose.view.folding import wrapped

if TYPE_CHECKING:
    from diagnose.case.entries import Case, Closed

NEW, NOTHING = "something-new", "not-cured"
MOST_OFFERED = 8


@dataclass(frozen=True)
class Found:
    """The case to close and its file; no file when it came from standard input."""

    case: Case
    path: Path | None


def case_to_close(room: Room, name: str) -> Found:
    """The case of a file, or of that name in the shop's cases. Raises BookError."""
    from diagnose.cli.source import load

    path = find_case(room.folder, name)
    return Found(load(name if path is None else path.as_posix(), room.book), path)


def find_case(shop: Path, name: str, *, closed: bool = False) -> Path | None:
    """The file of a case by its path, or by its name in the shop; None for standard input.

    A bare name is looked for in the shop first: among the open cases, or the `closed` ones.
    """
    if name == "-":
        return None
    places = [shop / "cases" / name, shop / "cases" / "closed" / name]
    if closed:
        places.reverse()
    places.insert(len(places) if Path(name).name == name else 0, Path(name))
    for path in places:
        for file in (path, path.with_name(f"{path.name}.yaml")):
            if file.is_file():
                return file
    return Path(name)


def checked(room: Room, closed: Closed, not_cured: bool) -> Closed:
    """The closing with its causes known, its day real, its pictures there. Raises BookError."""
    from diagnose.book.day import MEND, day_of
    from diagnose.book.near import listed, nearest

    if not_cured == closed.cured:
        mend = "keep one of the two"
        raise fault("it was cured, and was not" if not_cured else "nothing cured it", mend)
    causes = []
    for name in closed.cured_by:
        own = room.book.renamed.get(name, name)
        if own not in room.book.causes:
            near = nearest(name, room.book.causes)
            mend = "" if near else f"the causes are: {listed(room.book.causes, 60)}"
            raise fault(f"there is no cause '{name}'", mend, near)
        causes.append(own)
    day = day_of(closed.date) if closed.date else datetime.date.today()
    if day is None:
        raise fault(f"'{closed.date}' is no day", MEND)
    for picture in closed.pictures:
        if not Path(picture).is_file():
            raise fault(f"there is no picture {picture}", "look at its path")
    return replace(closed, date=day.isoformat(), cured_by=tuple(dict.fromkeys(causes)))


def put_closed(room: Room, found: Found, closed: Closed) -> None:
    """Write the closed case and say where, and what can be done with it."""
    from diagnose.shop.closed import close_case

    path = close_case(room.folder, found.case, found.path, closed)
    tell(path.as_posix())
    if found.path is not None and found.path.exists():
        say(f"{found.path.as_posix()} was written by hand, or lies elsewhere, and stays there.")
    if closed.cured:
        say("To count it in from now on: diagnose lessons learn")
    if closed.something_new:
        say(f"A cause of your own from it: diagnose knowledge new cause --from-case {path.stem}")


# questions -------------------------------------------------------------------------------------


def ask_closing(asker: Asker, room: Room, name: str) -> int:
    """Ask how a case ended and close it; the exit code. Raises Left, BookError."""
    from diagnose.case.entries import Closed

    found = case_to_close(room, name) if name else _which(asker, room)
    if found is None:
        say("There is no open case. diagnose ask begins one.")
        return WRONG
    if found.case.closed is not None:
        raise fault(f"this case was closed on {found.case.closed.date}", "nothing was changed")
    asker.say("\n" + wrapped(f"Closing: {found.case.title}"))
    cures, new = _cures(asker, room, found.case)
    done = asker.words("What was done?")
    spent = asker.minutes("How many minutes did it take, all in all?")
    proved = asker.words("How was it proved?" + _proof(room, cures))
    note = asker.words("A note for whoever meets this next?")
    pictures = asker.words("Pictures: their paths, with commas between?")
    closed = Closed(
        "",
        tuple(c for c in cures if c != NOTHING),
        new,
        done,
        spent,
        proved,
        note,
        tuple(p.strip() for p in pictures.split(",") if p.strip()),
    )
    put_closed(room, found, checked(room, closed, NOTHING in cures))
    return DONE


def _which(asker: Asker, room: Room) -> Found | None:
    from diagnose.shop.closed import cases_of

    cases = cases_of(room.folder, room.book)
    room.left_out(cases.problems)
    by_name = {k.path.stem: k for k in cases.open}
    if not by_name:
        return None
    choices = {name: f"{k.case.title} ({name})" for name, k in by_name.items()}
    kept = by_name[asker.pick("Which case?", choices, must=True)]
    return Found(kept.case, kept.path)


def _cures(asker: Asker, room: Room, case: Case) -> tuple[tuple[str, ...], str]:
    """The causes that were it, or NOTHING alone; and the words for one that is new."""
    choices = {name: room.book.causes[name].name for name in _likely(room, case)}
    choices[NEW] = "something that is not in this list: I say it in my words"
    choices[NOTHING] = "nothing cured it"
    while True:
        question = "What cured it? A number; several with commas, if it took them together."
        chosen = asker.picks(question, choices, must=True)
        if NOTHING not in chosen or len(chosen) == 1:
            break
        asker.say("It was cured, or it was not: type one of the two.")
    if NEW not in chosen:
        return chosen, ""
    others = [name for name in choices if name in room.book.causes]
    known, new = _in_own_words(asker, room, others)
    causes = (*(c for c in chosen if c != NEW), *((known,) if known else ()))
    return tuple(dict.fromkeys(causes)), new


def _likely(room: Room, case: Case) -> list[str]:
    """The fix tried last that worked, then the causes in their order."""
    from diagnose.reasoning.belief import Impossible

    tried = [e.name for e in reversed(case.entries) if e.kind == "tried" and "gone" in e.outcome]
    try:
        ranked = [r.cause for r in room.reasoned(case).belief.ranked][:MOST_OFFERED]
    except Impossible:
        ranked = []
    return list(dict.fromkeys(n for n in (*tried, *ranked) if n in room.book.causes))


def _in_own_words(asker: Asker, room: Room, likely: list[str]) -> tuple[str, str]:
    """(cause of the book, ""), when the words mean one after all; else ("", the words)."""
    from diagnose.book.causes_said import cause_named, causes_meant

    must = "Say it in a few words: the new felt under the chuck gave way"
    words = asker.words("What was it, in your words?", must=must)
    named = cause_named(words, room.book)
    if named:
        asker.say(wrapped(room.book.causes[named].name, 5, "   = "))
        return named, ""
    near = causes_meant(words, room.book, likely)
    if not near:
        return "", words
    question = "The book knows these. Is it one of them? A number; Enter: no, it is something new."
    chosen = asker.pick(question, {name: room.book.causes[name].name for name in near})
    return (chosen, "") if chosen else ("", words)


def _proof(room: Room, cures: tuple[str, ...]) -> str:
    first = next((room.book.causes[c] for c in cures if c in room.book.causes), None)
    return f" (The book asks: {first.fix.proof})" if first is not None and first.fix.proof else ""
