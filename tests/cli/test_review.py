"""`diagnose review`, and going on from it with `diagnose ask --from-review`."""

from __future__ import annotations

import json
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from diagnose.case.case_text import case_text
from diagnose.case.files import load_case
from diagnose.case.planned import Planned
from tests.cli.running import GOOD, Cli, write
from tests.interviews.playing import Play
from tests.small import small_book

PLANNED = """\
title: spacer plate
planned: {finish: 0.4 um, tolerance: 5 um, metal: hardened-steel, hardness: 60 HRC}
facts:
  wheel-changed: yes
  ring-test: rang-clear
"""


def test_a_planned_job_is_read_and_written_back_the_same(cli: Cli) -> None:
    del cli  # only for its folder
    path = Path(write("job.yaml", PLANNED))
    case = load_case(path, small_book())

    assert case.complaint == ()
    assert case.planned == Planned("", "0.4 um", "5 um", "hardened-steel", "60 HRC")
    again = load_case(Path(write("again.yaml", case_text(case))), small_book())
    assert replace(again, path="") == replace(case, path="")


def test_the_text_tells_wheel_dress_and_cut(cli: Cli) -> None:
    told = cli("review", write("job.yaml", PLANNED))

    assert told.code == 0
    for heading in ("Before the cut", "THE WHEEL", "THE DRESS", "THE CUT THIS MACHINE CAN PULL"):
        assert heading in told.out
    assert told.err == ""


def test_full_adds_what_was_planned_and_the_sources(cli: Cli) -> None:
    short = cli("review", write("job.yaml", PLANNED))
    full = cli("review", write("job.yaml", PLANNED), "--full")

    assert short.code == full.code == 0
    for heading in ("WHAT WAS PLANNED", "source: ["):
        assert heading in full.out
        assert heading not in short.out
    assert "--full" in short.out


def test_json_and_page_come_from_one_run(cli: Cli) -> None:
    told = cli("review", write("job.yaml", PLANNED), "--json", "--page", "job.html")

    data = json.loads(told.out)
    page = Path("job.html").read_text(encoding="utf-8")
    assert (data["schema"], data["kind"], data["title"]) == (1, "review", "spacer plate")
    assert "job.html" in told.err
    assert page.startswith("<!DOCTYPE html>")
    assert data["ceiling"].split(" of depth")[0] in page


def test_the_page_may_be_named_with_out_as_in_report(cli: Cli) -> None:
    cli("review", write("job.yaml", PLANNED), "--out", "job.html")

    assert Path("job.html").is_file()


def test_a_stop_is_first_and_ends_with_three(cli: Cli) -> None:
    told = cli("review", write("job.yaml", PLANNED), "-a", "ring-test=dull", "--page", "job.html")

    assert told.code == 3
    assert told.out.index("*** STOP") < told.out.index("THE WHEEL")
    assert Path("job.html").read_text(encoding="utf-8").count("<title>STOP: ") == 1


def test_inch_is_inch_throughout(cli: Cli) -> None:
    told = cli("--units", "inch", "review", write("job.yaml", PLANNED))

    cut = told.out[told.out.index("THE CUT") : told.out.index("Handbook:")]
    assert " mm" not in cut
    assert "ft/min" in cut


def test_against_an_empty_shop_says_that_there_is_nothing(cli: Cli) -> None:
    told = cli("review", write("job.yaml", PLANNED), "--against", "last-good")

    assert told.code == 0
    assert "AGAINST THE LAST GOOD JOB" in told.out
    assert "no closed case" in " ".join(told.out.split())


def test_it_reads_standard_input_and_answers_typed_beside_it(cli: Cli) -> None:
    told = cli("review", "-", "-a", "bars-even=yes", stdin=PLANNED.encode())

    assert told.code == 0
    assert "SPACER PLATE" in told.out


def test_nothing_named_is_a_fault_of_typing(cli: Cli) -> None:
    told = cli("review")

    assert told.code == 2
    assert "name a case file" in told.err


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("finish: 0.4", "unit"),
        ("metal: stel", "is not one of"),
        ("tolerance: 5 kg", "5 kg"),
        ("colour: blue", "has no field 'colour'"),
    ],
)
def test_what_is_wrong_in_the_plan_is_named_with_its_line(cli: Cli, row: str, said: str) -> None:
    told = cli("review", write("job.yaml", f"title: x\nplanned:\n  {row}\n"))

    assert told.code == 1
    assert "job.yaml:3" in told.err
    assert said in told.err
    assert "Traceback" not in told.err


def test_a_case_with_neither_complaint_nor_plan_is_a_fault(cli: Cli) -> None:
    told = cli("review", write("job.yaml", "title: x\nfacts: {wheel-changed: yes}\n"))

    assert told.code == 1
    assert "has no 'complaint:'" in told.err
    assert "planned:" in told.err


@pytest.mark.parametrize("command", ["rank", "report"])
def test_a_planned_job_is_not_ranked_without_a_complaint(cli: Cli, command: str) -> None:
    path = write("job.yaml", PLANNED)
    told = cli(command, path)

    assert told.code == 1
    assert "diagnose review" in told.err
    ranked = cli("rank", path, "--complaint", "chatter")
    assert ranked.code == 0


def test_a_case_with_a_complaint_can_be_reviewed_as_it_was_set_up(cli: Cli) -> None:
    assert cli("review", write("case.yaml", GOOD)).code == 0


def test_what_was_planned_is_not_asked_again(cli: Cli) -> None:
    del cli
    case = load_case(Path(write("job.yaml", PLANNED)), small_book())
    fresh = Play(small_book(), ["chatter", *["1"] * 12]).run()
    going_on = Play(small_book(), ["chatter", *["1"] * 12], replace(case, path="")).run()

    asked = {e.name for e in fresh.case.entries}
    again = {e.name for e in going_on.case.entries}
    assert {"wheel-changed", "ring-test"} & asked
    assert not {"wheel-changed", "ring-test"} & again
    assert going_on.case.complaint == ("even-bars-across-travel",)
    assert going_on.case.planned == case.planned


@pytest.mark.skipif(sys.platform == "win32", reason="a pseudo-terminal is a thing of Unix")
def test_the_interview_begins_from_a_plan_and_leaves_its_file_alone(tmp_path: Path) -> None:
    from tests.cli.terminal import CTRL_C, Terminal

    plan = tmp_path / "job.yaml"
    plan.write_text(PLANNED, encoding="utf-8")
    seat = Terminal(tmp_path, "ask", "--from-review", "job.yaml")
    seat.see("2 things planned; they are not asked again")
    seat.type("chatter")
    seat.press(CTRL_C)
    code, _ = seat.leave()

    assert code == 130
    assert plan.read_text(encoding="utf-8") == PLANNED
    (kept,) = (tmp_path / "shop" / "cases").glob("*.yaml")
    case = load_case(kept, small_book())
    assert case.given == {"wheel-changed": "yes", "ring-test": "rang-clear"}
    assert case.complaint == ("even-bars-across-travel",)
