"""`diagnose explain`: what the book says of one thing."""

from __future__ import annotations

from pathlib import Path

import click

from diagnose.cli.settings import global_options, settings


@click.command()
@click.argument("name", nargs=-1, required=True)
@click.option("--json", "as_json", is_flag=True, help="Print JSON.")
@click.option(
    "--page", type=click.Path(path_type=Path), help="Guided card: write it as a page to print."
)
@global_options
@click.pass_context
def explain(
    context: click.Context, name: tuple[str, ...], as_json: bool, page: Path | None
) -> None:
    """Explain a symptom, cause, check, stop, guided card or word.

    NAME is an id, a name, or what people call it.

    \b
    Example:
      diagnose explain chatter
      diagnose explain ring test
      diagnose explain mount-a-wheel --page mount-a-wheel.html
      diagnose explain lint:near-names
    """
    import dataclasses
    import json

    from diagnose.audit.lint_pages import is_lint, lint_pages, lint_text
    from diagnose.book.problems import BookError, Problem
    from diagnose.cli.console import tell
    from diagnose.cli.room import open_room
    from diagnose.view.explanation import explain as explained
    from diagnose.view.explanation import explanation_text, look_up, near_names

    words = " ".join(name)
    if is_lint(words):
        pages = lint_pages(words)
        body = [{**dataclasses.asdict(p), "sections": dict(p.sections)} for p in pages]
        found_json = json.dumps({"schema": 1, "found": body}, indent=2)
        tell(found_json if as_json else "\n\n".join(lint_text(p) for p in pages))
        return
    book = open_room(settings(context)).book
    found = look_up(book, words)
    if not found:
        near = near_names(book, words)
        mend = f"near it: {', '.join(near)}" if near else "diagnose ask shows the complaints"
        what = f"the book has nothing called '{words}'"
        raise BookError([Problem("explain", 0, 0, what, mend)])
    told = [explained(book, kind, key) for kind, key in found]
    if page is not None:
        from diagnose.report.card_page import write_card

        cards = [t for t in told if t.kind == "card"]
        if not cards:
            what = f"'{words}' is no guided card"
            mend = f"the cards are: {', '.join(sorted(book.cards))}"
            raise BookError([Problem("explain", 0, 0, what, mend)])
        tell(write_card(cards[0], page, book.version).as_posix())
        return
    if as_json:
        body = [{**dataclasses.asdict(t), "sections": dict(t.sections)} for t in told]
        tell(json.dumps({"schema": 1, "found": body}, indent=2))
    else:
        tell("\n\n".join(explanation_text(t) for t in told))
