"""The page of a debrief as a browser shows it."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from diagnose.drill.debrief import debrief
from diagnose.drill.game import Game
from diagnose.report.drill_page import write_debrief
from diagnose.view.drill import DebriefView
from tests.browser.looking import RUNS_OUT, barriers, opened
from tests.drill.test_drawn import shipped
from tests.drill.test_game import drawn, turning_check


@cache
def view(missed: bool) -> DebriefView:
    game = Game(shipped(), drawn(1, hazard=missed))
    if not missed:
        game.safety()
    game.ask(turning_check(game))
    game.ask("trued-since-mounting")
    game.attempt("unbalanced-wheel")
    game.attempt("wheel-not-trued")
    return debrief(game, "anna")


@pytest.fixture(params=[True, False], ids=["missed", "seen"])
def path(request: pytest.FixtureRequest, tmp_path: Path) -> Path:
    return write_debrief(view(request.param), tmp_path / "debrief.html")


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [1400, 360])
def test_no_barrier_is_found(browser: Browser, path: Path, scheme: str, width: int) -> None:
    with opened(browser, path, width, color_scheme=scheme) as page:
        assert barriers(page) == []
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        assert page.evaluate(RUNS_OUT) == []


def test_the_file_is_all_that_is_asked_for_and_holds_no_script(
    browser: Browser, path: Path
) -> None:
    context = browser.new_context(java_script_enabled=True)
    page = context.new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(path.as_uri())
    assert asked == [path.as_uri()]
    assert page.evaluate("document.scripts.length") == 0
    context.close()


@pytest.mark.parametrize("sheet", ["A4", "Letter"])
def test_it_prints(browser: Browser, path: Path, sheet: str) -> None:
    with opened(browser, path) as page:
        assert page.pdf(format=sheet).startswith(b"%PDF")


def test_a_missed_hazard_stands_on_the_first_screen(browser: Browser, tmp_path: Path) -> None:
    path = write_debrief(view(True), tmp_path / "debrief.html")
    with opened(browser, path) as page:
        first = page.locator(".first .big")
        assert "you did not stop" in first.inner_text()
        assert first.evaluate("e => e.getBoundingClientRect().bottom") < 900
