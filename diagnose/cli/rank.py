"""`diagnose rank`: the ranked causes of a case, as text or JSON."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from diagnose.cli.settings import global_options, settings
from diagnose.cli.source import case_options

if TYPE_CHECKING:
    from diagnose.case.entries import Case
    from diagnose.cli.room import Room


@click.command()
@case_options
@click.option("--json", "as_json", is_flag=True, help="Print JSON (schema 1).")
@click.option("--how", "findings", multiple=True, help="How a finding came about; repeatable.")
@click.option("--why-not", "causes", multiple=True, help="Why a cause is not higher; repeatable.")
@click.option(
    "--what-if",
    "others",
    multiple=True,
    metavar="CHECK=VALUE",
    help="What another answer would change; repeatable.",
)
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
    findings: tuple[str, ...],
    causes: tuple[str, ...],
    others: tuple[str, ...],
) -> None:
    """Rank the causes of a case already written down.

    CASE is a case file, or - for standard input. Ends with 3 when a stop or hold stands.

    \b
    Example:
      diagnose rank case.yaml
      diagnose rank --complaint chatter --answer bars-even=yes --json
    """
    import json

    from diagnose.cli.console import patience, tell
    from diagnose.cli.exits import DONE, STOP, leave
    from diagnose.cli.room import open_room
    from diagnose.cli.source import case_from
    from diagnose.view.as_json import result_json
    from diagnose.view.text import result_text, stop_text

    with patience():
        room = open_room(settings(context))
        asked = case_from(room.book, case, complaints, answers, machine, wheel)
        view = room.view(asked, full=not (findings or causes or others))
        if findings or causes or others:
            stops = [stop_text(s) + "\n" for s in view.stops]
            told = "\n".join([*stops, _whys(room, asked, findings, causes, others)])
        else:
            told = json.dumps(result_json(view), indent=2) if as_json else result_text(view)
    tell(told)
    leave(STOP if view.stops else DONE)


def _whys(
    room: Room,
    case: Case,
    findings: tuple[str, ...],
    causes: tuple[str, ...],
    others: tuple[str, ...],
) -> str:
    from diagnose.book.near import listed, nearest
    from diagnose.cli.source import entry_typed, fault
    from diagnose.view.whys import NotKnown, how_text, what_if_text, why_not_text, with_answer

    reasoned = room.reasoned(case)
    try:
        parts = [how_text(reasoned, f) for f in findings]
        parts += [why_not_text(reasoned, c) for c in causes]
    except NotKnown as error:
        near = nearest((findings + causes)[0], error.known)
        raise fault(str(error), "" if near else f"known: {listed(error.known, 40)}", near) from None
    for text in others:
        entry = entry_typed(text, room.book)
        other = room.reasoned(with_answer(case, entry.name, entry.value))
        parts.append(what_if_text(reasoned, other, entry.name, entry.value))
    return "\n".join(parts)
