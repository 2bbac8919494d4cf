"""`diagnose drill` as it is typed, with and without a terminal."""

from __future__ import annotations

import json
from pathlib import Path

from tests.cli.running import Cli

# the small knowledge is enough to play with
PLAY = ("drill", "--seed", "3", "--level", "3")


def test_without_a_terminal_it_says_how_to_play(cli: Cli) -> None:
    ran = cli(*PLAY)

    assert ran.code == 2
    assert "--do LINE" in ran.err


def test_lines_of_standard_input_are_played(cli: Cli) -> None:
    ran = cli(*PLAY, stdin=b"g\nl\nc\nh\nn\nq\n")

    assert ran.code == 0
    assert "Find the cause" in ran.err
    assert "It was: " in ran.out
    assert "Find the cause" not in ran.out


def test_the_same_lines_give_the_same_debrief(cli: Cli) -> None:
    typed = [p for line in ("g", "s", "c 1", "c 2", "q") for p in ("--do", line)]

    assert cli(*PLAY, *typed).out == cli(*PLAY, *typed).out


def test_where_the_lines_end_help_is_called(cli: Cli) -> None:
    ran = cli(*PLAY, "--do", "g")

    assert ran.code == 0
    assert "No more lines" in ran.err
    assert "the cause was not found" in ran.out


def test_slips_are_explained_and_cost_nothing(cli: Cli) -> None:
    ran = cli(*PLAY, "--do", "999", "--do", "c 999", "--do", "l attic", "--do", "xyzzy", "--json")

    assert "There is no check 999" in ran.err
    assert "There is no cause 999" in ran.err
    assert "There is no place 'attic'" in ran.err
    assert "No check is known as 'xyzzy'" in ran.err
    assert json.loads(ran.out)["minutes"][0]["minutes"] == 180.0


def test_the_page_holds_the_debrief_and_no_script(cli: Cli, tmp_path: Path) -> None:
    ran = cli(*PLAY, "--do", "g", "--page", "debrief.html")
    text = (tmp_path / "debrief.html").read_text(encoding="utf-8")

    assert ran.code == 0
    assert "<script" not in text
    assert "http-equiv" in text
    assert "It was: " in text


def test_a_learner_is_kept_and_the_teacher_sees_it(cli: Cli) -> None:
    cli("drill", "--learner", "anna", "--do", "g", "--do", "q")

    assert "anna: level 1 of 4; 1 drills, 0 passed" in cli("drill", "--learner", "anna",
                                                            "--progress").out  # fmt: skip
    assert json.loads(cli("drill", "--teacher", "--json").out)["learners"][0]["drills"] == 1


def test_the_teacher_of_an_empty_shop_is_told_how_to_begin(cli: Cli) -> None:
    assert "Nobody has drilled" in cli("drill", "--teacher").out


def test_unknown_families_and_complaints_are_named_with_what_there_is(cli: Cli) -> None:
    ran = cli("drill", "--family", "whel", "--do", "q")

    assert ran.code == 1
    assert "there is no family 'whel'\n  did you mean wheel?" in ran.err
    assert "no complaint is known as 'xyzzy'" in cli("drill", "-c", "xyzzy", "--do", "q").err


def test_a_shop_without_closed_cases_says_so(cli: Cli) -> None:
    ran = cli("drill", "--from-shop", "--do", "q")

    assert ran.code == 1
    assert "no closed case of this shop can be drilled" in ran.err


def test_pairs_are_shown_side_by_side(cli: Cli) -> None:
    told = cli("drill", "--pairs").out

    assert "out of round ~ out of balance" in told
    assert "common practice" in told
