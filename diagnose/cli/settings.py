"""The global options, accepted before the command and after it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeVar

import click

UNITS = ("metric", "inch")
F = TypeVar("F", bound=Callable[..., Any])


@dataclass
class Settings:
    """Where the shop folder is and which units are shown."""

    shop: Path
    units: str = "metric"


def settings(context: click.Context) -> Settings:
    """The settings of this run."""
    root = context.find_root()
    if root.obj is None:
        root.obj = Settings(Path(click.get_app_dir("diagnose")))
    found: Settings = root.obj
    return found


def _keep(context: click.Context, parameter: click.Parameter, value: Any) -> None:
    if value is not None:
        setattr(settings(context), str(parameter.name), value)


def global_options(command: F) -> F:
    """Add --shop and --units to a command."""
    return _shop(None)(_units(command))


def first_options(command: F) -> F:
    """The same for the group, where the environment may name the shop."""
    return _shop("DIAGNOSE_SHOP")(_units(command))


def _shop(variable: str | None) -> Callable[[F], F]:
    return click.option(
        "--shop",
        type=click.Path(path_type=Path, file_okay=False),
        envvar=variable,
        expose_value=False,
        callback=_keep,
        help="Folder of your shop: machines, wheels, cases (or set DIAGNOSE_SHOP).",
    )


def _units(command: F) -> F:
    return click.option(
        "--units",
        type=click.Choice(UNITS),
        expose_value=False,
        callback=_keep,
        help="Units of the numbers shown; metric when left out.",
    )(command)
