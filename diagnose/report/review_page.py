"""The page of a review: what to change before the cut, and the lists to tick at the machine."""

from __future__ import annotations

from pathlib import Path

from diagnose.book.problems import BookError
from diagnose.book.writing import write_whole
from diagnose.report.anchors import Anchors
from diagnose.report.figures_chances import chance_bar
from diagnose.report.page import PageError, environment
from diagnose.report.plain_text import all_plain
from diagnose.view.review import ReviewView

MOST_IN_SHORT = 5  # questions on the sheets that are taken along


class ReviewAnchors(Anchors):
    """The places of a review page: what was planned, and the sources."""

    def __init__(self, view: ReviewView) -> None:
        super().__init__(view)
        self.risks = [self._new("risk", r.cause) for r in view.risks]


def render_review(view: ReviewView) -> str:
    """The whole page as HTML text, holding every fact of the view and no script."""
    view = all_plain(view)
    template = environment().get_template("review.html.j2")
    return template.render(
        view=view,
        anchors=ReviewAnchors(view),
        chance_bar=chance_bar,
        most_in_short=MOST_IN_SHORT,
    )


def write_review(view: ReviewView, path: Path) -> Path:
    """Write the page whole or not at all and give its path.

    Raises PageError when the place cannot be written or is a folder.
    """
    try:
        write_whole(path, render_review(view))
    except BookError as error:
        raise PageError(error.problems) from None
    return path
