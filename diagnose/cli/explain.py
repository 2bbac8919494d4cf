"""`diagnose explain`: what the book says of one thing, and the sheets of the whole book."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from diagnose.cli.settings import global_options, settings

if TYPE_CHECKING:
    from diagnose.book.model import Book
    from diagnose.view.explanation import Explanation


@click.command()
@click.argument("name", nargs=-1)
@click.option("--experiments", is_flag=True, help="List the experiments for a lesson.")
@click.option("--map", "map_", is_flag=True, help="Write all cause and effect as one page.")
@click.option("--wall-chart", is_flag=True, help="Write the looks of each complaint, in order.")
@click.option("--out", type=click.Path(path_type=Path), help="Map or chart: the file to write.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON.")
@click.option(
    "--page", type=click.Path(path_type=Path), help="Guided card: write it as a page to print."
)
@global_options
@click.pass_context
def explain(
    context: click.Context,
    name: tuple[str, ...],
    experiments: bool,
    map_: bool,
    wall_chart: bool,
    out: Path | None,
    as_json: bool,
    page: Path | None,
) -> None:
    """Explain a symptom, cause, check, stop, guided card or word.

    NAME is an id, a name, or what people call it: a mechanism, a caution, a calculation or a word
    of the trade as well.

    \b
    Example:
      diagnose explain chatter
      diagnose explain ring test
      diagnose explain mount-a-wheel --page mount-a-wheel.html
      diagnose explain --experiments
      diagnose explain --map --out map.html
      diagnose explain --wall-chart --out chart.html
      diagnose explain lint:near-names
    """
    from diagnose.audit.lint_pages import is_lint
    from diagnose.cli.room import open_room

    words = " ".join(name)
    asked = [bool(words), experiments, map_, wall_chart]
    if sum(asked) != 1:
        raise click.UsageError(
            "give one name to explain, or one of --experiments, --map, --wall-chart"
        )
    if out is not None and not (map_ or wall_chart):
        raise click.UsageError("--out goes with --map or --wall-chart; a card has --page")
    if is_lint(words):
        _lints(words, as_json)
        return
    book = open_room(settings(context)).book
    if map_ or wall_chart:
        _sheets(book, wall_chart, out)
    elif experiments:
        _experiments(book, as_json)
    else:
        _explain(book, words, as_json, page)


def _lints(words: str, as_json: bool) -> None:
    from diagnose.audit.lint_pages import lint_pages, lint_text
    from diagnose.cli.console import tell

    pages = lint_pages(words)
    tell(_as_json(pages) if as_json else "\n\n".join(lint_text(p) for p in pages))


def _explain(book: Book, words: str, as_json: bool, page: Path | None) -> None:
    from diagnose.book.problems import BookError, Problem
    from diagnose.cli.console import tell
    from diagnose.view.explanation import explain as explained
    from diagnose.view.explanation import explanation_text, look_up, near_names

    found = look_up(book, words)
    if not found:
        near = near_names(book, words)
        mend = f"near it: {', '.join(near)}" if near else "diagnose ask shows the complaints"
        what = f"the book has nothing called '{words}'"
        raise BookError([Problem("explain", 0, 0, what, mend)])
    told = [explained(book, kind, key) for kind, key in found]
    if page is not None:
        _page(book, words, told, page)
    elif as_json:
        tell(_as_json(told))
    else:
        tell("\n\n".join(explanation_text(t) for t in told))


def _page(book: Book, words: str, told: list[Explanation], page: Path) -> None:
    from diagnose.book.problems import BookError, Problem
    from diagnose.cli.console import tell
    from diagnose.report.card_page import write_card

    cards = [t for t in told if t.kind == "card"]
    if not cards:
        what = f"'{words}' is no guided card"
        mend = f"the cards are: {', '.join(sorted(book.cards))}"
        raise BookError([Problem("explain", 0, 0, what, mend)])
    tell(write_card(cards[0], page, book.version).as_posix())


def _as_json(told: list[Explanation]) -> str:
    import dataclasses
    import json

    body = [{**dataclasses.asdict(t), "sections": dict(t.sections)} for t in told]
    return json.dumps({"schema": 1, "found": body}, indent=2)


def _experiments(book: Book, as_json: bool) -> None:
    import dataclasses
    import json

    from diagnose.cli.console import tell
    from diagnose.view.experiments import experiments, experiments_text

    found = experiments(book)
    body = {"schema": 1, "experiments": [dataclasses.asdict(e) for e in found]}
    tell(json.dumps(body, indent=2) if as_json else experiments_text(found))


def _sheets(book: Book, wall_chart: bool, out: Path | None) -> None:
    from diagnose.book.locate import reports_folder
    from diagnose.cli.console import tell

    if wall_chart:
        from diagnose.report.chart_page import write_chart
        from diagnose.view.wall_chart import chart_of

        path = write_chart(chart_of(book), out or reports_folder() / "wall-chart.html")
    else:
        from diagnose.report.map_page import write_map
        from diagnose.view.cause_map import map_of

        path = write_map(map_of(book), out or reports_folder() / "cause-map.html")
    tell(path.as_posix())
