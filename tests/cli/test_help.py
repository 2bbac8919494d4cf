"""Help starts at once, and says the same in every place."""

from __future__ import annotations

import subprocess
import sys

import click
import pytest

from diagnose.cli.commands import COMMANDS, diagnose
from tests.cli.running import Cli

HEAVY = ("experta", "networkx", "jinja2", "numpy", "pint", "scipy", "yaml")
SHOW = "import sys; from diagnose.cli.commands import diagnose; from diagnose.cli.exits import run"


def loaded_after(*args: str) -> tuple[int, set[str], str]:
    """Exit code, the modules loaded by a run of its own, and what it printed."""
    code = f"{SHOW}\nc = run(diagnose, {list(args)!r})\nprint(c, *sys.modules, file=sys.stderr)"
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    first, *modules = ran.stderr.split()
    return int(first), set(modules), ran.stdout


def test_help_loads_no_heavy_package_and_no_command() -> None:
    code, modules, out = loaded_after("--help")

    assert code == 0
    assert "Commands:" in out
    assert not modules & set(HEAVY)
    assert not modules & {f"diagnose.cli.{name}" for name in COMMANDS}


@pytest.mark.parametrize("name", COMMANDS)
def test_help_of_a_command_loads_that_command_alone(name: str) -> None:
    code, modules, out = loaded_after(name, "--help")

    assert code == 0
    assert out.startswith(f"Usage: diagnose {name}")
    assert not modules & set(HEAVY)
    assert modules & {f"diagnose.cli.{n}" for n in COMMANDS} == {f"diagnose.cli.{name}"}
    assert not {m for m in modules if m.startswith(("diagnose.reasoning", "diagnose.report."))}


@pytest.mark.parametrize("name", COMMANDS)
def test_a_command_says_the_same_in_the_list_as_in_its_own_help(name: str) -> None:
    command = diagnose.get_command(click.Context(diagnose), name)

    assert command is not None
    assert command.name == name
    assert (command.help or "").splitlines()[0] == COMMANDS[name]


@pytest.mark.parametrize("name", COMMANDS)
def test_the_short_option_prints_the_help_with_an_example(name: str) -> None:
    code, _, out = loaded_after(name, "-h")

    command = diagnose.get_command(click.Context(diagnose), name)
    assert code == 0
    assert out.startswith(f"Usage: diagnose {name}")
    assert f"Example:\n    diagnose {name}" in out or isinstance(command, click.Group)


def test_no_line_of_help_is_wider_than_a_plain_terminal(cli: Cli) -> None:
    for args in ([], *([name] for name in COMMANDS)):
        for line in cli(*args, "--help").out.splitlines():
            assert len(line) <= 80, line


def test_all_help_survives_an_old_console(cli: Cli) -> None:
    for args in ([], *([name] for name in COMMANDS)):
        cli(*args, "--help").out.encode("cp1252")
