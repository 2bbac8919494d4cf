"""`l`: everything said so far, by number, and one of them changed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from diagnose.case.entries import Entry
from diagnose.reasoning.reason import Reasoned
from diagnose.view.folding import wrapped

if TYPE_CHECKING:
    from diagnose.cli.interview import Interview


@dataclass(frozen=True)
class Row:
    """One line of the list: the check, what was said, the entry it stands in (0 = none)."""

    check: str
    text: str
    entry: int
    before: Entry | None


def rows(reasoned: Reasoned) -> list[Row]:
    """Answers in force in order, then what was put off."""
    from diagnose.cli.interview import said

    book, read = reasoned.read.book, reasoned.read.gathered.read
    found = []
    for s in read.answers:
        if s.check in book.checks:
            entry = Entry("answer", s.check, s.value, s.how, s.sure)
            if entry.left_out:
                continue
            found.append(Row(s.check, said(book.checks[s.check], entry), s.entry, entry))
    return found + [Row(name, "put off till later", 0, None) for name in dict.fromkeys(read.later)]


def list_and_change(interview: Interview, reasoned: Reasoned) -> None:
    """Show the list; take a number and ask that check again."""
    from diagnose.cli.interview import Stopped
    from diagnose.cli.typed import command

    desk, found = interview.desk, rows(reasoned)
    if not found:
        desk.say("Nothing is answered yet.")
        return
    desk.say("\nSo far you said:")
    for number, row in enumerate(found, 1):
        ask = desk.book.checks[row.check].ask
        desk.say(wrapped(f"{ask}  {row.text}", 6, f"{number:>4}  "))
    desk.say("\nA number to change one, m to tell more that you know, Enter to go on.")
    while True:
        line = desk.read().strip()
        if command(line) == "quit":
            raise Stopped
        if not line or command(line) == "back":
            return
        if line.lower() in ("m", "more"):
            interview.tell_more(reasoned)
            return
        if line.isdecimal() and 1 <= int(line) <= len(found):
            _change(interview, reasoned, found[int(line) - 1])
            return
        desk.say(f"There is no line {line}; they go from 1 to {len(found)}.")


def _change(interview: Interview, reasoned: Reasoned, row: Row) -> None:
    from diagnose.cli.interview import entry_of

    check = interview.desk.book.checks[row.check]
    interview.desk.say("")
    answer = interview.answer_to(reasoned, check, row.before)
    new = entry_of(check, answer, row.entry)
    before = (row.before.value, row.before.sure) if row.before else None
    if answer.kind in ("answer", "unknown") and (new.value, new.sure) != before:
        interview.add(new)
    else:
        interview.desk.say("Nothing was changed.")
