"""Hostile words in every text of a review and of a slip: nothing runs, nothing runs out."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from diagnose.report.review_page import write_review
from diagnose.report.slip_page import write_slip
from diagnose.view.review import ReviewView
from diagnose.view.slip import SlipView, slip_view
from tests.browser.looking import barriers, opened, too_wide
from tests.report.reading import with_every_text
from tests.review.jobs import book, job, reviewed

HOSTILE = {
    "markup": "</style></title></svg><h1>big</h1><a href='http://example.invalid/x'>x</a><!-- ]]>",
    "script": "<script>document.title='ran'</script><img src=x onerror=\"document.title='ran'\">"
    "<svg onload=\"document.title='ran'\"><a href=\"javascript:document.title='ran'\">go</a>",
    "long word": "spindle" * 60,
    "right to left": "\u202e\u05d0\u05d1\u05d2 \u0627\u0644\u0637\u062d\u0646 \u2067wheel 46\u2069",
    "emoji": "\U0001f468\u200d\U0001f527\U0001f525 \U0001f1e9\U0001f1ea \u26a0\ufe0f" * 5,
    "wide": "\u7814\u524a\u76e4" * 60,
}


@pytest.fixture(scope="module", params=["review", "stopped review", "slip"])
def view(request: pytest.FixtureRequest) -> ReviewView | SlipView:
    if request.param == "slip":
        return slip_view(book(), "even-bars-across-travel")
    if request.param == "review":
        planted = job("hard plate", wheel="brown-60-l", depth_of_cut="0.04 mm", sides="six")
    else:
        planted = job("soft block", spindle_speed="4200 rpm")
    return reviewed(planted)


@pytest.fixture(scope="module", params=HOSTILE)
def path(
    request: pytest.FixtureRequest,
    view: ReviewView | SlipView,
    tmp_path_factory: pytest.TempPathFactory,
) -> Path:
    place = tmp_path_factory.mktemp("hostile") / "page.html"
    told = with_every_text(view, HOSTILE[request.param])
    if isinstance(view, SlipView):
        return write_slip(told, place)
    assert isinstance(view, ReviewView)
    # the lists have their names from the program, and two of one name could not be told apart
    pairs = zip(told.lists, view.lists, strict=True)
    named = tuple(replace(new, id=old.id, title=old.title) for new, old in pairs)
    return write_review(replace(told, lists=named), place)


def test_nothing_runs_and_nothing_is_fetched(browser: Browser, path: Path) -> None:
    context = browser.new_context()
    page = context.new_page()
    asked: list[str] = []
    told: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.on("console", lambda message: told.append(message.text))
    page.on("dialog", lambda dialog: told.append(dialog.message))
    page.goto(path.as_uri())
    page.wait_for_timeout(50)

    assert page.title() != "ran"
    assert page.evaluate("document.querySelectorAll('script, img, iframe, object').length") == 0
    assert page.evaluate("document.querySelectorAll('h1').length") == 1
    assert page.evaluate("[...document.links].filter(a => a.protocol !== 'file:').length") == 0
    context.close()
    assert asked == [path.as_uri()]
    assert told == []


@pytest.mark.parametrize("width", [360, 1100])
def test_nothing_runs_out_of_its_place_and_no_barrier_is_found(
    browser: Browser, path: Path, width: int
) -> None:
    with opened(browser, path, width) as page:
        assert too_wide(page, width) == []
        assert barriers(page) == []
