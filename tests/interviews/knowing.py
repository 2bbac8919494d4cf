"""A person who knows some answers and says "don't know" to everything else."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from diagnose.book.model import Book, Check
from diagnose.case.entries import Case, Entry
from diagnose.cli.typed import numbered
from diagnose.reasoning.telling import LISTS, Telling
from tests.interviews.playing import Play

MOST_LINES = 80


class Knowing:
    """Answers what it knows; clears what guards against a danger; stops at the first fix."""

    def __init__(self, book: Book, known: Mapping[str, str]) -> None:
        self.book, self.known = book, known
        self.asked: dict[str, int] = {}  # check -> how many states were worked out before it
        self.play: Play | None = None

    def lines(self) -> Iterator[str]:
        """Lines typed one after the other, fit for what stands on the screen."""
        for _ in range(MOST_LINES):
            yield self._line()

    def _line(self) -> str:
        assert self.play is not None
        step = self.play.steps[-1].step
        if step.kind not in ("ask", "safety"):
            return "q"
        self.asked.setdefault(step.name, len(self.play.steps))
        return self._answer(self.book.checks[step.name])

    def _answer(self, check: Check) -> str:
        if check.id in self.known:
            return self._typed(check, self.known[check.id])
        clears = [n for n, o in numbered(check).items() if check.by_option[o].clears]
        return clears[0] if clears else "d"

    @staticmethod
    def _typed(check: Check, text: str) -> str:
        return next((n for n, o in numbered(check).items() if o == text), text)


def ask_one_who_knows(
    book: Book,
    complaint: str,
    known: Mapping[str, str],
    said: Mapping[str, str] | None = None,
    put_off: tuple[str, ...] = (),
) -> tuple[Play, Knowing]:
    """The whole interview of a person who said `said` before and knows `known`.

    `put_off` are the questions that cannot be answered now.
    """
    person = Knowing(book, known)
    before = tuple(Entry("answer", name, text) for name, text in (said or {}).items())
    before += tuple(Entry("later", name) for name in put_off)
    play = Play(book, person.lines(), Case("played", (complaint,), before))
    person.play = play
    play.interview.cards_asked = True
    play.interview.telling = Telling(LISTS)  # what is known comes out when it is asked for
    return play.run(), person
