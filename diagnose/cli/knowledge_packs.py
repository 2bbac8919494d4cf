"""`diagnose knowledge pack` and `take`: lessons from shop to shop."""

from __future__ import annotations

from pathlib import Path

import click

from diagnose.cli.settings import global_options, settings


@click.command()
@click.argument("ids", nargs=-1, metavar="[ID]...")
@click.option("--name", default="", help="What the pack is about.")
@click.option("--out", type=click.Path(path_type=Path), help="The file to write: NAME.zip.")
@click.option("--by", default="", help="Who made it, if that is to be known.")
@click.option("--note", default="", help="A remark for whoever takes it.")
@click.option("--with-cases", is_flag=True, help="Let the closed cases go along, as they are.")
@global_options
@click.pass_context
def pack(
    context: click.Context,
    ids: tuple[str, ...],
    name: str,
    out: Path | None,
    by: str,
    note: str,
    with_cases: bool,
) -> None:
    """Make a pack of your own knowledge for another shop.

    All of it, or only the entries named and what they speak of. Cases, machines and wheels stay
    at home unless asked for; read the pack before you give it away.

    \b
    Example:
      diagnose knowledge pack --name "belt lessons"
      diagnose knowledge pack belt-frays --name "belt lessons" --out belts.zip
    """
    import datetime

    from diagnose.book.slug import slug
    from diagnose.cli.console import say, tell
    from diagnose.cli.room import open_room
    from diagnose.shop.packs import Card, make_pack

    if not slug(name):
        raise click.UsageError('say what the pack is about: --name "belt lessons"')
    room = open_room(settings(context))
    card = Card(slug(name), name, datetime.date.today().isoformat(), by, note)
    target = out or Path(f"{card.id}.zip")
    for file in make_pack(room.folder, room.book, card, target, ids, with_cases=with_cases):
        say(f"  {file}")
    tell(target.as_posix())
    if not with_cases:
        say("No case, machine or wheel of yours is in it. The texts of your files are: read them.")


@click.command()
@click.argument("path", metavar="PACK", type=click.Path(path_type=Path))
@global_options
@click.pass_context
def take(context: click.Context, path: Path) -> None:
    """Take in a pack of another shop: a folder or one .zip file.

    It is looked through first; when anything is wrong nothing is changed. Its causes are shown
    as drafts until a case closed in your shop names them.

    \b
    Example:
      diagnose knowledge take belt-lessons.zip
    """
    from diagnose.book.locate import knowledge_folder
    from diagnose.cli.console import say, tell
    from diagnose.shop.packs import take_pack

    taken = take_pack(knowledge_folder(), settings(context).shop, path)
    tell(taken.folder.as_posix())
    for name in taken.ids:
        say(f"  {name}")
    say(f"Taken: {taken.card.name}; entries: {len(taken.ids)}, cases: {taken.cases}.")
    say("Its causes are drafts until a case closed here names them. To be rid of it, delete the")
    say("folder above.")
