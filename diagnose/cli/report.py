"""`diagnose report`: the page of a case."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from diagnose.cli.settings import global_options, settings
from diagnose.cli.source import case_options

if TYPE_CHECKING:
    from diagnose.view.result import ResultView


@click.command()
@case_options
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    help="The file to write; reports/ and the name of the case when left out.",
)
@global_options
@click.pass_context
def report(
    context: click.Context,
    case: str | None,
    complaints: tuple[str, ...],
    answers: tuple[str, ...],
    machine: str | None,
    wheel: str | None,
    out: Path | None,
) -> None:
    """Write the page of a case, to hang beside the machine.

    One HTML file that needs no network. Ends with 3 when a stop or hold stands.

    \b
    Example:
      diagnose report case.yaml --out page.html
    """
    from diagnose.cli.console import patience, tell
    from diagnose.cli.exits import DONE, STOP, leave
    from diagnose.cli.room import open_room
    from diagnose.cli.source import case_from

    with patience():
        room = open_room(settings(context))
        view = room.view(case_from(room.book, case, complaints, answers, machine, wheel))
        path = put_page(view, out or default_page(case))
    tell(path.as_posix())
    leave(STOP if view.stops else DONE)


def default_page(case: str | None) -> Path:
    """Where the page of a case goes when nothing is said."""
    from diagnose.book.locate import reports_folder

    stem = Path(case).stem if case not in (None, "-") else "case"
    return reports_folder() / f"{stem}.html"


def put_page(view: ResultView, path: Path) -> Path:
    """Write the page of a view and give its path. Raises BookError when it cannot be written."""
    from diagnose.report.page import write_page

    write_page(view, path)
    return path
