"""`diagnose review`: what will go wrong with a planned job, before the wheel touches it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from diagnose.cli.settings import global_options, settings
from diagnose.cli.source import planned_options

if TYPE_CHECKING:
    from diagnose.case.entries import Case
    from diagnose.cli.room import Room
    from diagnose.view.review import ReviewView


@click.command()
@planned_options
@click.option(
    "--against",
    type=click.Choice(["last-good"]),
    help="List every setting that differs from the last good job of this machine and metal.",
)
@click.option("--full", is_flag=True, help="Lists to tick, readings, answers and sources too.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON (schema 1).")
@click.option("--page", "--out", "page", type=click.Path(path_type=Path), help="Write the page.")
@global_options
@click.pass_context
def review(
    context: click.Context,
    case: str | None,
    answers: tuple[str, ...],
    machine: str | None,
    wheel: str | None,
    against: str | None,
    full: bool,
    as_json: bool,
    page: Path | None,
) -> None:
    """Look over a planned job before the cut: risks, wheel, dress, cut.

    CASE is a case file with planned: in place of a complaint, or - for standard input. Ends with
    3 when a stop or hold stands.

    \b
    Example:
      diagnose review plate.yaml
      diagnose review plate.yaml --against last-good --page plate.html
    """
    import json

    from diagnose.cli.console import say, tell
    from diagnose.cli.exits import DONE, STOP, leave
    from diagnose.cli.room import open_room
    from diagnose.cli.source import planned_from
    from diagnose.view.review_json import review_json
    from diagnose.view.review_text import review_text

    room = open_room(settings(context))
    planned = planned_from(room.book, case, answers, machine, wheel)
    view = reviewed(room, planned, against is not None)
    if page is not None:
        from diagnose.report.review_page import write_review

        say(f"The page: {write_review(view, page).as_posix()}")
    tell(json.dumps(review_json(view), indent=2) if as_json else review_text(view, full))
    leave(STOP if view.stops else DONE)


def reviewed(room: Room, case: Case, against: bool) -> ReviewView:
    """The view of a review. Raises BookError, belief.Impossible."""
    from diagnose.review.build import review_view
    from diagnose.review.review import review as look_over
    from diagnose.shop.closed import closed_cases

    closed = None
    if against:
        closed, problems = closed_cases(room.folder, room.book)
        room.left_out(problems)
    found = look_over(room.book, case, room.shop, room.units, closed)
    return review_view(room.book, found, units=room.units)
