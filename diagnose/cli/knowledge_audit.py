"""`diagnose knowledge audit` and `compare`: where the knowledge is thin, what an edit moves."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from diagnose.cli.console import say, tell
from diagnose.cli.knowledge_files import FOLDER, load
from diagnose.cli.settings import global_options, settings

if TYPE_CHECKING:
    from diagnose.book.model import Book
    from diagnose.case.entries import Case

JSON = click.option("--json", "as_json", is_flag=True, help="Print JSON.")


@click.command()
@FOLDER
@JSON
@click.option("--page", type=click.Path(path_type=Path), help="Also write it as a page: FILE.html.")
@global_options
@click.pass_context
def audit(context: click.Context, folder: Path | None, as_json: bool, page: Path | None) -> None:
    """Say where the knowledge is thin; takes about a minute.

    Causes that no check tells apart, checks and causes that change nothing, thin spots, sources,
    and the closed cases of your shop against the written rates.

    \b
    Example:
      diagnose knowledge audit
      diagnose knowledge audit --page audit.html
    """
    import json

    from diagnose.audit.audit_text import as_data, audit_text
    from diagnose.audit.overview import audit as audited

    book = load(context, folder)
    view = audited(book, _closed(context, book))
    tell(json.dumps(as_data(view), indent=2) if as_json else audit_text(view))
    if page is not None:
        from diagnose.report.audit_page import write_audit

        say(f"The page: {write_audit(view, page).as_posix()}")


@click.command()
@click.argument("old", type=click.Path(path_type=Path))
@click.argument("new", type=click.Path(path_type=Path))
@click.option("--case", "cases", multiple=True, help="A case file to rank as well; repeatable.")
@click.option("--all", "all_rows", is_flag=True, help="Print long lists whole.")
@JSON
@global_options
@click.pass_context
def compare(
    context: click.Context,
    old: Path,
    new: Path,
    cases: tuple[str, ...],
    all_rows: bool,
    as_json: bool,
) -> None:
    """Say what two knowledge folders say otherwise, and what that moves.

    First every entry and field that differs, with file and line; then how every example and
    closed case moves. OLD and NEW are folders, before an edit and after it. The closed cases
    are those of your shop.

    \b
    Example:
      diagnose knowledge compare knowledge-before knowledge
    """
    import json

    from diagnose.audit.audit_text import as_data
    from diagnose.audit.comparing import compare as compared
    from diagnose.audit.comparison_text import comparison_text
    from diagnose.audit.otherwise import said_otherwise
    from diagnose.case.files import load_case

    before, after = load(context, old), load(context, new)
    files = [load_case(Path(name), before) for name in cases]
    said = said_otherwise(old, new)
    view = compared(before, after, files, _closed(context, before), said)
    tell(json.dumps(as_data(view), indent=2) if as_json else comparison_text(view, all_rows))


def _closed(context: click.Context, book: Book) -> list[Case]:
    """The closed cases of the shop; those that cannot be read are named and left out."""
    from diagnose.shop.closed import closed_cases

    kept, problems = closed_cases(settings(context).shop, book)
    for problem in problems:
        say(f"Left out: {problem.render()}")
    return [k.case for k in kept]
