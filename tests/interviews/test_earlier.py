"""Earlier cases like the one in hand are told once, after the cards and before the questions."""

from __future__ import annotations

from dataclasses import replace

from tests.interviews.playing import Play
from tests.small import small_book


def play(told: str, *typed: str) -> Play:
    playing = Play(small_book(), typed)
    playing.interview.desk = replace(playing.interview.desk, earlier=lambda _: told)
    return playing.run()


def test_earlier_cases_are_told_once_before_the_first_question() -> None:
    screen = play("  - Last March it was the belt.", "chatter", "1", "1").screen
    told = [n for n, text in enumerate(screen) if "Last March it was the belt." in text]
    asked = [n for n, text in enumerate(screen) if "Question 1." in text or "safety" in text]
    assert len(told) == 1
    assert told[0] < asked[0]


def test_without_any_nothing_is_said_of_them() -> None:
    assert "Closed here before" not in play("", "chatter", "1").text
