"""What comes next in an interview: a stop, a question, what to find out first, a fix to try."""

from __future__ import annotations

from typing import TYPE_CHECKING

from diagnose.case.entries import OUTCOMES, Entry
from diagnose.cli.halting import find_out_first, halt
from diagnose.cli.typed import command, pick
from diagnose.reasoning.policy import FAINT
from diagnose.reasoning.reason import Reasoned
from diagnose.view.build import view_of
from diagnose.view.folding import wrapped
from diagnose.view.question import safety_head
from diagnose.view.result import minutes, percent
from diagnose.view.text import fix_lines

if TYPE_CHECKING:
    from diagnose.cli.interview import Interview

LONG_JOB = (
    "That is a long job: have someone who knows the machine look with you before you begin. "
    "What to do:"
)
SAID = {
    "gone and stays": "Gone, and it stays gone.",
    "gone and comes back": "Gone, but it comes back.",
    "better": "Better, not gone.",
    "same": "The same as before.",
    "not done": "Not done.",
}


def next_turn(interview: Interview, reasoned: Reasoned) -> str:
    """One turn of the interview; the end it came to, or "" to go on."""
    standing = {h.stop.id for h in reasoned.read.stops}
    interview.shown_stops &= standing
    fresh = [h for h in reasoned.read.stops if h.stop.id not in interview.shown_stops]
    if fresh:
        return halt(interview, reasoned, fresh[0].stop)
    _notes(interview, reasoned)
    step = reasoned.step
    if step.kind in ("ask", "safety"):
        head = safety_head(reasoned) if step.kind == "safety" else ""
        interview.ask(reasoned, interview.desk.book.checks[step.name], head)
        return ""
    if not reasoned.read.safe:
        return find_out_first(interview, reasoned)
    likely = reasoned.plan.cure and reasoned.plan.cure[0].cures_alone >= FAINT
    return (
        _try(interview, reasoned) if step.kind == "fix" or likely else _stuck(interview, reasoned)
    )


def _notes(interview: Interview, reasoned: Reasoned) -> None:
    for _, text in reasoned.read.deduced.notes:
        if text not in interview.shown_notes:
            interview.shown_notes.add(text)
            interview.desk.say("\n" + wrapped(f"Note: {text}"))


def _put_off(reasoned: Reasoned) -> str:
    names = list(dict.fromkeys(reasoned.read.gathered.read.later))
    if not names:
        return ""
    asks = "; ".join(reasoned.read.book.checks[n].ask for n in names)
    return wrapped(f"Put off till later: {asks} Type l to answer it now.")


def _try(interview: Interview, reasoned: Reasoned) -> str:
    """Show the first thing to try, cautions before and proof after; ask how it went."""
    view, say = view_of(reasoned, full=False), interview.desk.say
    say("\n" + wrapped(view.headline))
    for part in view.plan.part:
        say(wrapped(f"The part: {part.say}"))
    say("\n" + wrapped(_head(reasoned)) + "\n" + "\n".join(fix_lines(view.plan.cure[0], 1)))
    if _put_off(reasoned):
        say("\n" + _put_off(reasoned))
    return _outcome(interview, reasoned, reasoned.plan.cure[0].causes[0])


def _head(reasoned: Reasoned) -> str:
    """What is said before a fix: how it stands to the most likely cause."""
    first = reasoned.plan.cure[0]
    if reasoned.step.kind != "fix":
        return LONG_JOB
    top = reasoned.belief.ranked[0].cause
    if top in first.causes or first.cures_alone >= FAINT:
        return "Try this first:"
    return f"Before that, a quick try for what is less likely ({percent(first.cures_alone)}):"


def _outcome(interview: Interview, reasoned: Reasoned, cause: str) -> str:
    from diagnose.cli.interview import Stopped

    say = interview.desk.say
    say("\nHow did it go?\n")
    say("\n".join(f"{n:>4}  {SAID[o]}" for n, o in enumerate(OUTCOMES, 1)))
    say("\nA number, when you have tried it; w why, b back, l list, q save and stop")
    while True:
        line = interview.desk.read().strip()
        if line.isdecimal() and 1 <= int(line) <= len(OUTCOMES):
            outcome = OUTCOMES[int(line) - 1]
            interview.add(Entry("tried", cause, outcome=outcome))
            return {"gone and stays": "cured", "not done": "to do"}.get(outcome, "")
        word = command(line)
        if word == "quit":
            raise Stopped
        if word == "back":
            interview.back()
            return ""
        if word == "list":
            from diagnose.cli.changes import list_and_change

            list_and_change(interview, reasoned)
            return ""
        if word == "why":
            say(wrapped(_why_this(reasoned)))
        else:
            say(pick(len(OUTCOMES)))


def _why_this(reasoned: Reasoned) -> str:
    """Why this fix, how likely it is, and what comes when it fails."""
    first, *rest = reasoned.plan.cure
    cost = minutes(first.fix.minutes_practised)
    told = [
        f"Because: {reasoned.step.why}.",
        f"The chance that it alone cures this is {percent(first.cures_alone)}, for {cost} of work.",
        f'If it does not help, say so ("{SAID["same"]}"): what it ruled out then counts,',
    ]
    if rest:
        chance = percent(rest[0].cures_alone)
        told.append(f'and as it looks now "{rest[0].fix.do}" comes next ({chance} now).')
    else:
        told.append("and the questions go on from there.")
    return " ".join(told)


def _stuck(interview: Interview, reasoned: Reasoned) -> str:
    view, say = view_of(reasoned, full=False), interview.desk.say
    say("\n" + wrapped(view.headline))
    for part in view.plan.part:
        say(wrapped(f"The part: {part.say}"))
    for number, cause in enumerate(view.causes[:3], 1):
        chance = f"{percent(cause.probability)}, fix {minutes(cause.fix_minutes_first)}"
        say(wrapped(f"{cause.name} ({chance})", 6, f"{number:>4}  "))
    say("\n" + wrapped(f"This is the best there is: {reasoned.step.why}."))
    if not _put_off(reasoned):
        return "stuck"
    say(_put_off(reasoned) + "\nEnter ends here.")
    word = command(interview.desk.read())
    if word == "back":
        interview.back()
        return ""
    if word == "list":
        from diagnose.cli.changes import list_and_change

        list_and_change(interview, reasoned)
        return ""
    return "stuck"
