"""A filled pocket slip from the command line: read back in words, and ranked."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from diagnose.case.entries import Case
    from diagnose.cli.room import Room
    from diagnose.cli.settings import Settings


def read_slip(room: Room, text: str) -> Case:
    """The case of a slip, read back to compare with the paper. Raises BookError."""
    from diagnose.cli.console import say
    from diagnose.view.folding import wrapped
    from diagnose.view.slip_typed import case_of_slip, told

    case = case_of_slip(room.book, text)
    say("Read from the slip; compare it with the paper:")
    for line in told(room.book, case):
        say(wrapped(line, 4, "  - "))
    return case


def rank_slip(settings: Settings, text: str, *, machine: str, wheel: str, title: str) -> int:
    """Rank the case of a slip without asking anything; the exit code. Raises BookError."""
    from dataclasses import replace

    from diagnose.cli.console import tell
    from diagnose.cli.exits import DONE, STOP
    from diagnose.cli.room import open_room
    from diagnose.view.text import result_text

    room = open_room(settings)
    case = read_slip(room, text)
    case = replace(case, machine=machine, wheel=wheel, title=title or case.title)
    view = room.view(case)
    tell(result_text(view))
    return STOP if view.stops else DONE
