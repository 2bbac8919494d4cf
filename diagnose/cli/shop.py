"""`diagnose shop`: your shop folder, its machines and wheels."""

from __future__ import annotations

import os
from collections.abc import Callable
from typing import Any, TypeVar

import click

from diagnose.cli.settings import global_options, settings

F = TypeVar("F", bound=Callable[..., Any])
FACT = click.option(
    "--fact", "-f", "facts", multiple=True, metavar="CHECK=VALUE", help="What is so; repeatable."
)
NAME = click.option("--name", default="", help="What you call it.")
NOTE = click.option("--note", default="", help="A remark.")


def _worded(group: str) -> Callable[[F], F]:
    """An option for each field of a card that is said in words."""
    from diagnose.shop import fields

    words: dict[str, str] = getattr(fields, group)

    def add(command: F) -> F:
        for name, told in reversed(words.items()):
            command = click.option(f"--{name.replace('_', '-')}", default="", help=f"{told}.")(
                command
            )
        return command

    return add


@click.group(invoke_without_command=True)
@global_options
@click.pass_context
def shop(context: click.Context) -> None:
    """Show your shop folder, or add a machine or a wheel.

    \b
    Example:
      diagnose shop new "Two grinders by the back door"
      diagnose shop machine
      diagnose shop
    """
    if context.invoked_subcommand is not None:
        return
    from diagnose.cli.console import tell
    from diagnose.cli.room import open_room
    from diagnose.shop.closed import cases_of
    from diagnose.view.shop import shop_text

    room = open_room(settings(context))
    if room.shop.folder is None or not room.shop.folder.is_dir():
        tell(f"There is no shop folder {room.folder.as_posix()} yet: diagnose shop new NAME")
        return
    cases = cases_of(room.folder, room.book)
    room.left_out(cases.problems)
    tell(shop_text(room.shop, cases, room.book))


@shop.command()
@click.argument("name", default="")
@click.option("--tool", "tools", multiple=True, help="A tool at hand; repeatable.")
@click.option("--instrument", "instruments", multiple=True, help="An instrument; repeatable.")
@global_options
@click.pass_context
def new(
    context: click.Context, name: str, tools: tuple[str, ...], instruments: tuple[str, ...]
) -> None:
    """Begin a shop folder (--shop DIR says where).

    Without --tool and --instrument every check is offered, whatever it takes.

    \b
    Example:
      diagnose --shop my-shop shop new "Two grinders by the back door"
    """
    from diagnose.cli.console import say, tell
    from diagnose.shop.card_text import new_shop

    folder = settings(context).shop
    tell(new_shop(folder, name or "my shop", tools, instruments).as_posix())
    from diagnose.cli.schemas import put_schemas

    put_schemas(folder / "knowledge" / "schema")
    say("Next: diagnose shop machine, then diagnose shop wheel; each asks a few questions.")
    place = folder.resolve().as_posix()
    command = (
        f'setx DIAGNOSE_SHOP "{place}"' if os.name == "nt" else f'export DIAGNOSE_SHOP="{place}"'
    )
    say(f"So that you need not type --shop: {command}")


@shop.command()
@click.argument("id_", metavar="[ID]", default="")
@NAME
@_worded("MACHINE_WORDS")
@FACT
@NOTE
@global_options
@click.pass_context
def machine(context: click.Context, /, id_: str, facts: tuple[str, ...], **words: str) -> None:
    """Add a machine, or change its card.

    Asks a few questions at a terminal; with options it asks nothing.

    \b
    Example:
      diagnose shop machine
      diagnose shop machine north-grinder --name "by the north wall" -f drive=belt
    """
    from diagnose.cli.cards import make_card

    make_card(settings(context), "machine", id_, facts, words)


@shop.command()
@click.argument("id_", metavar="[ID]", default="")
@NAME
@_worded("WHEEL_WORDS")
@FACT
@NOTE
@global_options
@click.pass_context
def wheel(context: click.Context, /, id_: str, facts: tuple[str, ...], **words: str) -> None:
    """Add a wheel of the shelf, or change its card.

    Asks a few questions at a terminal; with options it asks nothing.

    \b
    Example:
      diagnose shop wheel
      diagnose shop wheel white-46-h --mounted 2026-03-02 --last-job "punch plates"
    """
    from diagnose.cli.cards import make_card

    make_card(settings(context), "wheel", id_, facts, words)


@shop.command()
@click.argument("machine_id", metavar="MACHINE")
@click.option("--wheel", default="", help="The wheel it grinds well with.")
@click.option("--date", default="", help="The day, 2026-03-14; today when left out.")
@FACT
@click.option(
    "--reading",
    "-r",
    "readings",
    multiple=True,
    metavar="NAME=VALUE",
    help="Another reading: block-finish=0.3um, idle-shake=0.4mm/s; repeatable.",
)
@NOTE
@global_options
@click.pass_context
def good(context: click.Context, /, machine_id: str, **told: Any) -> None:
    """Write down how a machine is while it grinds well.

    What differs from it later is shown with every case on that machine.

    \b
    Example:
      diagnose shop good north-grinder -f dress-seconds=8s -r block-finish=0.3um
    """
    from diagnose.cli.cards import make_healthy

    make_healthy(settings(context), machine_id, **told)
