"""README and the command line say the same."""

from __future__ import annotations

import re
from pathlib import Path

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.case.files import load_case
from diagnose.cli.commands import COMMANDS
from diagnose.cli.exits import MEANING

README = Path(__file__).parents[2] / "README.md"


def test_readme_names_every_command_and_no_other() -> None:
    named = set(re.findall(r"`diagnose ([a-z]+)", README.read_text(encoding="utf-8")))

    assert named == set(COMMANDS)


def test_readme_tells_what_every_command_is_for() -> None:
    text = README.read_text(encoding="utf-8")
    listed = {
        name: line
        for name in COMMANDS
        for line in text.splitlines()
        if line.lstrip("|-* ").startswith(f"`diagnose {name}")
    }

    assert {n for n in COMMANDS if COMMANDS[n].rstrip(".") not in listed.get(n, "")} == set()


def test_readme_names_every_exit_code() -> None:
    text = README.read_text(encoding="utf-8")

    for code in MEANING:
        assert re.search(rf"\b{code}\b", text), code


def test_the_case_of_the_readme_is_a_case(tmp_path: Path) -> None:
    (block,) = re.findall(r"```yaml\n(.*?)```", README.read_text(encoding="utf-8"), re.DOTALL)
    file = tmp_path / "case.yaml"
    file.write_text(block, encoding="utf-8")
    case = load_case(file, load_book(knowledge_folder()))
    assert case.complaint == ("even-bars-across-travel",)
    assert [e.name for e in case.entries] == ["bars-in-25mm", "table-speed"]
