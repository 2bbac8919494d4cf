"""`diagnose cases`: the cases of the shop, listed and searched."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from diagnose.cli.settings import global_options, settings

if TYPE_CHECKING:
    from diagnose.book.model import Book


@click.command()
@click.argument("words", nargs=-1)
@click.option("--symptom", "symptoms", multiple=True, metavar="WORDS", help="Repeatable: any.")
@click.option("--cause", "causes", multiple=True, metavar="CAUSE", help="Repeatable: any.")
@click.option("--machine", default="", help="Id of a machine card.")
@click.option("--wheel", default="", help="Id of a wheel card.")
@click.option("--since", default="", metavar="DAY", help="Closed on that day or later.")
@click.option("--until", default="", metavar="DAY", help="Closed on that day or before.")
@click.option("--open", "only_open", is_flag=True, help="Open cases only.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON.")
@global_options
@click.pass_context
def cases(
    context: click.Context,
    words: tuple[str, ...],
    symptoms: tuple[str, ...],
    causes: tuple[str, ...],
    machine: str,
    wheel: str,
    since: str,
    until: str,
    only_open: bool,
    as_json: bool,
) -> None:
    """List the cases of your shop, and search them.

    WORDS are looked for in title, part, notes, causes and complaint; all must be there. A day is
    2026-03-14, or only 2026-03 or 2026.

    \b
    Example:
      diagnose cases
      diagnose cases --symptom chatter --machine north-grinder --since 2026-01
    """
    import json

    from diagnose.cli.console import say, tell
    from diagnose.cli.room import open_room
    from diagnose.shop.closed import cases_of
    from diagnose.shop.search import Wanted, found
    from diagnose.view.shop import cases_json, cases_text

    room = open_room(settings(context))
    wanted = Wanted(
        tuple(_symptom(room.book, s) for s in symptoms),
        tuple(_cause(room.book, c) for c in causes),
        machine,
        wheel,
        _day(since, "01-01"),
        _day(until, "12-31"),
        words,
    )
    kept = cases_of(room.folder, room.book)
    room.left_out(kept.problems)
    dated = only_open or not (since or until)
    listed = found((*(kept.open if dated else ()), *(() if only_open else kept.closed)), wanted,
                   room.book)  # fmt: skip
    if as_json:
        tell(json.dumps(cases_json(listed, room.book), indent=2))
    elif listed:
        tell(cases_text(listed, room.book))
    else:
        say("No case fits." if kept.open or kept.closed else "There are no cases yet: diagnose ask")


def _symptom(book: Book, words: str) -> str:
    from diagnose.book.complaints import symptoms_meant
    from diagnose.book.near import listed, nearest
    from diagnose.cli.source import fault

    meant = symptoms_meant(words, book)
    if len(meant) == 1:
        return meant[0]
    near = nearest("-".join(words.lower().split()), book.symptoms)
    mend = f"write which one: {listed(meant)}" if meant else ""
    raise fault(f"'{words}' is not one complaint", mend or listed(book.symptoms, 40), near)


def _cause(book: Book, words: str) -> str:
    from diagnose.book.near import listed, nearest
    from diagnose.cli.source import fault

    known = {**{c.name.lower(): c.id for c in book.causes.values()}, **{c: c for c in book.causes}}
    if book.renamed.get(words, words).lower() in known:
        return known[book.renamed.get(words, words).lower()]
    near = nearest(words.lower(), known)
    raise fault(f"there is no cause '{words}'", "" if near else listed(book.causes, 60), near)


def _day(text: str, rest: str) -> str:
    """A whole day from 2026, 2026-03 or 2026-03-14; the last of a month may be its 31st."""
    from diagnose.book.day import MEND, day_of
    from diagnose.cli.source import fault

    if not text:
        return ""
    month, end = rest.split("-")
    parts = text.split("-")
    whole = "-".join([*parts, *([month, "01"] if len(parts) == 1 else ["01"] * (3 - len(parts)))])
    if day_of(whole) is None:
        raise fault(f"'{text}' is no day", MEND)
    return whole if len(parts) == 3 else f"{whole[:7]}-{end}"
