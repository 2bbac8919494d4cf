"""`diagnose slip`: a sheet of boxes to take to the machine."""

from __future__ import annotations

from pathlib import Path

import click

from diagnose.cli.settings import global_options, settings


@click.command()
@click.argument("complaint", metavar="COMPLAINT")
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    help="The file to write; reports/ and the name of the complaint when left out.",
)
@global_options
@click.pass_context
def slip(context: click.Context, complaint: str, out: Path | None) -> None:
    """Print a pocket slip: the first questions of a complaint, to fill in.

    One HTML sheet of boxes. What was written in them is typed in later with ask --slip.

    \b
    Example:
      diagnose slip chatter --out slip.html
      diagnose ask --slip "KQRTM 0 0 2 3 - 8 9.5 2"
    """
    from diagnose.book.locate import reports_folder
    from diagnose.cli.console import tell
    from diagnose.cli.room import open_room
    from diagnose.cli.source import symptom_meant
    from diagnose.report.slip_page import write_slip
    from diagnose.view.slip import slip_view

    room = open_room(settings(context))
    symptom = symptom_meant(complaint, room.book)
    path = out or reports_folder() / f"slip-{symptom}.html"
    tell(write_slip(slip_view(room.book, symptom), path).as_posix())
