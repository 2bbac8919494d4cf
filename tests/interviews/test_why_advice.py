"""Why, at an advice: how likely it is, and what comes when it fails."""

from __future__ import annotations

from pathlib import Path

from diagnose.view.result import percent
from tests.interviews.playing import Play, typed_lines
from tests.small import small_book

ADVISED = Path(__file__).with_name("comes_back.txt")


def test_why_says_how_likely_the_advice_is_and_what_comes_next() -> None:
    before = ADVISED.read_text(encoding="utf-8").split("How did it go?")[0]
    play = Play(small_book(), [*typed_lines(before), "w"]).run()
    first, *rest = play.steps[-1].plan.cure
    said = " ".join(play.screen[-1].split())

    assert play.screen[-2] == "> w"
    assert f"The chance that it alone cures this is {percent(first.cures_alone)}" in said
    assert 'say so ("The same as before.")' in said
    assert rest
    assert rest[0].fix.do in said
