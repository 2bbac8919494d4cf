"""Map and wall chart as a browser shows them."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from diagnose.report.chart_page import write_chart
from diagnose.report.map_page import write_map
from diagnose.view.cause_map import map_of
from diagnose.view.wall_chart import chart_of
from tests.browser.looking import RUNS_OUT, barriers, opened
from tests.small import small_book


@pytest.fixture(scope="module", params=["map", "chart"])
def sheet(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("sheets") / f"{request.param}.html"
    if request.param == "map":
        return write_map(map_of(small_book()), path)
    return write_chart(chart_of(small_book()), path)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [1400, 360])
def test_no_barrier_is_found(browser: Browser, sheet: Path, scheme: str, width: int) -> None:
    with opened(browser, sheet, width, color_scheme=scheme) as page:
        assert barriers(page) == []


@pytest.mark.parametrize("width", [320, 360, 1400])
def test_the_page_never_scrolls_sideways(browser: Browser, sheet: Path, width: int) -> None:
    with opened(browser, sheet, width) as page:
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        assert page.evaluate(RUNS_OUT) == []


def test_a_box_leads_to_its_explanation_without_a_script(browser: Browser, tmp_path: Path) -> None:
    path = write_map(map_of(small_book()), tmp_path / "map.html")
    with opened(browser, path, java_script_enabled=False) as page:
        link = page.locator("svg a").first
        place = link.get_attribute("href")
        link.click()
        assert page.url.endswith(str(place))


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_map_prints_lying_across_and_the_chart_upright(
    browser: Browser, sheet: Path, paper: str
) -> None:
    with opened(browser, sheet) as page:
        printed = page.pdf(format=paper)
    assert b"/Type /Page" in printed or b"/Type/Page" in printed
    wide, tall = {"A4": (b"595", b"842"), "Letter": (b"612", b"792")}[paper]
    first, second = (tall, wide) if sheet.stem == "map" else (wide, tall)
    assert re.search(rb"/MediaBox \[0 0 " + first + rb"[\d.]* " + second, printed)
