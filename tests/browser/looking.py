"""What every test of a page in a browser needs: opening it, and what is looked at in it."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

RULES = ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"]
LEAST_TARGET = 24  # CSS px, WCAG 2.2 success criterion 2.5.8
POINT = 96 / 72  # CSS px

# The size each piece of writing has on paper, in px: drawings are scaled with their frame.
SIZES = """() => {
  const out = [];
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let n = walk.nextNode(); n; n = walk.nextNode()) {
    const e = n.parentElement;
    if (!n.data.trim() || e.closest('title, desc, style') || !e.getClientRects().length) continue;
    const svg = e.closest('svg');
    const scale = svg ? svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : 1;
    out.push([parseFloat(getComputedStyle(e).fontSize) * scale, n.data.trim()]);
  }
  return out;
}"""

# Writing that runs out of its drawing.
RUNS_OUT = """() => [...document.querySelectorAll('svg.figure text')].filter(e => {
  const t = e.getBoundingClientRect(), s = e.closest('svg').getBoundingClientRect();
  return t.left < s.left - 1 || t.right > s.right + 1 || t.bottom > s.bottom + 2;
}).map(e => e.textContent)"""

TARGETS = """() => [...document.querySelectorAll('a:not(.skip)')].map(e => {
  const r = e.getBoundingClientRect(); return [r.width, r.height, e.textContent];
})"""


@contextmanager
def opened(browser: Browser, path: Path, width: int = 1100, **options: Any) -> Iterator[Page]:
    context = browser.new_context(viewport={"width": width, "height": 900}, **options)
    page = context.new_page()
    page.goto(path.as_uri())
    yield page
    context.close()


def barriers(page: Page) -> list[tuple[str, list[str]]]:
    """What the accessibility rules find fault with: rule and the elements."""
    found = Axe().run(page, options={"runOnly": RULES}).response["violations"]
    return [(v["id"], [n["html"] for n in v["nodes"]]) for v in found]


def too_wide(page: Page, width: int) -> list[str]:
    """What runs out of the page sideways, and writing that runs out of its drawing."""
    out: list[str] = page.evaluate(RUNS_OUT)
    if page.evaluate("document.documentElement.scrollWidth") > width:
        out.append(f"the page is wider than {width} px")
    return out


def sheets(page: Page, sheet: str, leave_out: str = "") -> int:
    """How many sheets a page takes; what fits the selector `leave_out` is taken away first."""
    if leave_out:
        page.evaluate("s => document.querySelectorAll(s).forEach(e => e.remove())", leave_out)
    return page.pdf(format=sheet).count(b"/Type /Page\n")
