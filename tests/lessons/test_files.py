"""The files of lessons: written whole, read back the same, undone, never in the way."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from diagnose.lessons.files import files, load_lessons, put_lessons, revert
from diagnose.lessons.learn import learn
from diagnose.lessons.model import Lessons, Refused
from diagnose.lessons.refuse import judged
from tests.cli.running import Cli
from tests.lessons.drawn import BARS, BELT, BURN, COOLANT, WHEEL, closed_case, many, put_closed
from tests.small import small_book


def some() -> Lessons:
    cases = many(4, BELT, machine="north") + many(2, WHEEL)
    cases += many(3, COOLANT, complaint=(BURN,), answers={"coolant-stream": "full"})
    cases += many(1, COOLANT)
    learned = judged(small_book(), learn(small_book(), cases, "2026-03-14"), cases)
    told = Refused("complaint", (BARS,), 4, 0.4, 0.3, "north")
    return Lessons(**{**vars(learned), "refused": (told,)})


def test_what_is_written_is_read_back(tmp_path: Path) -> None:
    lessons = some()
    put_lessons(tmp_path, lessons)

    read, problems = load_lessons(tmp_path, small_book())

    assert problems == ()
    assert [(s.complaint, s.cause, s.machine, s.acted, s.cases) for s in read.shares] == [
        (s.complaint, s.cause, s.machine, s.acted, s.cases) for s in lessons.shares
    ]
    assert [s.odds for s in read.shares] == pytest.approx([s.odds for s in lessons.shares])
    assert [s.after for s in read.strengths] == pytest.approx([s.after for s in lessons.strengths])
    assert (read.no_links, read.date, read.cases) == (lessons.no_links, "2026-03-14", 10)
    assert [(r.kind, r.what, r.machine) for r in read.refused] == [("complaint", (BARS,), "north")]


def test_the_last_file_counts_and_revert_takes_it_away(tmp_path: Path) -> None:
    for cases in (1, 2, 3):
        put_lessons(tmp_path, Lessons("2026-03-14", cases))
    assert load_lessons(tmp_path, small_book())[0].cases == 3

    assert [p.name for p in revert(tmp_path)] == ["003.yaml"]
    assert load_lessons(tmp_path, small_book())[0].cases == 2
    assert [p.name for p in revert(tmp_path, whole=True)] == ["002.yaml", "001.yaml"]
    assert load_lessons(tmp_path, small_book())[0] == Lessons()
    assert revert(tmp_path) == []


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("learned: 2026-03-14\ncases: 3\nshares:\n- {cause: x, acted: 1, cases: 3, odds: 9e9,"
         " before: 0.1, after: 0.2}\n", "001.yaml:4"),
        ("learned: 2026-03-14\ncases: three\n", "001.yaml:2"),
        ("learned: 2026-03-14\ncases: 3\nrefuse: []\n", "Did you mean refused"),
        ("- a list\n", "001.yaml:1"),
        ("cases: [\n", "001.yaml"),
    ],
)  # fmt: skip
def test_a_file_at_fault_is_named_and_the_book_counts(cli: Cli, text: str, said: str) -> None:
    plain = cli("rank", "--complaint", BARS, "--json")
    Path("shop/lessons").mkdir(parents=True)
    Path("shop/lessons/001.yaml").write_text(text, encoding="utf-8")

    ran = cli("rank", "--complaint", BARS, "--json")

    assert (ran.code, ran.out) == (0, plain.out)
    assert said.lower() in ran.err.lower()


def test_a_cause_no_longer_known_is_passed_over_and_said(cli: Cli) -> None:
    Path("shop/lessons").mkdir(parents=True)
    row = "- {complaint: [even-bars-across-travel], cause: old-felt, acted: 1, cases: 3, "
    text = f"learned: 2026-03-14\ncases: 3\nshares:\n{row}before: 0.1, after: 0.2, odds: 2}}\n"
    Path("shop/lessons/001.yaml").write_text(text, encoding="utf-8")

    assert cli("rank", "--complaint", BARS).code == 0
    assert "the book knows this cause no more" in " ".join(cli("lessons").out.split())


def test_learn_show_and_revert_by_command(cli: Cli) -> None:
    assert "Nothing is learned yet" in cli("lessons").out
    assert "No cured case" in cli("lessons", "learn").err
    for number in range(4):
        put_closed(Path("shop"), closed_case((BELT,)), f"job {number}")
    assert "4 cases more to learn from: diagnose lessons learn" in cli("lessons").out

    learned = cli("lessons", "learn")

    assert "4 of 4 cases" in learned.out
    assert "Learned on" in learned.out
    assert "your shop's closed cases are counted in" in cli("rank", "-c", BARS).out
    assert cli("lessons", "revert").out.strip().endswith("lessons/001.yaml")
    assert "counted in" not in cli("rank", "-c", BARS).out
    assert files(Path("shop")) == []
    assert len(list(Path("shop/cases/closed").iterdir())) == 4


def test_every_number_of_the_data_stands_in_the_text(cli: Cli) -> None:
    for number in range(3):
        put_closed(Path("shop"), closed_case((BELT,)), f"job {number}")
    cli("lessons", "learn")
    text = " ".join(cli("lessons", "--all").out.split())
    rows = [r for g in json.loads(cli("lessons", "--json").out)["groups"] for r in g["rows"]]

    assert rows
    for row in rows:
        assert row["name"] in text
        assert f"{row['so']} of {row['cases']} case" in text
