"""A stop interrupts at once; what is not known keeps the wheel still until it is found out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from diagnose.book.model import Check, Stop
from diagnose.case.entries import Entry
from diagnose.cli.typed import command, pick
from diagnose.reasoning.gates import CLEARED, RAISED, TURNING
from diagnose.reasoning.reason import Reasoned
from diagnose.view.build import view_of
from diagnose.view.folding import wrapped
from diagnose.view.result import percent
from diagnose.view.text import stop_text

if TYPE_CHECKING:
    from diagnose.cli.interview import Interview

STANDING_STILL = 0.2  # chance from which a fix is told that needs nothing turning
GO_ON = {
    "stop": "Not cleared: go on only with what needs nothing turning.",
    "hold": "The part is put aside: go on looking for the cause.",
}


def halt(interview: Interview, reasoned: Reasoned, stop: Stop) -> str:
    """Show a stop that has come up: clear it (say how), leave it standing, or stop here."""
    say = interview.desk.say
    say("\n" + _stop_text(reasoned, stop))
    say("\n   1  It is cleared: I say how.")
    say(f"   2  {GO_ON[stop.kind]}")
    say("   3  Leave it here: save and stop.")
    say("\nA number, b back")
    return _decide(interview, stop, may_go_on=True)


def _decide(interview: Interview, stop: Stop, *, may_go_on: bool) -> str:
    while True:
        line = interview.desk.read().strip()
        if line == "1":
            _clear(interview, stop)
            return ""
        if line == "2" and may_go_on:
            interview.shown_stops.add(stop.id)
            return ""
        if command(line) == "back":
            interview.back()
            return ""
        if line == "3" or command(line) == "quit":
            return "stopped"
        interview.desk.say("Type 1 or 3, or b." if not may_go_on else "Type 1, 2 or 3, or b.")


def _clear(interview: Interview, stop: Stop) -> None:
    interview.desk.say(wrapped(f"Cleared when: {stop.cleared_when}"))
    interview.desk.say("How was it cleared, and by whom? (Enter: it is not)")
    how = " ".join(interview.desk.read().split())
    if how and not command(how):
        interview.add(Entry("cleared", stop.id, how))


def _stop_text(reasoned: Reasoned, stop: Stop) -> str:
    views = view_of(reasoned, full=False).stops
    return stop_text(next(v for v in views if v.id == stop.id))


def find_out_first(interview: Interview, reasoned: Reasoned) -> str:
    """Nothing more can be asked or tried while a hazard is open: say so and how to close it."""
    _so_far(interview, reasoned)
    standing = [h.stop for h in reasoned.read.hazards if h.state == RAISED and _machine(h.stop)]
    if standing:
        interview.desk.say("\nNothing more can be done while nothing may turn.")
        if len(standing) > 1:
            every = "; ".join(stop.name for stop in standing)
            told = f"{len(standing)} stops stand, each to be cleared: {every}."
            interview.desk.say(wrapped(told))
        interview.desk.say(_stop_text(reasoned, standing[0]))
        interview.desk.say("\n   1  It is cleared: I say how.\n   3  Leave it here: save and stop.")
        interview.desk.say("\nA number, b back")
        return _decide(interview, standing[0], may_go_on=False)
    open_ = [h.stop for h in reasoned.read.hazards if h.state != CLEARED and _machine(h.stop)]
    names = dict.fromkeys(stop.asked_by for stop in open_)
    return _menu(interview, reasoned, open_, [interview.desk.book.checks[n] for n in names])


def _so_far(interview: Interview, reasoned: Reasoned) -> None:
    """What is most likely so far, and what can be done about it while everything stands still."""
    view, say = view_of(reasoned, full=False), interview.desk.say
    if reasoned.belief.ranked and view.causes:
        say("\n" + wrapped(f"So far: {view.headline[0].lower()}{view.headline[1:]}"))
    step = next((s for s in reasoned.plan.cure if TURNING not in s.fix.needs), None)
    if step is not None and step.cures_alone >= STANDING_STILL:
        told = f"{step.fix.do} ({percent(step.cures_alone)}; power locked out)"
        say(wrapped(f"That can be done with everything standing still: {told}"))


def _machine(stop: Stop) -> bool:
    return stop.kind == "stop"


def _menu(interview: Interview, reasoned: Reasoned, open_: list[Stop], checks: list[Check]) -> str:
    say = interview.desk.say
    say("\nFind this out first; nothing turns until it is known.")
    for stop in open_:
        say(wrapped(f"{stop.name}: {stop.cleared_when}", 6, "   - "))
    say("\nAsk again:")
    for number, check in enumerate(checks, 1):
        say(wrapped(check.ask, 6, f"{number:>4}  "))
    say("\nA number, b back, l list, q save and stop")
    while True:
        line = interview.desk.read().strip()
        if line.isdecimal() and 1 <= int(line) <= len(checks):
            _ask_again(interview, reasoned, checks[int(line) - 1])
            return ""
        word = command(line)
        if word == "quit":
            return "stopped"
        if word == "back":
            interview.back()
            return ""
        if word == "list":
            from diagnose.cli.changes import list_and_change

            list_and_change(interview, reasoned)
            return ""
        say(pick(len(checks)))


def _ask_again(interview: Interview, reasoned: Reasoned, check: Check) -> None:
    from diagnose.cli.interview import entry_of

    interview.desk.say("")
    answer = interview.answer_to(reasoned, check)
    if answer.kind in ("answer", "unknown"):
        interview.add(entry_of(check, answer))
