"""One sitting at the terminal: the interview between its terminal and its file."""

from __future__ import annotations

import threading
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import click

from diagnose.book.problems import BookError
from diagnose.case.case_text import case_text
from diagnose.case.entries import Case
from diagnose.case.files import load_case, save_case
from diagnose.cli.console import say, tell, typed
from diagnose.cli.exits import DONE, STOP
from diagnose.cli.open_cases import (
    Kept,
    again,
    claimed,
    new_path,
    offer,
    open_cases,
    resumed,
)
from diagnose.cli.room import Room, open_room
from diagnose.cli.settings import Settings
from diagnose.cli.slip_typed import read_slip
from diagnose.cli.source import fault

ENDS = {
    "cured": "Good. Close the case now, so that it is found again when the fault comes back.",
    "to do": "Do it when you can, then run diagnose ask again and say how it went.",
    "stuck": "Take the page along and ask someone who can look at the machine.",
    "stopped": "Saved. Run diagnose ask again to go on.",
}


class Sitting:
    """Keeps the case in its file; the file is named once there is a complaint."""

    def __init__(self, room: Room, path: Path | None) -> None:
        self.room, self.path = room, path
        self.case: Case | None = None
        self.written: str | None = None  # the file as this sitting left it

    def save(self, case: Case) -> None:
        """Write the case; when that cannot be done the case is shown, so that it is not lost."""
        try:
            self._write(case)
        except BookError:
            if case.entries:
                say("The case cannot be saved. This is it; copy it to keep it:\n")
                tell(case_text(case))
            raise

    def _write(self, case: Case) -> None:
        text = case_text(case)
        if self.path is not None and self._touched(self.path):
            say(f"{self.path.as_posix()} was changed by another meanwhile; it stays as it is.")
            self.path = claimed(again(self.path), text)
            say(f"Going on in {self.path.as_posix()}.")
        elif self.path is None:
            self.path = claimed(new_path(self.room.folder / "cases", case), text)
        else:
            save_case(case, self.path)
        self.case, self.written = case, text

    def _touched(self, path: Path) -> bool:
        try:
            return self.written is not None and path.read_text(encoding="utf-8") != self.written
        except (OSError, UnicodeDecodeError):
            return False

    @property
    def kept(self) -> str:
        """Where the case is kept, in words."""
        if self.case is None or self.path is None:
            return "Nothing was answered yet, so nothing is saved."
        count = sum(1 for e in self.case.entries if e.kind == "answer")
        where = self.path.as_posix()
        return f"Saved in {where} (answers: {count}). Go on with: diagnose ask"


def sit(
    settings: Settings,
    file: Path | None,
    new: bool,
    *,
    title: str,
    machine: str,
    wheel: str,
    planned: Path | None = None,
    slip: str | None = None,
) -> int:
    """One sitting; the exit code. `planned` is the file of a planned job to begin the case with,
    `slip` a filled pocket slip as typed.

    Raises BookError, and click.Abort when interrupted.
    """
    room = open_room(settings)
    sitting = Sitting(room, file)
    try:
        kept = _begin(room, file, new or planned is not None or slip is not None)
        if kept and slip is not None:
            raise fault(f"{kept.path.as_posix()} holds a case already", "name a new --case file")
        case = kept.case if kept else begun_from(room, planned)
        case = case if slip is None else read_slip(room, slip)
        if kept:
            sitting.path, sitting.case = kept.path, kept.case
            sitting.written = case_text(kept.case) if kept.path.exists() else None
        case = replace(
            case,
            title=title or case.title,
            machine=machine or case.machine,
            wheel=wheel or case.wheel,
        )
        room.cards(case)
        if slip is not None:
            sitting.save(case)
        return _interview(room, sitting, case)
    except KeyboardInterrupt:
        say(f"\nStopped. {sitting.kept}")
        raise click.Abort from None
    except EOFError:
        say(f"\nThe input ended here. {sitting.kept}")
        raise click.Abort from None


def begun_from(room: Room, planned: Path | None) -> Case:
    """A new case; with a planned job its entries are answered already, and its file stays.

    Raises BookError when the job cannot be read.
    """
    if planned is None:
        return Case("", ())
    case = load_case(planned, room.book)
    count = len({*case.given, *(e.name for e in case.entries if e.kind == "answer")})
    say(f"From {planned.as_posix()}: {count} things planned; they are not asked again.")
    return replace(case, complaint=(), path="")


def _warmed(read: Callable[[], str]) -> Callable[[], str]:
    """Reads as `read` does; the first time the rules engine is imported meanwhile.

    Nothing else is imported in that time: an interrupt while two threads import one module can
    leave it locked for good.
    """
    warming = threading.Thread(target=_warm_up, daemon=True)

    def first() -> str:
        if warming.ident is None:
            warming.start()
        line = read()
        if warming.is_alive():
            warming.join()
        return line

    return first


def _warm_up() -> None:
    from importlib import import_module

    import_module("diagnose.view.build")
    from diagnose.reasoning.forward import warm_up

    warm_up()


def _begin(room: Room, file: Path | None, new: bool) -> Kept | None:
    if file is not None:
        return resumed(file, room.book, say) if file.exists() else None
    found = [] if new else open_cases(room.folder / "cases", room.book, say)
    return offer(found, typed, say) if found else None


def _interview(room: Room, sitting: Sitting, case: Case) -> int:
    from diagnose.cli.interview import Desk, Interview

    desk = Desk(
        book=room.book,
        reasoned=room.reasoned,
        read=_warmed(typed),
        say=say,
        save=sitting.save,
        machines={name: card.name for name, card in room.shop.machines.items()},
        wheels={name: card.name for name, card in room.shop.wheels.items()},
        earlier=lambda case: _told_earlier(room, case),
        good={name: good.readings for name, good in room.shop.healthy.items()},
    )
    interview = Interview(desk, case)
    end = interview.run()
    if not interview.case.complaint:
        say(sitting.kept)
        return DONE
    return _finish(room, sitting, interview.case, end)


def _told_earlier(room: Room, case: Case) -> str:
    from diagnose.view.text import earlier_lines

    return "\n".join(line for e in room.earlier(case) for line in earlier_lines(e))


def _finish(room: Room, sitting: Sitting, case: Case, end: str) -> int:
    from diagnose.view.text import result_text

    view = room.view(case)
    say()
    tell(result_text(view, short=True))
    say(f"\n{ENDS[end]}")
    if sitting.path is not None:
        where = sitting.path.as_posix()
        say(f"The case: {where}")
        say(f"Its page: diagnose report {_quoted(where)}")
        if end == "cured":
            say(f"Close it: diagnose close {_quoted(where)}")
    return STOP if view.stops else DONE


def _quoted(path: str) -> str:
    return f'"{path}"' if " " in path else path
