"""`diagnose explain CARD`: text, JSON and page tell the same steps, cares before each."""

from __future__ import annotations

import html
import json
import shutil
from functools import cache
from pathlib import Path

import pytest

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from diagnose.case.entries import Case, Entry
from diagnose.reasoning.reason import reason
from diagnose.view.as_json import result_json
from diagnose.view.build import view_of
from diagnose.view.text import result_text
from tests.book.test_cards import CARD
from tests.cli.running import Cli
from tests.small import SMALL, change


@pytest.fixture
def with_card(cli: Cli, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Cli:
    """The command line on the small knowledge with one guided card, named by one fix."""
    folder = tmp_path / "with-card/knowledge"
    shutil.copytree(SMALL, folder)
    (folder / "cards").mkdir()
    (folder / "cards/press-the-cheese.yaml").write_text(CARD, encoding="utf-8")
    cause = "causes/wheel/unbalanced-wheel.yaml"
    change(folder, cause, "\nfix:\n", "\nfix:\n  cards: [press-the-cheese]\n")
    monkeypatch.setattr("diagnose.book.locate.knowledge_folder", lambda: folder)
    return cli


def test_the_care_stands_before_the_step_and_the_proof_after(with_card: Cli) -> None:
    told = with_card("explain", "press the cheese")

    parts = (
        "Take care: Lock the power",
        "1. lock the power out.",
        "Why: hands go near.",
        "2. press",
    )
    places = [told.out.index(part) for part in (*parts, "It is flat.")]
    assert told.code == 0
    assert places == sorted(places)


def test_the_json_holds_every_step_of_the_text(with_card: Cli) -> None:
    text = " ".join(with_card("explain", "press-the-cheese").out.split())
    found = json.loads(with_card("explain", "press-the-cheese", "--json").out)["found"][0]

    assert [s["number"] for s in found["steps"]] == [1, 2]
    for step in found["steps"]:
        for part in (step["do"], step["why"], step["check_by"], *step["take_care"]):
            assert part in text
    for lines in found["sections"].values():
        assert all(" ".join(line.split()) in text for line in lines)


def test_the_page_of_a_card_is_one_file_with_every_step(with_card: Cli) -> None:
    told = with_card("explain", "press-the-cheese", "--page", "card.html")
    page = html.unescape(Path("card.html").read_text(encoding="utf-8"))

    assert told.out == "card.html\n"
    assert page.index("Lock the power out before") < page.index("lock the power out</strong>")
    assert all(part in page for part in ("hands go near", "the lock is on", "It is flat."))
    assert "<script" not in page
    assert "http" not in page.split("<body>")[1]


def test_only_a_card_has_a_page(with_card: Cli) -> None:
    told = with_card("explain", "unbalanced-wheel", "--page", "card.html")

    assert told.code == 1
    assert "'unbalanced-wheel' is no guided card" in told.err
    assert "the cards are: press-the-cheese" in told.err
    assert not Path("card.html").exists()


def test_the_cause_says_which_card_shows_how(with_card: Cli) -> None:
    assert "diagnose explain press-the-cheese (Press the cheese)" in " ".join(
        with_card("explain", "unbalanced-wheel").out.split()
    )


HEARD = (
    Entry("answer", "what-changed", "wheel-or-mounting"),
    Entry("answer", "trued-since-mounting", "all-round"),
    Entry("answer", "balanced-since-mounting", "never-balanced"),
    Entry("answer", "column-feel", "steady-shake"),
)


@cache
def shipped() -> Book:
    return load_book(knowledge_folder())


def bars(*entries: Entry) -> Case:
    return Case("bars", ("even-bars-across-travel",), entries)


def test_the_plan_names_the_card_once_nothing_stands_in_the_way() -> None:
    cleared = (Entry("cleared", stop, "looked at") for stop in sorted(shipped().stops))

    view = view_of(reason(shipped(), bars(*cleared, *HEARD)))
    cards = [c.id for fix in view.plan.cure for c in fix.cards]
    assert "balance-a-wheel" in cards
    assert "guided card: diagnose explain balance-a-wheel" in " ".join(result_text(view).split())
    told = [c["id"] for fix in result_json(view)["plan"]["cure"] for c in fix["cards"]]
    assert told == cards


def test_a_step_that_is_withheld_names_no_card() -> None:
    plan = view_of(reason(shipped(), bars(*HEARD))).plan

    assert any(fix.withheld for fix in plan.cure)
    assert all(not fix.cards for fix in plan.cure if fix.withheld)
    assert plan.cards == ()


def test_a_stop_names_the_card_that_helps_to_clear_it() -> None:
    raised = Entry("answer", "before-anything-runs", "wheel-in-doubt-now")
    view = view_of(reason(shipped(), bars(raised)))

    assert [c.id for c in view.stops[0].cards] == ["mount-a-wheel"]
    assert "diagnose explain mount-a-wheel" in result_text(view)
    assert result_json(view)["stops"][0]["cards"] == ["mount-a-wheel"]
