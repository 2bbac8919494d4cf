"""The page of a case: one HTML file that needs nothing else. The only importer of jinja2."""

from __future__ import annotations

import base64
import hashlib
from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from diagnose.book.problems import BookError
from diagnose.book.writing import write_whole
from diagnose.report import figures_chances, figures_drawn, figures_readings, figures_shares
from diagnose.report.anchors import Anchors
from diagnose.report.figures_chain import chain_figure
from diagnose.report.in_short import MOST_IN_SHORT, first_cautions, plan_cautions, shown_fixes
from diagnose.report.plain_text import all_plain
from diagnose.report.sketches import caption, sketch
from diagnose.report.svg import Svg
from diagnose.view.result import ResultView, chance_words, minutes, percent

TEMPLATES = Path(__file__).parent / "templates"


class PageError(BookError):
    """The page cannot be written where it was asked for; the text says why and what to do."""


def render_page(view: ResultView) -> str:
    """The whole page as HTML text, holding every fact of the view and no script."""
    view = all_plain(view)
    template = environment().get_template("result.html.j2")
    return template.render(
        view=view, anchors=Anchors(view), scales=figures_readings.scales(view.readings)
    )


def write_page(view: ResultView, path: Path) -> Path:
    """Write the page whole or not at all and give its path.

    Raises PageError when the place cannot be written or is a folder.
    """
    try:
        write_whole(path, render_page(view))
    except BookError as error:
        raise PageError(error.problems) from None
    return path


@cache
def environment() -> Environment:
    """The templates, with what they call; kept for the run."""
    environment = Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    style = (TEMPLATES / "page.css").read_text(encoding="utf-8")
    environment.globals.update(
        style=Svg(style),
        style_hash=_hash(style),
        sketch=sketch,
        caption=caption,
        chain_figure=chain_figure,
        cause_bar=figures_chances.cause_bar,
        chance_bar=figures_chances.chance_bar,
        outcome_bar=figures_chances.outcome_bar,
        share_bar=figures_shares.share_bar,
        moving=figures_shares.moving,
        unmoving=figures_shares.unmoving,
        reach=figures_shares.reach,
        chance_of=figures_shares.chance_of,
        marking_figure=figures_drawn.marking_figure,
        shakers_figure=figures_drawn.shakers_figure,
        limit_figure=figures_drawn.limit_figure,
        grid_figure=figures_drawn.grid_figure,
        number_line=figures_readings.number_line,
        first_cautions=first_cautions,
        plan_cautions=plan_cautions,
        shown_fixes=shown_fixes,
        most_in_short=MOST_IN_SHORT,
    )
    environment.filters.update(
        percent=percent, minutes=minutes, chance_words=chance_words, odds=figures_shares.odds_words
    )
    return environment


def _hash(style: str) -> str:
    digest = hashlib.sha256(style.encode("utf-8")).digest()
    return f"sha256-{base64.b64encode(digest).decode('ascii')}"
