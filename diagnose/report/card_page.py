"""The page of a guided card: one sheet to take to the machine, a box to tick at every step."""

from __future__ import annotations

from pathlib import Path

from diagnose.book.writing import write_whole
from diagnose.report.page import environment
from diagnose.report.plain_text import all_plain
from diagnose.view.explanation import Explanation


def render_card(told: Explanation, version: str) -> str:
    """The card as HTML text that needs nothing else; `version` is that of the knowledge."""
    told = all_plain(told)
    template = environment().get_template("card.html.j2")
    return template.render(card=told, sections=dict(told.sections), version=version)


def write_card(told: Explanation, path: Path, version: str) -> Path:
    """Write the page whole or not at all. Raises BookError when the place cannot be written."""
    write_whole(path, render_card(told, version))
    return path
