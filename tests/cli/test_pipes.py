"""The command line between other programs."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from tests.cli.running import GOOD
from tests.small import SMALL

START = f"""
from pathlib import Path
import diagnose.book.locate as locate
locate.knowledge_folder = lambda: Path({str(SMALL)!r})
from diagnose.__main__ import main
main()
"""


def piped(folder: Path, *args: str, reads: int = -1) -> tuple[int, bytes, bytes]:
    """Run with a pipe at both ends; the reader leaves after `reads` bytes (0 = at once)."""
    process = subprocess.Popen(
        [sys.executable, "-c", START, "--shop", str(folder), *args],
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        cwd=folder,
    )
    assert process.stdout is not None
    assert process.stderr is not None
    out = process.stdout.read(reads) if reads else b""
    process.stdout.close()
    err = process.stderr.read()
    process.stderr.close()
    return process.wait(), out, err


@pytest.mark.parametrize("command", [("rank", "-c", "chatter", "--json"), ("explain", "chatter")])
def test_a_reader_that_leaves_early_is_no_fault(tmp_path: Path, command: tuple[str, ...]) -> None:
    code, _, err = piped(tmp_path, *command, reads=0)

    assert code == 0
    assert err == b""


def test_json_stands_alone_on_standard_output(tmp_path: Path) -> None:
    (tmp_path / "case.yaml").write_text(GOOD)

    code, out, err = piped(tmp_path, "rank", "case.yaml", "--json")
    assert code == 0
    assert json.loads(out)["schema"] == 1
    assert err == b""


def test_asking_in_a_pipe_never_waits(tmp_path: Path) -> None:
    code, out, err = piped(tmp_path, "ask")

    assert code == 2
    assert out == b""
    assert b"needs a terminal" in err


def test_the_same_case_gives_the_same_bytes_in_every_process(tmp_path: Path) -> None:
    (tmp_path / "case.yaml").write_text(GOOD)

    assert len({piped(tmp_path, "rank", "case.yaml", "--json")[1] for _ in range(3)}) == 1
