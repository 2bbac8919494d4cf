"""Run the command line inside the test, on the small knowledge and a shop folder of its own."""

from __future__ import annotations

import io
import sys
from dataclasses import dataclass
from pathlib import Path

import pytest

from diagnose.cli.commands import diagnose
from diagnose.cli.exits import run
from tests.small import SMALL


@dataclass(frozen=True)
class Ran:
    """Exit code, standard output, standard error."""

    code: int
    out: str
    err: str


class Cli:
    """`cli("rank", "case.yaml")` in a folder where the shop is `shop`."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
        self.monkeypatch, self.capsys = monkeypatch, capsys

    def __call__(self, *args: str, stdin: bytes = b"") -> Ran:
        self.monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(stdin), "utf-8"))
        self.capsys.readouterr()
        code = run(diagnose, list(args))
        told = self.capsys.readouterr()
        return Ran(code, told.out, told.err)


@pytest.fixture
def cli(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Cli:
    """The command line on the small knowledge, standing in an empty folder."""
    monkeypatch.setattr("diagnose.book.locate.knowledge_folder", lambda: SMALL)
    monkeypatch.setattr("diagnose.book.locate.reports_folder", lambda: tmp_path / "reports")
    monkeypatch.setenv("DIAGNOSE_SHOP", str(tmp_path / "shop"))
    monkeypatch.chdir(tmp_path)
    return Cli(monkeypatch, capsys)


GOOD = """\
title: ripples since the wheel was changed
complaint: [even-bars-across-travel]
entries:
  - {answer: wheel-changed, value: yes}
  - {answer: bars-even, value: yes}
"""


def write(name: str, text: str | bytes) -> str:
    """A file in the folder of the test; its name."""
    path = Path(name)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return name
