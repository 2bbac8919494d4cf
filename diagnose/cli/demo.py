"""`diagnose demo`: the case of an invented shop, ranked, with its page."""

from __future__ import annotations

import click

from diagnose.cli.settings import global_options, settings

DEMO = "spacer-plate-ripples.yaml"


@click.command()
@global_options
@click.pass_context
def demo(context: click.Context) -> None:
    """Work through the case of an invented shop.

    Prints what was found and writes the page to reports/.

    \b
    Example:
      diagnose demo
    """
    from dataclasses import replace

    from diagnose.book.locate import shared_folder
    from diagnose.cli.console import say, tell
    from diagnose.cli.report import default_page, put_page
    from diagnose.cli.room import open_room
    from diagnose.cli.source import load
    from diagnose.view.text import result_text

    shared = shared_folder()
    room = open_room(replace(settings(context), shop=shared))
    case = load(str(shared / "cases" / DEMO), room.book)
    view = room.view(replace(case, path=f"cases/{DEMO}"))
    tell(result_text(view))
    path = put_page(view, default_page(DEMO))
    say(f"The page of this case: {path.as_posix()}")
    say(f"Now yours: {_called()} ask")


def _called() -> str:
    """How the tool is called here: by its name, or by its path when the shell does not find it."""
    import shutil
    import sys
    from pathlib import Path

    path = Path(sys.argv[0])
    if path.stem != "diagnose" or not path.is_file() or shutil.which("diagnose"):
        return "diagnose"
    return sys.argv[0]
