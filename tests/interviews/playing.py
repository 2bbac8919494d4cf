"""Play an interview from its typed lines and give back the screen, typed lines included."""

from __future__ import annotations

from collections.abc import Iterable

from diagnose.book.model import Book
from diagnose.case.entries import Case
from diagnose.cli.interview import Desk, Interview
from diagnose.reasoning.reason import Reasoned, reason


class Play:
    """An interview with nobody at it: `typed` are the lines, `screen` what was shown."""

    def __init__(self, book: Book, typed: Iterable[str], case: Case | None = None) -> None:
        self.book, self.lines = book, iter(typed)
        self.screen: list[str] = []
        self.saved: list[Case] = []
        self.steps: list[Reasoned] = []
        self.interview = Interview(self._desk(), case or Case("", ()))
        self.end = ""

    def _desk(self) -> Desk:
        return Desk(
            self.book, self._reasoned, self._read, self.screen.append, self.saved.append, {}, {}
        )

    def _reasoned(self, case: Case) -> Reasoned:
        self.steps.append(reason(self.book, case))
        return self.steps[-1]

    def _read(self) -> str:
        try:
            line = next(self.lines)
        except StopIteration:
            raise EOFError from None
        self.screen.append(f"> {line}")
        return line

    def run(self) -> Play:
        """Play to the end, or to the last typed line."""
        try:
            self.end = self.interview.run()
        except EOFError:
            self.end = "no more lines"
        return self

    @property
    def case(self) -> Case:
        return self.interview.case

    @property
    def text(self) -> str:
        return "\n".join(self.screen)


def typed_lines(text: str) -> list[str]:
    """The lines a person typed in a written interview."""
    lines = text.splitlines()
    return [line[2:] for line in lines if line == ">" or line.startswith("> ")]
