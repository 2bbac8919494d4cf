"""What the healthy record of the machine holds is asked again, once, before the questions."""

from __future__ import annotations

from dataclasses import replace

from tests.interviews.playing import Play
from tests.small import small_book

GOOD = {"north": {"block-finish": "0.3 um", "idle-shake": "0.4 mm/s"}}


def play(*typed: str) -> Play:
    playing = Play(small_book(), ("chatter", *typed))
    desk = playing.interview.desk
    playing.interview.desk = replace(desk, machines={"north": "by the wall"}, good=GOOD)
    return playing.run()


def test_what_was_measured_today_is_kept_and_the_rest_left_out() -> None:
    assert play("1", "", "1.1 mm/s").case.now == {"idle-shake": "1.1 mm/s"}


def test_it_is_asked_once_and_only_of_the_machine_that_has_a_record() -> None:
    assert play("1", "", "", "1").text.count("block finish: 0.3 um when it ground well") == 1
    assert "when it ground well" not in play("0").text


def test_back_goes_to_the_complaint_and_q_saves() -> None:
    back = play("1", "b")
    assert (back.case.complaint, back.case.machine) == ((), "")
    stopped = play("1", "", "q")
    assert (stopped.end, stopped.case.machine) == ("stopped", "north")
