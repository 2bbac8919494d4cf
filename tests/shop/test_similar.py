"""Earlier cases are found by what they have in common, and searched by whatever is asked."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from diagnose.case.entries import Case
from diagnose.shop.closed import cases_of, closed_cases
from diagnose.shop.search import Wanted, found
from diagnose.shop.similar import similar
from diagnose.view.earlier import earlier_views
from tests.shop.shops import case, closed
from tests.small import small_book

NOW = case("today's plate", ("bars-even", "yes"), ("bar-spacing", "6 mm"), machine="north")


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    closed(
        tmp_path,
        "belt",
        case("clamp bars", ("bars-even", "yes"), ("bar-spacing", "0.24 in"), machine="north"),
        "2026-03-09",
        "lumpy-belt",
        minutes=40,
        done="new belt",
    )
    closed(tmp_path, "floor", case("die plate", ("bars-even", "no")), "2026-05-01", "shaking-floor")
    closed(tmp_path, "given-up", case("strip", ("bars-even", "yes")), "2026-05-02")
    burnt = Case("burnt", ("burnt-patches",), NOW.entries, machine="north")
    closed(tmp_path, "burnt", burnt, "2026-05-03", "wheel-left-undressed")
    return tmp_path


def names(shop: Path, told: Case) -> list[str]:
    cases, _ = closed_cases(shop, small_book())
    return [e.kept.path.stem for e in similar(told, small_book(), cases)]


def test_the_likest_comes_first_and_other_faults_and_uncured_ones_never(shop: Path) -> None:
    assert names(shop, NOW) == ["belt", "floor"]


def test_of_cases_equally_like_the_latest_comes_first(shop: Path) -> None:
    assert names(shop, case("bare")) == ["floor", "belt"]


def test_a_case_is_not_like_itself(shop: Path) -> None:
    (kept,) = [k for k in closed_cases(shop, small_book())[0] if k.path.stem == "belt"]
    assert names(shop, kept.case) == ["floor"]


def test_answers_in_other_units_are_the_same_answers(shop: Path) -> None:
    cases, _ = closed_cases(shop, small_book())
    first = similar(NOW, small_book(), cases)[0]
    assert (first.same_answers, first.other_answers, first.same_machine) == (2, 0, True)


@pytest.mark.parametrize(
    ("today", "says"),
    [
        ("2026-06-10", "Last March the same fault on this machine was: Belt with a lump or a set."),
        ("2026-03-20", "This month the same fault on this machine was: Belt with a lump or a set."),
        ("2027-04-01", "In March 2026 the same fault on this machine was: "),
        ("2026-03-08", "In March 2026 the same fault on this machine was: "),
    ],
)
def test_it_is_said_as_a_mate_would(shop: Path, today: str, says: str) -> None:
    cases, _ = closed_cases(shop, small_book())
    earlier = similar(NOW, small_book(), cases)[:1]
    (view,) = earlier_views(small_book(), earlier, datetime.date.fromisoformat(today))
    assert view.said.startswith(says)
    assert (view.took, view.done, view.alike) == ("40 min", "new belt", "answers the same: 2")


@pytest.mark.parametrize(
    ("wanted", "stems"),
    [
        (Wanted(), {"belt", "floor", "given-up", "burnt"}),
        (Wanted(symptoms=("burnt-patches",)), {"burnt"}),
        (Wanted(causes=("lumpy-belt", "shaking-floor")), {"belt", "floor"}),
        (Wanted(machine="north"), {"belt", "burnt"}),
        (Wanted(wheel="white"), set()),
        (Wanted(since="2026-05-01", until="2026-05-02"), {"floor", "given-up"}),
        (Wanted(words=("NEW", "belt")), {"belt"}),
        (Wanted(words=("lump",), machine="north"), {"belt"}),
    ],
)
def test_cases_are_found_by_what_is_asked(shop: Path, wanted: Wanted, stems: set[str]) -> None:
    kept = cases_of(shop, small_book())
    assert {k.path.stem for k in found(kept.closed, wanted, small_book())} == stems
