"""Make the sample page from the demo case and the picture of the README from that page.

python -m tests.browser.pictures
"""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

from playwright.sync_api import sync_playwright

REPORTS = Path(__file__).parents[2] / "reports"
FLAGS = ["--no-sandbox", "--disable-background-networking", "--disable-gpu"]


def main() -> None:
    """Write the sample page anew and photograph its first screen."""
    told = subprocess.run(
        [sys.executable, "-m", "diagnose", "demo"], capture_output=True, text=True, check=True
    )
    place = re.search(r"The page of this case: (.+)", told.stdout + told.stderr)
    assert place is not None, "the demo says where it put its page"
    Path(place[1].strip()).replace(REPORTS / "sample-page.html")
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path="/usr/bin/chromium", args=FLAGS)
        page = browser.new_page(viewport={"width": 1200, "height": 900})
        page.goto((REPORTS / "sample-page.html").as_uri())
        page.screenshot(path=REPORTS / "sample-page.png")
        browser.close()


if __name__ == "__main__":
    main()
