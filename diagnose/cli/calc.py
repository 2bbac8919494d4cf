"""`diagnose calc`: any formula of the trade by name, with its source and its limits."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

import click

from diagnose.cli.console import say, tell
from diagnose.cli.exits import STOP, WRONG, leave
from diagnose.cli.settings import global_options, settings

if TYPE_CHECKING:
    from diagnose.physics.catalogue import Calculation, Worked


@click.command()
@click.argument("name", required=False)
@click.argument("values", nargs=-1, metavar="[KEY=VALUE]...")
@click.option("--list", "list_all", is_flag=True, help="Name every calculation.")
@click.option("--json", "as_json", is_flag=True, help="Print as JSON, numbers in SI.")
@global_options
@click.pass_context
def calc(
    context: click.Context,
    name: str | None,
    values: tuple[str, ...],
    list_all: bool,
    as_json: bool,
) -> None:
    """Work out one number of the trade.

    Write each input as key=value with its unit; +- adds a give-or-take, .. makes a range.

    \b
    Example:
      diagnose calc wheel-speed wheel_diameter=7in turning_speed=3450rpm
    """
    if list_all:
        _print_list(as_json)
        return
    if name is None:
        raise click.UsageError("name a calculation; diagnose calc --list names them all")
    try:
        text, stops = _worked_out(name, _pairs(values), as_json, settings(context).units)
    except ValueError as error:
        say(f"diagnose calc: {error}")
        leave(WRONG)
    tell(text)
    if stops:
        leave(STOP)


def _worked_out(name: str, written: dict[str, str], as_json: bool, units: str) -> tuple[str, bool]:
    """The answer as printed, and whether it raises a stop."""
    from diagnose.physics.catalogue import Calculation
    from diagnose.physics.evaluate import evaluate, evaluate_worked
    from diagnose.view import calc as view

    found = _find(name)
    if isinstance(found, Calculation):
        result = evaluate(found, written)
        text = view.as_json(found, result) if as_json else view.as_text(found, result, units)
        return text, result.stops
    worked = evaluate_worked(found, written)
    if as_json:
        return view.worked_as_json(found, worked), False
    return view.worked_as_text(found, worked, units), False


def _find(name: str) -> Calculation | Worked:
    from diagnose.physics.catalogue import calculations, near_names, worked_answers
    from diagnose.physics.evaluate import InputError

    known: dict[str, Calculation | Worked] = {}
    known.update({each.id: each for each in calculations()})
    known.update({each.id: each for each in worked_answers()})
    if name in known:
        return known[name]
    near = near_names(name, known)
    hint = f"did you mean {' or '.join(near)}?" if near else "diagnose calc --list names them all"
    raise InputError(f"there is no calculation '{name}'; {hint}")


def _pairs(values: Iterable[str]) -> dict[str, str]:
    """Key and text of each input; a piece without `=` belongs to the value before it."""
    from diagnose.physics.evaluate import InputError

    written: dict[str, str] = {}
    key = ""
    for piece in values:
        head, equals, tail = piece.partition("=")
        if equals:
            key = head.strip().replace("-", "_")
            if key in written:
                raise InputError(f"{key} is given twice")
            written[key] = tail
        elif key:
            written[key] += f" {piece}"
        else:
            raise InputError(f"'{piece}' is not key=value, like depth=0.01mm")
    return written


def _print_list(as_json: bool) -> None:
    from diagnose.view import calc as view

    tell(view.list_as_json() if as_json else view.list_as_text())
