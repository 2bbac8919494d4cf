"""What comes out of the printer: sheets counted, on A4 and on Letter."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder, shared_folder
from diagnose.case.files import load_case
from diagnose.reasoning.reason import reason
from diagnose.report.page import write_page
from diagnose.report.slip_page import write_slip
from diagnose.shop.cards import load_shop
from diagnose.view.build import view_of
from diagnose.view.slip import slip_view
from tests.browser.looking import opened, sheets

SHEETS = ("A4", "Letter")
# two stops, a hold with open hazards, a plan with many cautions, nothing that fits
CASES = (
    "tall-block-tipped",
    "crack-across-a-burnt-die",
    "spacer-plate-ripples",
    "bars-nothing-explains",
)
SLIPS = ("even-bars-across-travel", "thin-plate-dished", "scratches-after-dressing")


def counted(browser: Browser, path: Path, sheet: str, leave_out: str = "") -> int:
    """How many sheets a file takes."""
    with opened(browser, path) as page:
        return sheets(page, sheet, leave_out)


@pytest.fixture(scope="module", params=CASES)
def case_page(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    book = load_book(knowledge_folder())
    shop = load_shop(shared_folder(), book)
    case = load_case(shared_folder() / "cases" / f"{request.param}.yaml", book)
    view = view_of(reason(book, case, shop.facts_for(case)))
    return write_page(view, tmp_path_factory.mktemp("cases") / "case.html")


@pytest.mark.parametrize("sheet", SHEETS)
def test_what_a_worker_takes_along_fits_two_sheets(
    browser: Browser, case_page: Path, sheet: str
) -> None:
    assert 1 <= counted(browser, case_page, sheet, ".desk, footer") <= 2


@pytest.mark.parametrize("name", ["rich", "calm", "bare"])
def test_the_summary_of_a_full_view_fits_two_sheets(
    browser: Browser, pages: dict[str, Path], name: str
) -> None:
    for sheet in SHEETS:
        assert 1 <= counted(browser, pages[name], sheet, ".desk, footer") <= 2


def test_the_rest_begins_on_a_sheet_of_its_own(browser: Browser, pages: dict[str, Path]) -> None:
    page = browser.new_page()
    page.goto(pages["calm"].as_uri())
    page.emulate_media(media="print")
    before = page.evaluate("getComputedStyle(document.querySelector('.desk')).breakBefore")
    page.close()
    assert before == "page"


@pytest.mark.parametrize("name", SLIPS)
def test_a_pocket_slip_is_one_sheet(browser: Browser, tmp_path: Path, name: str) -> None:
    path = write_slip(slip_view(load_book(knowledge_folder()), name), tmp_path / "slip.html")
    assert [counted(browser, path, sheet) for sheet in SHEETS] == [1, 1]
