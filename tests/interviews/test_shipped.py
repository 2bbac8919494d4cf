"""The interview on the shipped knowledge, answered at random: it always ends, and reads well."""

from __future__ import annotations

import random
from collections.abc import Iterator
from functools import cache

import pytest

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book, Check
from diagnose.case.entries import UNASKED, Case
from diagnose.cli.typed import numbered
from diagnose.reasoning.policy import ENOUGH
from tests.interviews.playing import Play

MOST_LINES = 120


@cache
def shipped() -> Book:
    """The shipped knowledge, loaded once."""
    return load_book(knowledge_folder())


class Anybody:
    """Answers whatever is asked, at random but the same each time; watches its own play."""

    def __init__(self, seed: str) -> None:
        self.draw = random.Random(seed)
        self.play: Play | None = None

    def lines(self) -> Iterator[str]:
        """Lines typed one after the other, fit for what stands on the screen."""
        for _ in range(MOST_LINES):
            yield self._line()

    def _line(self) -> str:
        assert self.play is not None
        shown = next(s for s in reversed(self.play.screen) if s.strip() and not s.startswith(">"))
        asked = "\n".join(self.play.screen[-8:])
        if "Number and letter of each" in shown or "There is no number 99" in shown:
            return self.draw.choice(["", "1a", "2b? 1a", "3a, 5b 1b", "99a"])
        if "How was it cleared" in shown:
            return "looked over by the foreman"
        if "w why, b back, d don't know" in asked.rpartition("How did it go?")[2]:
            return self._answer(self._check())
        if "It is cleared: I say how." in asked:
            return self.draw.choice("111123") if "   2  " in asked else self.draw.choice("1113")
        if "How did it go?" in asked:
            return self.draw.choice("12344445")
        return self.draw.choice("1111q")

    def _check(self) -> Check:
        assert self.play is not None
        screen = " ".join(" ".join(self.play.screen[-30:]).lower().split())
        places = {
            name: screen.rfind(" ".join(check.ask.lower().split()))
            for name, check in shipped().checks.items()
        }
        return shipped().checks[max(places, key=lambda n: (places[n], len(n)))]

    def _answer(self, check: Check) -> str:
        if self.draw.random() < 0.2:
            return self.draw.choice(["d", "n", "w"])
        if check.kind == "number":
            return check.example
        if check.kind == "file":
            return "d"
        options = list(numbered(check))
        if check.gate and "0" in options and self.draw.random() < 0.8:
            return "0"
        unsure = "t " if self.draw.random() < 0.1 else ""
        return unsure + self.draw.choice(options)


def sat(symptom: str, seed: str) -> Play:
    """One whole interview about a complaint."""
    person = Anybody(symptom + seed)
    play = Play(shipped(), person.lines(), Case("at random", (symptom,)))
    person.play = play
    return play.run()


@pytest.mark.parametrize(
    ("symptom", "seed"), [(s, "ab"[n % 2]) for n, s in enumerate(sorted(shipped().symptoms))]
)
def test_every_interview_ends_and_reads_well(symptom: str, seed: str) -> None:
    play = sat(symptom, seed)

    assert play.end in ("cured", "to do", "stuck", "stopped"), play.text[-2000:]
    answers = [e for e in play.case.entries if e.kind == "answer" and e.how != UNASKED]
    assert len(answers) <= ENOUGH + len(shipped().stops)
    play.text.encode("cp1252")
    assert max(len(line) for line in play.text.splitlines()) <= 80
