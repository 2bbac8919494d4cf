"""The page of a review as a browser shows and prints it."""

from __future__ import annotations

from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser

from diagnose.report.review_page import write_review
from tests.browser.test_result_page import LEAST_TARGET, RULES, TARGETS, opened
from tests.review.jobs import job, reviewed

JOBS = {
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
        found = Axe().run(page, options={"runOnly": RULES}).response["violations"]
        assert [(v["id"], [n["html"] for n in v["nodes"]]) for v in found] == []


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
