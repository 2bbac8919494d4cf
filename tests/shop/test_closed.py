"""A closed case is a file of its own; nothing is lost, whoever closes what and when."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from diagnose.book.problems import BookError
from diagnose.case.case_text import case_text
from diagnose.case.entries import Closed
from diagnose.case.files import load_case
from diagnose.cli.open_cases import open_cases
from diagnose.shop.closed import cases_of, close_case, closed_cases, tried_here
from tests.shop.shops import BARS, case, closed, open_case, put
from tests.small import small_book

TOLD = case("plate, ripples", ("bars-even", "yes"), ("wheel-changed", "no"))
BELT = Closed("2026-03-09", ("lumpy-belt",), done="new belt", minutes=40)


def test_a_closed_case_moves_to_the_closed_ones(tmp_path: Path) -> None:
    path = open_case(tmp_path, "a", TOLD)
    target = close_case(tmp_path, TOLD, path, BELT)
    assert target == tmp_path / "cases/closed/a.yaml"
    assert not path.exists()
    kept = cases_of(tmp_path, small_book())
    assert (kept.open, kept.problems) == ((), ())
    assert [k.case.closed for k in kept.closed] == [BELT]


words = st.text(
    st.characters(codec="utf-8", exclude_categories=("C", "Z")), min_size=1, max_size=30
)
endings = st.builds(
    Closed,
    date=st.dates().map(lambda d: d.isoformat()),
    cured_by=st.lists(st.sampled_from(sorted(small_book().causes)), unique=True).map(tuple),
    something_new=st.one_of(st.just(""), words),
    done=st.one_of(st.just(""), words),
    minutes=st.one_of(st.none(), st.floats(0, 9999).map(lambda x: round(x, 2))),
    proved=st.one_of(st.just(""), words),
    note=st.one_of(st.just(""), words),
    pictures=st.lists(words, max_size=2).map(tuple),
)


@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(endings)
def test_what_was_told_at_the_end_is_read_back_the_same(tmp_path: Path, ending: Closed) -> None:
    path = put(tmp_path, "a.yaml", case_text(replace(TOLD, closed=ending)))
    assert load_case(path, small_book()).closed == ending


@pytest.mark.parametrize(
    ("ending", "line", "says"),
    [
        ("{date: 2026-03-09}", 4, "a closed case says what cured it"),
        (
            "{date: 2026-03-09, cured_by: [lumpy-belt], not_cured: yes}",
            4,
            "it was cured, and was not",
        ),
        ("{date: 9.3.2026, not_cured: yes}", 4, "'9.3.2026' is no day"),
        ("{date: 2026-03-09, cured_by: [lumpi-belt]}", 4, "there is no cause 'lumpi-belt'"),
        ("{cured_by: [lumpy-belt]}", 4, "has no 'date:'"),
    ],
)
def test_a_fault_of_the_ending_is_named_with_its_line(
    tmp_path: Path, ending: str, line: int, says: str
) -> None:
    text = f"title: x\ncomplaint: [{BARS}]\nanswers: {{bars-even: yes}}\nclosed: {ending}\n"
    path = put(tmp_path, "cases/closed/a.yaml", text)
    kept = cases_of(tmp_path, small_book())
    assert kept.closed == ()
    assert any(
        says in p.what and (p.file, p.line) == (path.as_posix(), line) for p in kept.problems
    )


def test_a_file_written_by_hand_stays_and_counts_as_closed(tmp_path: Path) -> None:
    path = put(tmp_path, "cases/a.yaml", "# mine\n" + case_text(TOLD))
    close_case(tmp_path, load_case(path, small_book()), path, BELT)
    assert path.read_text().startswith("# mine")
    assert cases_of(tmp_path, small_book()).open == ()
    assert open_cases(tmp_path / "cases", small_book(), print) == []


def test_a_case_from_elsewhere_stays_where_it_is(tmp_path: Path) -> None:
    path = put(tmp_path, "elsewhere/b.yaml", case_text(TOLD))
    target = close_case(tmp_path / "shop", TOLD, path, BELT)
    assert target == tmp_path / "shop/cases/closed/b.yaml"
    assert path.exists()


def test_a_case_is_closed_once(tmp_path: Path) -> None:
    path = put(tmp_path, "cases/a.yaml", "# mine\n" + case_text(TOLD))
    target = close_case(tmp_path, TOLD, path, BELT)
    before = target.read_bytes()
    with pytest.raises(BookError, match="closed already"):
        close_case(tmp_path, TOLD, path, Closed("2026-04-01", ("shaking-floor",)))
    assert target.read_bytes() == before
    with pytest.raises(BookError, match="closed already on 2026-03-09"):
        close_case(tmp_path, replace(TOLD, closed=BELT), target, BELT)


def test_another_case_of_the_same_name_gets_a_name_of_its_own(tmp_path: Path) -> None:
    closed(tmp_path, "a", TOLD, "2026-03-09", "lumpy-belt")
    other = case("another plate", ("bars-even", "no"))
    target = closed(tmp_path, "a", other, "2026-03-10", "shaking-floor")
    assert target.name == "a-2.yaml"
    assert len(cases_of(tmp_path, small_book()).closed) == 2


def test_killed_between_the_two_steps_the_open_case_counts_as_closed(tmp_path: Path) -> None:
    path = open_case(tmp_path, "a", TOLD)
    before = path.read_bytes()
    close_case(tmp_path, TOLD, path, BELT)
    path.write_bytes(before)  # as if the second step never came
    kept = cases_of(tmp_path, small_book())
    assert (len(kept.open), len(kept.closed)) == (0, 1)
    assert open_cases(tmp_path / "cases", small_book(), print) == []


def test_a_case_that_goes_on_after_it_was_closed_is_open_again(tmp_path: Path) -> None:
    closed(tmp_path, "a", TOLD, "2026-03-09", "lumpy-belt")
    open_case(tmp_path, "a", case("plate, ripples", ("bars-even", "yes"), ("wheel-changed", "yes")))
    assert len(cases_of(tmp_path, small_book()).open) == 1


def test_a_case_of_a_newer_version_is_one_message_and_the_rest_is_listed(tmp_path: Path) -> None:
    closed(tmp_path, "a", TOLD, "2026-03-09", "lumpy-belt")
    text = case_text(TOLD).replace("schema: 1", "schema: 7")
    put(tmp_path, "cases/closed/new.yaml", text + "from_the_future: [1, 2]\n")
    kept = cases_of(tmp_path, small_book())
    assert len(kept.closed) == 1
    (problem,) = kept.problems
    assert problem.what == "this case was written by a newer version (schema 7; this one reads 1)"
    assert problem.mend.endswith("nothing was changed")


def test_the_latest_closed_comes_first(tmp_path: Path) -> None:
    for day, stem in (("2026-01-05", "c"), ("2026-03-09", "a"), ("2025-12-31", "b")):
        closed(tmp_path, stem, case(stem), day, "lumpy-belt")
    assert [k.path.stem for k in closed_cases(tmp_path, small_book())[0]] == ["a", "c", "b"]


def test_the_causes_that_cured_here_are_tried_here(tmp_path: Path) -> None:
    closed(tmp_path, "a", TOLD, "2026-03-09", "lumpy-belt")
    closed(tmp_path, "b", case("b"), "2026-03-09", something_new="the felt gave way")
    assert tried_here(closed_cases(tmp_path, small_book())[0]) == {"lumpy-belt"}
