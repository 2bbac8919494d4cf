"""The commands by name; a command's module is imported only when that command is used."""

from __future__ import annotations

from importlib import import_module

import click

from diagnose import __version__
from diagnose.cli.exits import MEANING
from diagnose.cli.settings import first_options

# name -> the first line of its help. The module diagnose.cli.<name> holds a command of that name.
COMMANDS = {
    "ask": "Ask about a bad part, one question at a time.",
    "rank": "Rank the causes of a case already written down.",
    "review": "Look over a planned job before the cut: risks, wheel, dress, cut.",
    "report": "Write the page of a case, to hang beside the machine.",
    "slip": "Print a pocket slip: the first questions of a complaint, to fill in.",
    "demo": "Work through the case of an invented shop.",
    "close": "Close a case: what was done, what cured it, how it was proved.",
    "cases": "List the cases of your shop, and search them.",
    "lessons": "Show what your closed cases changed, learn from them, undo it.",
    "shop": "Show your shop folder, or add a machine or a wheel.",
    "explain": "Explain a symptom, cause, check, stop, guided card or word.",
    "drill": "Practise on whole cases: find the cause, see the hazard.",
    "calc": "Work out one number of the trade.",
    "knowledge": "Test and describe the knowledge files.",
}

HOW_TO_ANSWER = """\
Without a terminal nothing is asked. Give the answers in one of these ways:
  diagnose rank case.yaml              a case file
  diagnose rank - < case.yaml          the same, from another program
  diagnose rank --complaint WORDS --answer CHECK=VALUE --answer ...
  diagnose rank --help                 every way there is
  diagnose explain WORDS               names the checks of a complaint"""

EPILOG = "\b\nExit codes:\n" + "\n".join(f"  {c:>3}  {m}" for c, m in MEANING.items())


class LazyGroup(click.Group):
    """A group that knows its commands by name and help, and imports one when it is used."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 - click's signature
        """Names in the order of the day's work."""
        return list(COMMANDS)

    def get_command(
        self,
        ctx: click.Context,  # noqa: ARG002 - click's signature
        cmd_name: str,
    ) -> click.Command | None:
        """The command, imported now; None when there is none of that name."""
        if cmd_name not in COMMANDS:
            return None
        module = import_module(f"diagnose.cli.{cmd_name}")
        command: click.Command = getattr(module, cmd_name)
        return command

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """The command the first word names. Raises UsageError, with the nearest name."""
        from diagnose.book.near import nearest

        if args[0] not in COMMANDS and not args[0].startswith("-"):
            near = nearest(args[0], COMMANDS)
            hint = f" Did you mean {near}?" if near else ""
            raise click.UsageError(f"There is no command '{args[0]}'.{hint}", ctx)
        return super().resolve_command(ctx, args)

    def format_commands(
        self,
        ctx: click.Context,  # noqa: ARG002 - click's signature
        formatter: click.HelpFormatter,
    ) -> None:
        """Write the list of commands without importing any."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.group(
    cls=LazyGroup,
    invoke_without_command=True,
    epilog=EPILOG,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 78},
)
@first_options
@click.version_option(__version__, message="diagnose %(version)s")
@click.pass_context
def diagnose(context: click.Context) -> None:
    """Find out why a surface grinder makes a bad part, and what to do first.

    Without a command, on a terminal, it starts to ask.

    \b
    Example:
      diagnose ask
      diagnose rank case.yaml
      diagnose report case.yaml --out page.html
    """
    if context.invoked_subcommand is None:
        _bare(context)


def _bare(context: click.Context) -> None:
    from diagnose.cli.console import at_a_terminal, say, tell

    if at_a_terminal():
        command = diagnose.get_command(context, "ask")
        assert command is not None
        with command.make_context("ask", [], parent=context) as inner:
            command.invoke(inner)
        return
    tell(context.get_help())
    say("\n" + HOW_TO_ANSWER)
