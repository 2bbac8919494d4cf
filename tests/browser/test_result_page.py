"""The page as a browser shows, prints and reads it."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.browser.looking import LEAST_TARGET, POINT, RUNS_OUT, SIZES, TARGETS, barriers, opened


@pytest.fixture(params=["rich", "calm", "bare", "review", "slip"])
def path(request: pytest.FixtureRequest, pages: dict[str, Path]) -> Path:
    return pages[request.param]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [1100, 360])
def test_no_barrier_is_found(browser: Browser, path: Path, scheme: str, width: int) -> None:
    with opened(browser, path, width, color_scheme=scheme) as page:
        assert barriers(page) == []


@pytest.mark.parametrize("width", [320, 360, 550, 1100])
def test_the_page_never_scrolls_sideways(browser: Browser, path: Path, width: int) -> None:
    """550 px is a 1100 px window at 200 % zoom; 320 px a 1280 px window at 400 %."""
    with opened(browser, path, width) as page:
        assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_writing_stays_inside_its_drawing(browser: Browser, path: Path) -> None:
    with opened(browser, path) as page:
        assert page.evaluate(RUNS_OUT) == []


def test_the_file_is_all_that_is_asked_for(browser: Browser, path: Path) -> None:
    """One request, no complaint of the content policy."""
    context = browser.new_context()
    page = context.new_page()
    asked: list[str] = []
    told: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.on("console", lambda message: told.append(message.text))
    page.goto(path.as_uri())
    assert page.evaluate("getComputedStyle(document.querySelector('h1')).fontSize") != "32px"
    context.close()
    assert asked == [path.as_uri()]
    assert told == []


@pytest.mark.parametrize("width", [1100, 360])
def test_every_link_is_big_enough_to_hit(browser: Browser, path: Path, width: int) -> None:
    with opened(browser, path, width) as page:
        small = [t for t in page.evaluate(TARGETS) if min(t[:2]) < LEAST_TARGET]
        assert small == []


def test_the_keyboard_reaches_every_link_and_shows_where_it_is(
    browser: Browser, pages: dict[str, Path]
) -> None:
    with opened(browser, pages["rich"]) as page:
        links = page.locator("a").count()
        page.keyboard.press("Tab")
        assert page.evaluate("document.activeElement.className") == "skip"
        assert page.evaluate("document.activeElement.getBoundingClientRect().top") >= 0
        for _ in range(links - 1):
            page.keyboard.press("Tab")
            width = page.evaluate("getComputedStyle(document.activeElement).outlineWidth")
            assert width == "3px"
        assert page.evaluate("document.activeElement === [...document.links].at(-1)")


def test_the_skip_link_leads_past_the_head(browser: Browser, pages: dict[str, Path]) -> None:
    with opened(browser, pages["rich"]) as page:
        page.keyboard.press("Tab")
        page.keyboard.press("Enter")
        assert page.evaluate("document.activeElement.id") == "main"


def test_without_script_the_page_reads_the_same(browser: Browser, pages: dict[str, Path]) -> None:
    with opened(browser, pages["rich"], java_script_enabled=False) as page:
        assert page.get_by_role("heading", level=1).is_visible()
        assert page.get_by_text("Take the wheel off and look all round it").is_visible()


def test_the_first_screen_holds_the_stop_or_the_first_thing_to_do(
    browser: Browser, pages: dict[str, Path]
) -> None:
    bottom = "e => e.getBoundingClientRect().bottom"
    with opened(browser, pages["rich"]) as page:
        assert page.locator(".stop").first.evaluate(bottom) < 900
    with opened(browser, pages["calm"]) as page:
        assert page.locator(".do").evaluate(bottom) < 900


def test_print_is_12_point_or_more(browser: Browser, path: Path) -> None:
    """On the width of an A4 sheet inside its margins."""
    with opened(browser, path, round(184 / 25.4 * 96)) as page:
        page.emulate_media(media="print")
        small = [s for s in page.evaluate(SIZES) if s[0] < 12 * POINT - 0.05]
        assert small == []


@pytest.mark.parametrize("sheet", ["A4", "Letter"])
def test_it_prints(browser: Browser, path: Path, sheet: str) -> None:
    with opened(browser, path) as page:
        made = page.pdf(format=sheet)
        assert made.startswith(b"%PDF")
        assert 1 <= made.count(b"/Type /Page\n") <= 14  # the first two are the summary


def test_print_leaves_out_only_what_paper_cannot_use(
    browser: Browser, pages: dict[str, Path]
) -> None:
    with opened(browser, pages["rich"]) as page:
        page.emulate_media(media="print")
        hidden = page.evaluate(
            "[...document.querySelectorAll('body *')]"
            ".filter(e => getComputedStyle(e).display === 'none' && !e.closest('svg'))"
            ".map(e => e.className || e.tagName)"
        )
        assert sorted(hidden) == ["NAV", "rule", "skip"]


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_light_or_the_dark_follows_the_reader(
    browser: Browser, pages: dict[str, Path], scheme: str
) -> None:
    with opened(browser, pages["calm"], color_scheme=scheme) as page:
        page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]  # one of two words
        ink = page.evaluate("getComputedStyle(document.body).color")
        bright = sum(int(n) for n in ink[4:-1].split(",")) / 3
        assert (bright > 128) == (scheme == "dark")
