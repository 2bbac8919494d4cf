"""The command line for every test here."""

from tests.cli.running import cli

__all__ = ["cli"]
