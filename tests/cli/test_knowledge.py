"""`diagnose knowledge`: faults on the screen with their place, counts, schemas."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from diagnose.cli.commands import diagnose
from tests.small import SMALL, change, copy_small, small_book

UNBALANCED = "causes/wheel/unbalanced-wheel.yaml"


def run(tmp_path: Path, *words: str) -> Result:
    nowhere = (tmp_path / "no-shop").as_posix()
    return CliRunner().invoke(diagnose, ["--shop", nowhere, "knowledge", *words])


def test_a_fault_is_shown_with_its_line_a_caret_and_what_was_meant(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, UNBALANCED, "how_often: usually", "how_often: usualy")
    result = run(tmp_path, "test", "--folder", folder.as_posix())
    assert result.exit_code == 1
    lines = result.stdout.splitlines()
    assert lines[0].startswith(f"knowledge/{UNBALANCED}:9:51: 'usualy' is not one")
    assert lines[1][lines[2].index("^") :].startswith("usualy")
    assert lines[3] == "  did you mean usually?"
    assert result.stderr == "1 fault found.\n"


def test_files_without_a_fault_are_said_to_have_none(tmp_path: Path) -> None:
    result = run(tmp_path, "test", "--no-examples", "--folder", SMALL.as_posix())
    assert result.exit_code == 0
    assert result.stdout == f"No fault found in the files of knowledge {small_book().version}.\n"


def test_a_missing_folder_is_one_message(tmp_path: Path) -> None:
    result = run(tmp_path, "test", "--folder", (tmp_path / "nowhere").as_posix())
    assert result.exit_code == 1
    assert "there is no such folder" in result.stdout


def test_the_version_is_that_of_the_content(tmp_path: Path) -> None:
    result = run(tmp_path, "version", "--folder", SMALL.as_posix())
    assert result.stdout == f"{small_book().version}\n"


def test_the_counts_are_those_of_the_book(tmp_path: Path) -> None:
    shown = run(tmp_path, "stats", "--folder", SMALL.as_posix()).stdout
    rows = {" ".join(w[1:]): w[0] for w in map(str.split, shown.splitlines()) if w[0].isdigit()}
    book = small_book()
    assert rows["causes"] == str(len(book.causes))
    assert rows["checks"] == str(len(book.checks))
    assert rows["links from cause to sign"] == str(sum(len(c.shows) for c in book.causes.values()))
    assert "Stops and holds, by the standing of their source:\n      1  confirmed" in shown


def test_the_schemas_are_written_where_asked(tmp_path: Path) -> None:
    out = tmp_path / "schema"
    result = run(tmp_path, "schema", "--folder", SMALL.as_posix(), "--out", out.as_posix())
    assert result.exit_code == 0
    assert (out / "cause.json").as_posix() in result.stdout
    assert json.loads((out / "cause.json").read_text(encoding="utf-8"))["title"] == "cause"
    assert (out / "case.json").is_file()


@pytest.mark.parametrize("command", ["test", "stats", "schema", "version"])
def test_every_command_has_help_with_an_example(tmp_path: Path, command: str) -> None:
    shown = run(tmp_path, command, "-h").stdout
    assert f"diagnose knowledge {command}" in shown
    assert "Example:" in shown
