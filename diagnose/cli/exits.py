"""Exit codes, and the one place that turns what went wrong into a message and a code."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from typing import NoReturn

import click

from diagnose.cli.console import ReaderGone, prepare, use_colour

DONE, WRONG, USAGE, STOP, INTERRUPTED = 0, 1, 2, 3, 130

MEANING = {
    DONE: "done",
    WRONG: "the input is wrong; nothing was changed",
    USAGE: "the command was not typed as it must be",
    STOP: "a safety stop or hold stands; the output is complete",
    INTERRUPTED: "interrupted; the case is saved",
}


def leave(code: int) -> NoReturn:
    """End the command with a code; the output is already written."""
    raise click.exceptions.Exit(code)


def run(command: click.Command, args: Sequence[str] | None = None) -> int:
    """Run a command and give its exit code; every fault ends in one clear message."""
    prepare()
    try:
        return _invoke(command, args)
    except ReaderGone:
        # what is still in the buffer must not fail once more while Python ends
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return DONE


def _invoke(command: click.Command, args: Sequence[str] | None) -> int:
    try:
        result = command.main(args, prog_name="diagnose", standalone_mode=False, color=use_colour())
    except ReaderGone:
        raise
    except click.Abort:
        return INTERRUPTED
    except click.ClickException as error:
        error.show()
        return error.exit_code
    except Exception as error:
        if not _is_bad_input(error):
            return _our_fault(error)
        click.echo(f"diagnose: {error}", err=True)
        return WRONG
    return result if isinstance(result, int) else DONE


def _is_bad_input(error: Exception) -> bool:
    from diagnose.book.problems import BookError

    if isinstance(error, BookError):
        return True
    # reached only once the reasoning ran, so its import costs nothing here
    belief = sys.modules.get("diagnose.reasoning.belief")
    return belief is not None and isinstance(error, belief.Impossible)


def _our_fault(error: Exception) -> int:
    from diagnose.cli.faults import keep_fault

    where = keep_fault(error)
    click.echo(
        f"diagnose: a fault of this program, not of your input: {error}\n"
        f"  what happened is kept in {where}; please pass that file on",
        err=True,
    )
    return WRONG
