"""Exit codes: 0 done, 1 wrong input, 2 usage, 3 a stop stands, 130 interrupted."""

from __future__ import annotations

from pathlib import Path

import click
import pytest

from diagnose.cli import exits
from diagnose.cli.exits import run
from tests.cli.running import GOOD, Cli, write


def raising(error: BaseException) -> click.Command:
    """A command that ends in an error."""

    @click.command()
    def command() -> None:
        raise error

    return command


def test_a_case_without_a_stop_ends_with_nought(cli: Cli) -> None:
    assert cli("rank", write("case.yaml", GOOD)).code == 0


def test_no_case_at_all_is_a_matter_of_usage(cli: Cli) -> None:
    told = cli("rank")

    assert told.code == 2
    assert "--complaint" in told.err


def test_a_mistyped_command_names_the_nearest(cli: Cli) -> None:
    told = cli("rnak")

    assert told.code == 2
    assert "rank" in told.err


def test_asking_without_a_terminal_says_how_to_give_answers(cli: Cli) -> None:
    told = cli("ask")

    assert told.code == 2
    assert "--answer CHECK=VALUE" in told.err
    assert told.out == ""


def test_no_command_without_a_terminal_prints_help(cli: Cli) -> None:
    told = cli()

    assert told.code == 0
    assert "Commands:" in told.out
    assert "--answer CHECK=VALUE" in told.err


def test_ctrl_c_ends_with_130() -> None:
    assert run(raising(KeyboardInterrupt()), []) == 130
    assert run(raising(click.Abort()), []) == 130


def test_a_fault_of_the_program_is_told_as_such_and_kept(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))

    code = run(raising(ZeroDivisionError("nought")), [])
    told = capsys.readouterr().err
    kept = list(tmp_path.glob("diagnose-fault-*.txt"))
    assert code == 1
    assert "a fault of this program" in told
    assert "Traceback" not in told
    assert len(kept) == 1
    assert "ZeroDivisionError" in kept[0].read_text()


def test_every_code_is_explained_in_the_help(cli: Cli) -> None:
    told = cli("--help").out

    codes = {exits.DONE, exits.WRONG, exits.USAGE, exits.STOP, exits.INTERRUPTED}
    assert codes == set(exits.MEANING) == {0, 1, 2, 3, 130}
    for code, meaning in exits.MEANING.items():
        assert f"{code}  {meaning}" in told
