"""A person at a terminal is told when it takes long; a result is never mixed with it."""

from __future__ import annotations

import sys
import time

import pytest

from diagnose.cli import console
from diagnose.cli.room import Room
from tests.cli.running import GOOD, Cli, write

WAIT = "working it out ..."


@pytest.mark.parametrize(("seconds", "told"), [(0.0, 0), (0.3, 1)])
def test_it_is_said_once_and_only_when_it_takes_long(
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    seconds: float,
    told: int,
) -> None:
    monkeypatch.setattr(console, "PATIENCE", 0.1)
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True)
    with console.patience():
        time.sleep(seconds)
    time.sleep(0.2)
    read = capsys.readouterr()
    assert (read.out, read.err.count(WAIT)) == ("", told)


@pytest.mark.parametrize("args", [("rank",), ("report", "--out", "p.html")], ids=["rank", "report"])
@pytest.mark.parametrize("terminal", [True, False])
def test_rank_and_report_say_it_at_a_terminal_alone(
    cli: Cli, monkeypatch: pytest.MonkeyPatch, args: tuple[str, ...], terminal: bool
) -> None:
    write("case.yaml", GOOD)
    view = Room.view

    def slow(*told: object, **more: object) -> object:
        time.sleep(0.3)
        return view(*told, **more)  # type: ignore[arg-type]  # passed on as they came

    monkeypatch.setattr(Room, "view", slow)
    monkeypatch.setattr(console, "PATIENCE", 0.1)
    monkeypatch.setattr(sys.stderr, "isatty", lambda: terminal)
    ran = cli(args[0], "case.yaml", *args[1:])
    assert ran.code == 0
    assert WAIT not in ran.out
    assert ran.err.count(WAIT) == int(terminal)
