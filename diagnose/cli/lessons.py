"""`diagnose lessons`: what the closed cases of the shop teach, learned and undone."""

from __future__ import annotations

import click

from diagnose.cli.settings import global_options, settings


@click.group(invoke_without_command=True)
@click.option("--all", "every", is_flag=True, help="Small changes too, one by one.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON.")
@global_options
@click.pass_context
def lessons(context: click.Context, every: bool, as_json: bool) -> None:
    """Show what your closed cases changed, learn from them, undo it.

    Every adjusted number is shown: before, after, from how many cases, and for what.

    \b
    Example:
      diagnose lessons
      diagnose lessons learn
      diagnose lessons revert
    """
    if context.invoked_subcommand is None:
        _show(context, every, as_json)


@lessons.command()
@click.option("--all", "every", is_flag=True, help="Small changes too, one by one.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON.")
@global_options
@click.pass_context
def learn(context: click.Context, every: bool, as_json: bool) -> None:
    """Learn from all closed cases of your shop.

    What would rank earlier cases worse is refused, and said. The numbers are kept in a file of
    the shop folder, lessons/, and count from then on over those of the book.
    """
    import datetime

    from diagnose.cli.console import say
    from diagnose.cli.room import open_room
    from diagnose.lessons.files import put_lessons
    from diagnose.lessons.shop_cases import learn_from, taught_in

    room = open_room(settings(context))
    cases, problems = taught_in(room.folder, room.shop, room.book)
    room.left_out(problems)
    if not cases:
        say("No cured case is closed yet: diagnose close")
        return
    many = f"{len(cases)} closed cases, and trying it on each"
    one = "1 closed case, and trying it on that one"
    say(f"Learning from {one if len(cases) == 1 else many} ...")
    path = put_lessons(room.folder, learn_from(room.book, cases, str(datetime.date.today())))
    say(f"{path.as_posix()} is written. To undo it: diagnose lessons revert")
    _show(context, every, as_json)


@lessons.command()
@click.option("--all", "whole", is_flag=True, help="Everything learned, not the last time only.")
@global_options
@click.pass_context
def revert(context: click.Context, whole: bool) -> None:
    """Undo what was learned the last time, or all of it. The cases stay."""
    from diagnose.cli.console import say, tell
    from diagnose.lessons.files import files
    from diagnose.lessons.files import revert as take_away

    shop = settings(context).shop
    gone = take_away(shop, whole=whole)
    for path in gone:
        tell(path.as_posix())
    if not gone:
        say("There is nothing to undo: nothing is learned yet.")
        return
    left = files(shop)
    say("Taken away. " + (f"{left[-1].as_posix()} counts again." if left else
                          "The book's own numbers count again."))  # fmt: skip


def _show(context: click.Context, every: bool, as_json: bool) -> None:
    import json

    from diagnose.cli.console import tell
    from diagnose.cli.room import open_room
    from diagnose.lessons.showing import lessons_json, lessons_text, view_of
    from diagnose.shop.closed import closed_cases

    room = open_room(settings(context))
    closed, _ = closed_cases(room.folder, room.book)
    cured = sum(1 for k in closed if k.case.closed is not None and k.case.closed.cured)
    view = view_of(room.lessons, room.book, cured)
    tell(json.dumps(lessons_json(view), indent=2) if as_json else lessons_text(view, every=every))
