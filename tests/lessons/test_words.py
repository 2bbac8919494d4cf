"""What was learned is said so that a machinist understands it."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from diagnose.lessons.showing import GroupView, LessonsView, RowView, lessons_text
from tests.cli.running import Cli, write
from tests.cli.test_shop import BARS, begun


def row(number: int, before: float, after: float, so: int = 0) -> RowView:
    return RowView(f"c{number}", f"cause {number}", "", "", so, 5, before, after, 0.9)


MANY = tuple(row(n, 0.05, 0.04 if n % 3 else 0.055) for n in range(36))
GROUP = GroupView("shares", ("x",), "", "bars: what it was", (row(99, 0.1, 0.4, 5), *MANY))
VIEW = LessonsView("2026-03-14", 5, 0, 0.007, 0.042, (GROUP,), (), ())


def test_the_small_changes_are_counted_and_never_added_up() -> None:
    assert sum(r.before for r in MANY) > 1.0
    text = " ".join(lessons_text(VIEW).split())
    assert "36 more causes that no case names moved a little: 12 up and 24 down" in text
    assert "none by more than 1.0 in 100" in text
    assert max(float(n) for n in re.findall(r"([\d.]+) %", text)) <= 100.0
    assert "together" not in text


@pytest.mark.parametrize(("cases", "whom"), [(1, "that case would"), (5, "those cases would")])
def test_what_the_two_chances_mean_is_said(cases: int, whom: str) -> None:
    text = " ".join(lessons_text(replace(VIEW, cases=cases)).split())
    assert whom in text
    assert "with a chance of 4.2 %" in text
    assert "with the numbers of the book alone it would be 0.7 %" in text
    assert ("typically" in text) == (cases > 1)


@pytest.mark.parametrize(("cases", "said"), [(1, "from 1 closed case,"), (2, "2 closed cases,")])
def test_learning_says_from_how_many(cli: Cli, cases: int, said: str) -> None:
    begun(cli)
    for number in range(cases):
        write(f"shop/cases/a{number}.yaml", BARS)
        cli("close", f"a{number}", "--cured-by", "lumpy-belt")
    learned = cli("lessons", "learn")
    assert learned.code == 0
    assert said in learned.err
