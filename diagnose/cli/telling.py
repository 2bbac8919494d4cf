"""Before the first question the person tells what is known already, from a list of looks."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from string import ascii_lowercase
from typing import TYPE_CHECKING

from diagnose.book.model import Check
from diagnose.case.entries import UNASKED, Entry
from diagnose.cli.typed import command

if TYPE_CHECKING:
    from diagnose.cli.interview import Interview

ONE = re.compile(r"(\d+)\s*([a-z])\s*(\?)?[\s,;]*")
NO_MORE = ("", "d", "don't know", "dont know", "none", "0")


@dataclass(frozen=True)
class Known:
    """One look of the list and its answer."""

    check: Check
    option: str
    sure: bool


class Slip(Exception):
    """A typed line that does not fit the list; says why."""


def understood(checks: Sequence[Check], line: str) -> tuple[Known, ...]:
    """`2a 7c?` as looks and their answers. Raises Slip."""
    words, at, found = " ".join(line.lower().split()), 0, dict[str, Known]()
    while at < len(words):
        match = ONE.match(words, at)
        if match is None:
            raise Slip(f"'{words[at:]}' is no number with a letter, such as 2a.")
        check, letter = _look(checks, int(match[1])), match[2]
        options = dict(zip(ascii_lowercase, check.options, strict=False))
        if letter not in options:
            last = max(options)
            raise Slip(f"Number {match[1]} has no {letter}; its letters go from a to {last}.")
        if check.id in found:
            raise Slip(f"Number {match[1]} has two letters; give the one that fits best.")
        found[check.id] = Known(check, options[letter].id, match[3] is None)
        at = match.end()
    return tuple(found.values())


def _look(checks: Sequence[Check], number: int) -> Check:
    if not 1 <= number <= len(checks):
        raise Slip(f"There is no number {number}; they go from 1 to {len(checks)}.")
    return checks[number - 1]


def tell(interview: Interview, checks: Sequence[Check], head: str) -> str:
    """Show one list under its head and take what is known; told | nothing | back."""
    from diagnose.cli.interview import Stopped
    from diagnose.reasoning.telling import left_out
    from diagnose.view.telling import heard_text, telling_text

    say = interview.desk.say
    say("\n" + telling_text(checks, head) + "\n")
    while True:
        line = interview.desk.read().strip()
        word = command(line)
        if word == "quit":
            raise Stopped
        if word == "back":
            return "back"
        if line.lower() in NO_MORE:
            return "nothing"
        try:
            known = understood(checks, line)
        except Slip as slip:
            say(str(slip))
            continue
        interview.leave_out(left_out(interview.desk.book, checks, {k.check.id for k in known}))
        for one in known:
            say(heard_text(one.check, one.option, one.sure))
            interview.add(Entry("answer", one.check.id, one.option, UNASKED, one.sure))
        return "told"
