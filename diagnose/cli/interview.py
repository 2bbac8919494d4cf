"""The interview: one question at a time over a case that is an append-only list.

Nothing is kept but the case; every screen is computed from it, so back is "drop the last and
replay". It reads through a function and speaks through another, and never touches a terminal.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from diagnose.book.model import Book, Check
from diagnose.book.numbered import numbered
from diagnose.case.entries import UNASKED, UNKNOWN, Case, Entry
from diagnose.cli import typed
from diagnose.cli.complaint import choose_card, choose_complaint
from diagnose.reasoning.belief import Impossible
from diagnose.reasoning.reason import Reasoned
from diagnose.reasoning.telling import LISTS, Telling
from diagnose.view.question import KEYS, guess_text, progress_text, question_text, why_text

MEASURED = ("number", "file")


@dataclass(frozen=True)
class Desk:
    """What the interview works with; nothing in it is a terminal.

    `read` gives one typed line (EOFError when there are no more), `say` shows text, `save` keeps
    the case, `reasoned` runs the pipe. `machines` and `wheels` are the shop's cards: id -> name.
    `earlier` tells, as text, of closed cases like this one; "" when there are none. `good` are
    readings of the healthy record by machine: {machine: {name: value}}.
    """

    book: Book
    reasoned: Callable[[Case], Reasoned]
    read: Callable[[], str]
    say: Callable[[str], None]
    save: Callable[[Case], None]
    machines: dict[str, str]
    wheels: dict[str, str]
    earlier: Callable[[Case], str] = lambda _: ""
    good: Mapping[str, Mapping[str, str]] = field(default_factory=dict)


class Stopped(Exception):
    """The person wants to save and stop."""


class Interview:
    """The state: the case, what was shown already, answers dropped by `back`."""

    def __init__(self, desk: Desk, case: Case) -> None:
        self.desk, self.case = desk, case
        self.shown_stops: set[str] = set()
        self.shown_notes: set[str] = set()
        self.dropped: dict[str, Entry] = {}
        self.cards_asked = bool(case.entries)
        self.shown_earlier = False
        self.telling = Telling(LISTS) if case.entries else Telling()

    def run(self) -> str:
        """Ask until there is an end: cured | to do | stuck | stopped."""
        from diagnose.cli.steps import next_turn

        try:
            while True:
                if not self.case.complaint:
                    self._complaint()
                elif not self.cards_asked:
                    self._cards()
                else:
                    self._earlier()
                    reasoned = self.desk.reasoned(self.case)
                    if self._told_first(reasoned):
                        continue
                    end = next_turn(self, reasoned)
                    if end:
                        return end
        except Stopped:
            return "stopped"

    # the case ---------------------------------------------------------------------------------

    def add(self, entry: Entry) -> bool:
        """One more entry, saved; False, with the reason said, when it cannot stand."""
        longer = self.case.with_entry(entry)
        try:
            self.desk.reasoned(longer)
        except Impossible as error:
            self.desk.say(f"This cannot stand beside the other answers: {error}.")
            self.desk.say("It is not kept. Type l to look at what you said before.")
            return False
        self.dropped.pop(entry.name, None)
        self._keep(longer)
        return True

    def leave_out(self, entries: Sequence[Entry]) -> None:
        """Keep what was left out of a list: it says nothing, so it can contradict nothing.

        What was said of it before stands.
        """
        for entry in entries:
            if all(entry.name != said.name for said in self.case.entries):
                self._keep(self.case.with_entry(entry))

    def back(self) -> None:
        """Drop the last entry; before the first one, the complaint is asked again."""
        if self.case.entries:
            last = self.case.entries[-1]
            self.dropped[last.name] = last
            self._keep(self.case.without_last())
            while self.case.entries and self.case.entries[-1].left_out:
                self._keep(self.case.without_last())
            return
        self.cards_asked = self.shown_earlier = False
        self.telling = Telling()
        self.case = replace(self.case, complaint=(), machine="", wheel="", now={})

    def _keep(self, case: Case) -> None:
        self.case = case
        self.desk.save(case)

    @property
    def answered(self) -> int:
        """How many questions about the cause are answered."""
        from diagnose.reasoning.reason import questions_asked

        return questions_asked(self.desk.book, self.case)

    @property
    def heard(self) -> int:
        """How many answers about the cause there are, told unasked or asked for."""
        return self.answered + sum(
            1 for e in self.case.entries if e.how == UNASKED and not e.left_out
        )

    def _earlier(self) -> None:
        if not self.shown_earlier:
            self.shown_earlier = True
            told = self.desk.earlier(self.case)
            if told:
                self.desk.say(f"\nClosed here before, and like it:\n{told}")

    def _told_first(self, reasoned: Reasoned) -> bool:
        """Show a list of what may be known already; False when it is time for what comes next.

        A hazard that was told interrupts before the next list. One more list comes before the
        first fix, where that is not likely enough.
        """
        if not self.telling.due(reasoned):
            return False
        from diagnose.cli.telling import tell
        from diagnose.reasoning.telling import looks_to_tell
        from diagnose.view.telling import AGAIN, AT_LAST, FIRST

        last, listed = self.telling.at_last(reasoned), self.telling.listed
        looks = looks_to_tell(reasoned, listed)
        told = tell(self, looks, AT_LAST if last else AGAIN if listed else FIRST) if looks else ""
        if told == "back":
            if last:
                self.back()
            else:
                self._back_to_lists()
            return True
        self.telling = self.telling.after(reasoned, looks, told == "told")
        return bool(looks)

    def _back_to_lists(self) -> None:
        """To the first list again, what was told forgotten; from there one step back."""
        unasked = [e for e in self.case.entries if e.how == UNASKED]
        self.telling = Telling()
        if unasked:
            kept = tuple(e for e in self.case.entries if e.how != UNASKED)
            self._keep(replace(self.case, entries=kept))
        else:
            self.back()

    def tell_more(self, reasoned: Reasoned) -> None:
        """One more list, at the wish of the person."""
        from diagnose.cli.telling import tell
        from diagnose.reasoning.telling import looks_to_tell
        from diagnose.view.telling import AGAIN

        looks = looks_to_tell(reasoned, once_more=True)
        if looks:
            tell(self, looks, AGAIN)
        else:
            self.desk.say("There is nothing more to tell that would change anything.")

    def _complaint(self) -> None:
        symptoms = choose_complaint(self.desk.book, self.desk.read, self.desk.say)
        if not symptoms:
            raise Stopped
        names = "; ".join(self.desk.book.symptoms[s].name for s in symptoms)
        self._keep(replace(self.case, complaint=symptoms, title=self.case.title or names))

    def _cards(self) -> None:
        for kind, cards in (("machine", self.desk.machines), ("wheel", self.desk.wheels)):
            if cards and not getattr(self.case, kind):
                chosen = choose_card(kind, cards, self.desk.read, self.desk.say)
                if chosen == "back":
                    self.back()
                    return
                if chosen == "quit":
                    raise Stopped
                # the names are those of fields of a case
                self._keep(replace(self.case, **{kind: chosen}))  # type: ignore[arg-type]  # a field named by a variable
        if self._now():
            self.cards_asked = True

    def _now(self) -> bool:
        """Ask how it is now what the healthy record of the machine holds; False to go back."""
        from diagnose.cli.now import Back, Quit, ask_now

        readings = self.desk.good.get(self.case.machine, {})
        if readings and not self.case.now:
            try:
                now = ask_now(readings, self.desk.read, self.desk.say)
            except Back:
                self.back()
                return False
            except Quit:
                raise Stopped from None
            if now:
                self._keep(replace(self.case, now=now))
        return True

    # a question -------------------------------------------------------------------------------

    def ask(self, reasoned: Reasoned, check: Check, head: str = "") -> None:
        """Ask one check until it is answered, put off, or left by back or list."""
        self.desk.say("\n" + (head or self._head(reasoned)) + "\n")
        answer = self.answer_to(reasoned, check, self.dropped.get(check.id))
        if answer.kind == "back":
            self.back()
        elif answer.kind == "list":
            from diagnose.cli.changes import list_and_change

            list_and_change(self, reasoned)
        else:
            self._warn(check, answer)
            later = answer.kind == "later"
            self.add(Entry("later", check.id) if later else entry_of(check, answer))

    def _warn(self, check: Check, answer: typed.Typed) -> None:
        guards = any(
            s.asked_by == check.id and s.kind == "stop" for s in self.desk.book.stops.values()
        )
        if guards and not (answer.kind == "answer" and answer.sure):
            self.desk.say("Then nothing that needs the wheel turning comes up until this is known.")

    def _head(self, reasoned: Reasoned) -> str:
        lines = [progress_text(reasoned, self.answered + 1), guess_text(reasoned, self.heard)]
        return "\n".join(line for line in lines if line)

    def answer_to(
        self, reasoned: Reasoned, check: Check, before: Entry | None = None
    ) -> typed.Typed:
        """One usable line: an answer or don't know, or back | list | later."""
        self.desk.say(question_text(reasoned, check, numbered(check)))
        if before is not None and before.value:
            self.desk.say(f"\n   Before, you said: {said(check, before)}. Enter keeps it.")
        self.desk.say(f"\n{KEYS}")
        sure = True
        while True:
            line = typed.understand(check, self.desk.read())
            if line.kind == "why":
                self.desk.say(why_text(reasoned, check))
            elif line.kind == "think":
                sure = False
                self.desk.say("Then the answer, as you think it is:")
            elif line.kind == "slip":
                self.desk.say(line.value)
            elif line.kind == "quit":
                raise Stopped
            elif line.kind == "keep" and before is not None and before.value:
                return _again(before)
            elif line.kind == "keep":
                self.desk.say("Type an answer, or d if you don't know.")
            else:
                return replace(line, sure=line.sure and (sure or line.kind != "answer"))


def _again(before: Entry) -> typed.Typed:
    return typed.Typed(
        "unknown" if before.value == UNKNOWN else "answer", before.value, before.sure
    )


def said(check: Check, entry: Entry) -> str:
    """An answer in words."""
    parts = [p.strip() for p in entry.value.split(",")] if check.options else [entry.value]
    words = "; ".join(check.by_option[p].say if p in check.by_option else p for p in parts)
    return words if entry.sure else f"{words} (you think)"


def entry_of(check: Check, answer: typed.Typed, replaces: int = 0) -> Entry:
    """The entry of an answer, or of the correction of entry number `replaces`."""
    value = UNKNOWN if answer.kind == "unknown" else answer.value
    measured = check.kind in MEASURED and answer.kind == "answer"
    kind = "correct" if replaces else "answer"
    how = "measured" if measured else "said"
    return Entry(kind, check.id, value, how, answer.sure, replaces=replaces)
