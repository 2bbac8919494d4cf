"""`diagnose explain`: what the book says of one thing."""

from __future__ import annotations

import click

from diagnose.cli.settings import global_options, settings


@click.command()
@click.argument("name", nargs=-1, required=True)
@click.option("--json", "as_json", is_flag=True, help="Print JSON.")
@global_options
@click.pass_context
def explain(context: click.Context, name: tuple[str, ...], as_json: bool) -> None:
    """Explain a symptom, cause, check, stop or word.

    NAME is an id, a name, or what people call it.

    \b
    Example:
      diagnose explain chatter
      diagnose explain ring test
    """
    import dataclasses
    import json

    from diagnose.book.problems import BookError, Problem
    from diagnose.cli.console import tell
    from diagnose.cli.room import open_room
    from diagnose.view.explanation import explain as explained
    from diagnose.view.explanation import explanation_text, look_up, near_names

    book, words = open_room(settings(context)).book, " ".join(name)
    found = look_up(book, words)
    if not found:
        near = near_names(book, words)
        mend = f"near it: {', '.join(near)}" if near else "diagnose ask shows the complaints"
        what = f"the book has nothing called '{words}'"
        raise BookError([Problem("explain", 0, 0, what, mend)])
    told = [explained(book, kind, key) for kind, key in found]
    if as_json:
        body = [{**dataclasses.asdict(t), "sections": dict(t.sections)} for t in told]
        tell(json.dumps({"schema": 1, "found": body}, indent=2))
    else:
        tell("\n\n".join(explanation_text(t) for t in told))
