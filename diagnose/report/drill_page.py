"""The page of a debrief: the hazard first, cause and effect drawn, minutes, every step's bar."""

from __future__ import annotations

import math
from pathlib import Path

from diagnose.book.problems import BookError
from diagnose.book.writing import write_whole
from diagnose.report.figures_shares import LEAST_REACH
from diagnose.report.page import PageError, environment
from diagnose.report.plain_text import all_plain
from diagnose.report.svg import Svg, line, picture, rect
from diagnose.view.drill import DebriefView, MinutesRow, StepView
from diagnose.view.result import ReasonView, SourceView, minutes

WIDTH, HEIGHT = 240.0, 18.0


class DebriefAnchors:
    """The places of a debrief: its sources."""

    def __init__(self, view: DebriefView) -> None:
        self.sources = view.sources

    def source_number(self, source: SourceView) -> int:
        """The number of a source in the list at the end, from 1."""
        return self.sources.index(source) + 1


def render_debrief(view: DebriefView) -> str:
    """The whole page as HTML text, holding every fact of the view and no script."""
    view = all_plain(view)
    drawn = {s.number: _reason(s) for s in view.steps if s.counts and not math.isnan(s.share)}
    end = max([LEAST_REACH, *(abs(r.share) for r in drawn.values())])
    most = max([1.0, *(r.minutes for r in view.minutes)])
    template = environment().get_template("drill.html.j2")
    return template.render(
        view=view,
        anchors=DebriefAnchors(view),
        drawn=drawn,
        end=end,
        most=most,
        minutes_bar=minutes_bar,
    )


def write_debrief(view: DebriefView, path: Path) -> Path:
    """Write the page whole or not at all and give its path.

    Raises PageError when the place cannot be written or is a folder.
    """
    try:
        write_whole(path, render_debrief(view))
    except BookError as error:
        raise PageError(error.problems) from None
    return path


def minutes_bar(row: MinutesRow, most: float, name: str) -> Svg:
    """The time of one way as a bar; `most` minutes fill it."""
    told = f"{row.label}: {minutes(row.minutes)}"
    length = WIDTH * min(1.0, row.minutes / most)
    return picture(
        name,
        told,
        f"{told}, {row.note}",
        WIDTH,
        HEIGHT,
        line(0, HEIGHT - 4, WIDTH, HEIGHT - 4, "tick"),
        rect(0, 4, length, HEIGHT - 8, "bar-for"),
        kind="bar",
    )


def _reason(step: StepView) -> ReasonView:
    return ReasonView(f"{step.ask} {step.seen}", step.share, (), ())
