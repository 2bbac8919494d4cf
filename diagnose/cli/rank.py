"""`diagnose rank`: the ranked causes of a case, as text or JSON."""

from __future__ import annotations

import click

from diagnose.cli.settings import global_options, settings
from diagnose.cli.source import case_options


@click.command()
@case_options
@click.option("--json", "as_json", is_flag=True, help="Print JSON (schema 1).")
@global_options
@click.pass_context
def rank(
    context: click.Context,
    case: str | None,
    complaints: tuple[str, ...],
    answers: tuple[str, ...],
    machine: str | None,
    wheel: str | None,
    as_json: bool,
) -> None:
    """Rank the causes of a case already written down.

    CASE is a case file, or - for standard input. Ends with 3 when a stop or hold stands.

    \b
    Example:
      diagnose rank case.yaml
      diagnose rank --complaint chatter --answer bars-even=yes --json
    """
    import json

    from diagnose.cli.console import tell
    from diagnose.cli.exits import DONE, STOP, leave
    from diagnose.cli.room import open_room
    from diagnose.cli.source import case_from
    from diagnose.view.as_json import result_json
    from diagnose.view.text import result_text

    room = open_room(settings(context))
    view = room.view(case_from(room.book, case, complaints, answers, machine, wheel))
    tell(json.dumps(result_json(view), indent=2) if as_json else result_text(view))
    leave(STOP if view.stops else DONE)
