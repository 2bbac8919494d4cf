"""The page of a review as a browser shows and prints it."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from diagnose.report.review_page import write_review
from tests.browser.looking import LEAST_TARGET, TARGETS, barriers, opened, sheets
from tests.review.fresh_jobs import fresh
from tests.review.jobs import SOUND, job, reviewed

JOBS = {
    "hazards open": replace(job("hard plate"), given=dict(SOUND["hard plate"].given)),
    "never balanced": job("soft block", balanced_since_mounting="never-balanced"),
    "brought along": fresh("thin plate on coarse poles"),
    "wrong wheel": job("hard plate", wheel="brown-60-l", depth_of_cut="0.04 mm"),
    "stopped": job("soft block", spindle_speed="4200 rpm", sides="six"),
    "thin": job("thin strip", bow_before="0.1 mm"),
}


@pytest.fixture(params=JOBS)
def path(request: pytest.FixtureRequest, tmp_path: Path) -> Path:
    return write_review(reviewed(JOBS[request.param]), tmp_path / "job.html")


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [1100, 360])
def test_no_barrier_is_found(browser: Browser, path: Path, scheme: str, width: int) -> None:
    with opened(browser, path, width, color_scheme=scheme) as page:
        assert barriers(page) == []


@pytest.mark.parametrize("width", [320, 360, 550, 1100])
def test_the_page_never_scrolls_sideways(browser: Browser, path: Path, width: int) -> None:
    with opened(browser, path, width) as page:
        assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_every_link_can_be_hit_and_leads_somewhere(browser: Browser, path: Path) -> None:
    with opened(browser, path) as page:
        for _, height, words in page.evaluate(TARGETS):
            assert height >= LEAST_TARGET, words
        lost = page.evaluate(
            "() => [...document.querySelectorAll('a')].map(a => a.getAttribute('href'))"
            ".filter(h => !document.getElementById(h.slice(1)))"
        )
        assert lost == []


def test_nothing_is_fetched_and_no_script_is_needed(browser: Browser, path: Path) -> None:
    asked: list[str] = []
    with opened(browser, path, java_script_enabled=False) as page:
        page.on("request", lambda r: asked.append(r.url))
        page.reload()
        assert asked == [path.as_uri()]
        assert page.locator("h1").count() == 1


@pytest.mark.parametrize("sheet", ["A4", "Letter"])
def test_the_summary_fits_two_sheets_and_all_of_it_fifteen(
    browser: Browser, path: Path, sheet: str
) -> None:
    with opened(browser, path) as page:
        assert 3 <= sheets(page, sheet) <= 15
        assert 1 <= sheets(page, sheet, ".desk, footer") <= 2


def test_the_summary_tells_the_risks_and_what_to_set_in_order(
    browser: Browser, tmp_path: Path
) -> None:
    view = reviewed(JOBS["wrong wheel"])
    with opened(browser, write_review(view, tmp_path / "job.html")) as page:
        told = page.locator("#short").inner_text()
    places = [told.index(risk.name) for risk in view.risks]
    assert places == sorted(places)
    order = [told.index(words) for words in ("Dress to rough", "Rough 0", "Finish ", "Spark out")]
    assert order == sorted(order)
    assert view.settings[0].recommended in told
