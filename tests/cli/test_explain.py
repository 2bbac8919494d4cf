"""`diagnose explain`: everything the book says of one thing, under fixed headings."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from diagnose.view.explanation import HEADINGS, explain, headings_of, look_up, shelves
from tests.cli.running import Cli
from tests.small import small_book


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("chatter", "even-bars-across-travel"),
        ("Ladder rungs", "even-bars-across-travel"),
        ("unbalanced-wheel", "unbalanced-wheel"),
        ("wheel out of balance", "unbalanced-wheel"),
        ("ring test", "ring-test"),
        ("cracked-wheel", "cracked-wheel"),
        ("grains rub", "grains-rub"),
        ("lock-out-first", "lock-out-first"),
        ("almost always", "almost always"),
        ("bar-rhythm", "bar-rhythm"),
    ],
)
def test_a_thing_is_found_by_id_name_or_what_people_call_it(words: str, name: str) -> None:
    assert [key for _, key in look_up(small_book(), words)] == [name]


def test_everything_in_the_book_can_be_explained_with_a_source() -> None:
    book = small_book()

    for kind, shelf in shelves(book).items():
        for name in shelf:
            told = dict(explain(book, kind, name).sections)
            assert told.keys() <= set(headings_of(kind))
            assert told["Sources"], name
            assert len(told) >= 2, name


def test_the_headings_of_a_cause_come_in_their_fixed_order(cli: Cli) -> None:
    told = cli("explain", "unbalanced-wheel")

    places = [told.out.index(f"\n{heading}\n") for heading in HEADINGS]
    assert told.code == 0
    assert places == sorted(places)
    assert told.out.index("Lock the power out before") > 0
    assert "unbalanced-wheel.yaml:1" in told.out


def test_the_causes_of_a_complaint_come_with_the_most_usual_first(cli: Cli) -> None:
    why = cli("explain", "chatter").out.split("Why it happens")[1].split("How to be sure")[0]

    assert why.index("(usually)") < why.index("(often)")


def test_a_name_not_known_names_those_near_it(cli: Cli) -> None:
    told = cli("explain", "unbalanced-wheal")

    assert told.code == 1
    assert told.out == ""
    assert "near it: unbalanced-wheel" in told.err


def test_an_explanation_as_json_has_the_same_lines(cli: Cli) -> None:
    body = json.loads(cli("explain", "ring-test", "--json").out)
    text = " ".join(cli("explain", "ring-test").out.split())

    assert body["schema"] == 1
    for lines in body["found"][0]["sections"].values():
        for line in lines:
            assert " ".join(line.split()) in text


@pytest.mark.parametrize(
    ("option", "told"), [("--map", "Cause and effect"), ("--wall-chart", "Wall chart")]
)
def test_the_command_writes_the_page_and_says_where(cli: Cli, option: str, told: str) -> None:
    done = cli("explain", option, "--out", "sheet.html")
    assert (done.code, done.out) == (0, "sheet.html\n")
    assert told in Path("sheet.html").read_text(encoding="utf-8")


def test_one_thing_is_asked_at_a_time(cli: Cli) -> None:
    assert cli("explain").code == 2
    assert cli("explain", "chatter", "--map").code == 2
    assert cli("explain", "chatter", "--out", "x.html").code == 2
