"""`diagnose close`: how a case ended."""

from __future__ import annotations

from pathlib import Path

import click

from diagnose.cli.settings import global_options, settings


@click.command()
@click.argument("case", default="")
@click.option("--cured-by", "causes", multiple=True, metavar="CAUSE", help="Repeatable.")
@click.option("--something-new", default="", metavar="WORDS", help="A cause that is not listed.")
@click.option("--not-cured", is_flag=True, help="Nothing cured it.")
@click.option("--done", default="", help="What was done.")
@click.option("--minutes", type=click.FloatRange(min=0), help="The time spent.")
@click.option("--proved", default="", help="How it was proved.")
@click.option("--note", default="", help="A remark.")
@click.option(
    "--picture", "pictures", multiple=True, type=click.Path(path_type=Path), help="Repeatable."
)
@click.option("--date", default="", help="The day, 2026-03-14; today when left out.")
@global_options
@click.pass_context
def close(
    context: click.Context,
    case: str,
    causes: tuple[str, ...],
    something_new: str,
    not_cured: bool,
    done: str,
    minutes: float | None,
    proved: str,
    note: str,
    pictures: tuple[Path, ...],
    date: str,
) -> None:
    """Close a case: what was done, what cured it, how it was proved.

    CASE is a case file, or the name of one of your shop. At a terminal it asks; with options it
    asks nothing. The closed case goes to cases/closed of your shop folder.

    \b
    Example:
      diagnose close
      diagnose close 2026-03-14-taper --cured-by chuck-not-parallel --minutes 90
    """
    from diagnose.case.entries import Closed
    from diagnose.cli.asking import ask_through
    from diagnose.cli.closing import ask_closing, case_to_close, checked, put_closed
    from diagnose.cli.console import at_a_terminal
    from diagnose.cli.exits import leave
    from diagnose.cli.room import open_room

    room = open_room(settings(context))
    told = causes or something_new or not_cured
    if not told and at_a_terminal():
        leave(ask_through(lambda asker: ask_closing(asker, room, case)))
    if not case or not told:
        raise click.UsageError(
            "name the case, and say what cured it: --cured-by CAUSE, --something-new WORDS "
            "or --not-cured"
        )
    new, what, proof, remark = (
        " ".join(text.split()) for text in (something_new, done, proved, note)
    )
    seen = tuple(p.as_posix() for p in pictures)
    closed = Closed(date, causes, new, what, minutes, proof, remark, seen)
    found = case_to_close(room, case)
    put_closed(room, found, checked(room, closed, not_cured))
