"""The readings of the healthy record, asked again: how is it now?"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from diagnose.cli.typed import command


class Back(Exception):
    """The person wants the question before this one."""


class Quit(Exception):
    """The person wants to save and stop."""


def ask_now(
    readings: Mapping[str, str], read: Callable[[], str], say: Callable[[str], None]
) -> dict[str, str]:
    """What was measured again, by name; a reading not measured is left out. Raises Back, Quit."""
    say("\nWhat is it now? Only what you have measured today; Enter leaves it out, b back, q stop.")
    now: dict[str, str] = {}
    for name, good in readings.items():
        say(f"\n   {name.replace('-', ' ')}: {good} when it ground well. Now?")
        line = " ".join(read().split())
        if command(line) == "back":
            raise Back
        if command(line) == "quit":
            raise Quit
        if line and not command(line):
            now[name] = line
    return now
