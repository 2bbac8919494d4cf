"""Make the pictures of the README from the real pages: python -m tests.browser.pictures"""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import sync_playwright

REPORTS = Path(__file__).parents[2] / "reports"
FLAGS = ["--no-sandbox", "--disable-background-networking", "--disable-gpu"]


def main() -> None:
    """Photograph the first screen of the committed sample page."""
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path="/usr/bin/chromium", args=FLAGS)
        page = browser.new_page(viewport={"width": 1200, "height": 900})
        page.goto((REPORTS / "sample-page.html").as_uri())
        page.screenshot(path=REPORTS / "sample-page.png")
        browser.close()


if __name__ == "__main__":
    main()
