"""A real browser for the pages: Debian's chromium, off the network."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder, shared_folder
from diagnose.case.files import load_case
from diagnose.report.page import write_page
from diagnose.report.review_page import write_review
from diagnose.report.slip_page import write_slip
from diagnose.review.build import review_view
from diagnose.review.review import review
from diagnose.shop.cards import load_shop
from diagnose.view.slip import slip_view
from tests.report.views import bare_view, calm_view, rich_view

QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Chromium; without it the tests skip and say so, and fail where CI is true."""
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    if found is None:
        told = "no chromium on this machine: apt-get install chromium to run the browser tests"
        if os.environ.get("CI") == "true":
            pytest.fail(told)
        pytest.skip(told)
    with sync_playwright() as tools:
        started = tools.chromium.launch(executable_path=found, args=QUIET)
        yield started
        started.close()


@pytest.fixture(scope="session")
def pages(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The pages to look at, by name."""
    folder = tmp_path_factory.mktemp("pages")
    views = {"rich": rich_view(), "calm": calm_view(), "bare": bare_view()}
    made = {name: write_page(view, folder / f"{name}.html") for name, view in views.items()}
    book = load_book(knowledge_folder())
    shop = load_shop(shared_folder(), book)
    job = load_case(shared_folder() / "jobs" / "punch-plate.yaml", book)
    found = review(book, job, shop, "metric", None)
    made["review"] = write_review(review_view(book, found), folder / "review.html")
    slip = slip_view(book, "even-bars-across-travel")
    made["slip"] = write_slip(slip, folder / "slip.html")
    return made
