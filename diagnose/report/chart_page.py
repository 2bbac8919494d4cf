"""The page of the wall chart: one sheet a complaint, to print and hang beside the machine."""

from __future__ import annotations

from pathlib import Path

from diagnose.book.writing import write_whole
from diagnose.report.extra_style import with_style
from diagnose.report.page import environment
from diagnose.report.plain_text import all_plain
from diagnose.view.wall_chart import WallChart


def render_chart(view: WallChart) -> str:
    """The whole page as HTML text; it needs nothing else and no script."""
    view = all_plain(view)
    template = environment().get_template("chart.html.j2")
    return template.render(view=view, **with_style("map.css", "chart.css"))


def write_chart(view: WallChart, path: Path) -> Path:
    """Write the page whole or not at all. Raises BookError when the place cannot be written."""
    write_whole(path, render_chart(view))
    return path
