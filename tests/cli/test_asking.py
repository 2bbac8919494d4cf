"""What a word was taken for is said back; a number needs no echo."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from diagnose.cli.asking import Asker
from diagnose.cli.demo import _called
from tests.small import small_book

CHOICES = {"part-moves": "the part moves in the cut", "belt-slips": "the belt slips"}


def heard(*typed: str) -> tuple[Asker, list[str]]:
    lines, said = iter(typed), []
    return Asker(lambda: next(lines), said.append), said


def test_a_word_picked_from_a_list_is_said_back() -> None:
    asker, said = heard("part moves")
    assert asker.pick("Which?", CHOICES) == "part-moves"
    assert said[-1] == "   = the part moves in the cut"
    asker, said = heard("belt-slips, 1")
    assert asker.picks("Which?", CHOICES) == ("belt-slips", "part-moves")
    assert said[-1] == "   = the belt slips; the part moves in the cut"


def test_a_number_is_not_said_back() -> None:
    asker, said = heard("1")
    assert asker.pick("Which?", CHOICES) == "part-moves"
    assert not [text for text in said if text.startswith("   = ")]


def test_the_very_words_are_not_said_back() -> None:
    asker, said = heard("rare")
    assert asker.pick("How common?", {"common": "common", "rare": "rare"}) == "rare"
    assert not [text for text in said if text.startswith("   = ")]


def test_an_answer_to_a_check_is_said_back() -> None:
    check = small_book().checks["bars-even"]
    asker, said = heard("even")
    assert asker.answer(check) == "yes"
    assert said[-1] == f"   = {check.by_option['yes'].say}"


def test_the_demo_says_how_to_go_on_where_the_shell_does_not_find_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "bin" / "diagnose"
    path.parent.mkdir()
    path.touch()
    monkeypatch.setattr(sys, "argv", [str(path)])
    monkeypatch.setenv("PATH", str(tmp_path))
    assert _called() == str(path)
    path.chmod(0o755)
    monkeypatch.setenv("PATH", str(path.parent))
    assert _called() == "diagnose"


def test_the_readme_says_how_to_go_on_and_how_to_set_the_shop() -> None:
    readme = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
    for words in (". .venv/bin/activate", ".venv\\Scripts\\activate", ".venv/bin/diagnose ask"):
        assert words in readme
    assert 'export DIAGNOSE_SHOP="' in readme
