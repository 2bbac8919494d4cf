"""The page of a pocket slip: one printed sheet of boxes to fill in at the machine."""

from __future__ import annotations

from pathlib import Path

from diagnose.book.writing import write_whole
from diagnose.report.page import environment
from diagnose.report.plain_text import all_plain
from diagnose.view.slip import SlipView


def render_slip(view: SlipView) -> str:
    """The slip as HTML text that needs nothing else."""
    return environment().get_template("slip.html.j2").render(slip=all_plain(view))


def write_slip(view: SlipView, path: Path) -> Path:
    """Write the page whole or not at all. Raises BookError when the place cannot be written."""
    write_whole(path, render_slip(view))
    return path
