"""The knowledge folders that a command looks at, read; faults are its result."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import click

from diagnose.cli.console import say, tell
from diagnose.cli.exits import WRONG, leave
from diagnose.cli.settings import settings

if TYPE_CHECKING:
    from collections.abc import Iterable

    from diagnose.book.model import Book
    from diagnose.book.problems import Problem

FOLDER = click.option(
    "--folder",
    type=click.Path(path_type=Path),
    help="Knowledge folder; the shipped one and that of your shop when left out.",
)


def folders(context: click.Context, folder: Path | None) -> list[Path]:
    """The folder named; else the shipped knowledge, that of packs, and the shop's own."""
    from diagnose.book.locate import knowledge_folder
    from diagnose.shop.folders import own_knowledge

    own = [] if folder is not None else own_knowledge(settings(context).shop)
    return [folder or knowledge_folder(), *own]


def load(context: click.Context, folder: Path | None) -> Book:
    """The book of the folder, or of the usual ones; ends with the faults when there are any."""
    from diagnose.book.loader import load_book
    from diagnose.book.problems import BookError

    first, *extra = folders(context, folder)
    try:
        return load_book(first, extra)
    except BookError as error:
        refuse(error.problems)


def refuse(problems: Iterable[Problem]) -> NoReturn:
    """Print faults as the result of the test, each with its lint, and end."""
    from diagnose.audit.linting import named

    found = named(problems)
    tell("\n".join(alarm.render() for alarm in found))
    say("1 fault found." if len(found) == 1 else f"{len(found)} faults found.")
    leave(WRONG)
