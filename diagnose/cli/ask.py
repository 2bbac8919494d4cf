"""`diagnose ask`: the interview at a terminal."""

from __future__ import annotations

from pathlib import Path

import click

from diagnose.cli.settings import global_options, settings


@click.command()
@click.option("--case", "file", type=click.Path(path_type=Path), help="File to keep the case in.")
@click.option("--title", default="", help="A name for the case: the job or the part.")
@click.option("--machine", default="", help="Id of a machine card of the shop.")
@click.option("--wheel", default="", help="Id of a wheel card of the shop.")
@click.option("--new", is_flag=True, help="Begin a new case; do not offer open ones.")
@click.option(
    "--from-review",
    "planned",
    type=click.Path(path_type=Path),
    help="A planned job that went wrong: what it says is not asked again.",
)
@click.option("--slip", metavar="LINE", help="A filled pocket slip, typed in: its code and boxes.")
@global_options
@click.pass_context
def ask(
    context: click.Context,
    file: Path | None,
    title: str,
    machine: str,
    wheel: str,
    new: bool,
    planned: Path | None,
    slip: str | None,
) -> None:
    """Ask about a bad part, one question at a time.

    The complaint first, then the question that tells most for its minutes. It is saved after
    every answer; run it again to go on. Ends with 3 when a stop or hold stands.

    \b
    Example:
      diagnose ask
      diagnose ask --case spacer.yaml --title "spacer plate"
      diagnose ask --from-review plate.yaml
      diagnose ask --slip "KQRTM 0 0 2 3 - 8 9.5 2"
    """
    from diagnose.cli.commands import HOW_TO_ANSWER
    from diagnose.cli.console import at_a_terminal, say
    from diagnose.cli.exits import USAGE, leave

    if slip is not None and not at_a_terminal():
        from diagnose.cli.slip_typed import rank_slip

        leave(rank_slip(settings(context), slip, machine=machine, wheel=wheel, title=title))
    if not at_a_terminal():
        say("diagnose ask needs a terminal. " + HOW_TO_ANSWER)
        leave(USAGE)
    from diagnose.cli.sitting import sit

    leave(
        sit(
            settings(context),
            file,
            new,
            title=title,
            machine=machine,
            wheel=wheel,
            planned=planned,
            slip=slip,
        )
    )
