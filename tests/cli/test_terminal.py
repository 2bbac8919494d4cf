"""`diagnose ask` at a real terminal: what is answered is never lost."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from diagnose.case.files import load_case
from tests.small import small_book

if sys.platform == "win32":
    pytest.skip("a pseudo-terminal is a thing of Unix", allow_module_level=True)

from tests.cli.terminal import CTRL_C, CTRL_D, Terminal


def kept(folder: Path) -> list[Path]:
    """The case files of the shop."""
    return sorted((folder / "shop" / "cases").glob("*.yaml"))


@pytest.mark.parametrize("lines", [["chatter"], ["chatter", "yes"], ["chatter", "yes", "1", "t"]])
def test_ctrl_c_at_any_question_leaves_a_case_to_go_on_with(
    tmp_path: Path, lines: list[str]
) -> None:
    seat = Terminal(tmp_path, "ask")
    for line in lines:
        seat.type(line)
    seat.press(CTRL_C)
    code, rest = seat.leave()

    assert code == 130
    assert "Traceback" not in rest
    (path,) = kept(tmp_path)
    answers = len([line for line in lines if line in ("yes", "1")])
    case = load_case(path, small_book())
    assert len(case.entries) == answers
    assert f"Saved in {path.as_posix()} (answers: {answers})" in rest

    again = Terminal(tmp_path, "ask")
    again.see("Go on with a case, or begin a new one?")
    again.see(f"1  Even bars across the travel ({path.name[:10]}, answers: {answers})")
    again.type("1")
    again.see("w why, b back")
    again.type("q")
    assert again.leave()[0] == 0
    assert kept(tmp_path) == [path]
    assert load_case(path, small_book()).entries == case.entries


def test_ctrl_c_before_the_complaint_leaves_nothing(tmp_path: Path) -> None:
    seat = Terminal(tmp_path, "ask")
    seat.press(CTRL_C)
    code, rest = seat.leave()

    assert code == 130
    assert "nothing is saved" in rest
    assert kept(tmp_path) == []


def test_the_end_of_the_input_is_told_and_the_case_kept(tmp_path: Path) -> None:
    seat = Terminal(tmp_path, "ask")
    seat.type("burn")
    seat.press(CTRL_D)
    code, rest = seat.leave()

    assert code == 130
    assert "The input ended here. Saved in" in rest
    assert len(kept(tmp_path)) == 1


def test_no_command_at_a_terminal_starts_to_ask(tmp_path: Path) -> None:
    seat = Terminal(tmp_path)
    seat.see("What is wrong with the part?")
    seat.type("q")

    assert seat.leave()[0] == 0


def test_a_stop_that_is_left_standing_ends_with_three(tmp_path: Path) -> None:
    seat = Terminal(tmp_path, "ask", "--case", "burn.yaml")
    for line in ("burn", "dull", "3"):
        seat.type(line)
    code, rest = seat.leave()

    assert code == 3
    assert "STOP: The wheel may be cracked" in rest
    assert "diagnose report burn.yaml" in rest
    assert load_case(tmp_path / "burn.yaml", small_book()).entries[0].value == "dull"


def test_a_file_a_person_wrote_is_not_rewritten(tmp_path: Path) -> None:
    text = "# my own words\ntitle: burn\ncomplaint: [burn]\nanswers: {ring-test: rang-clear}\n"
    (tmp_path / "mine.yaml").write_text(text)

    seat = Terminal(tmp_path, "ask", "--case", "mine.yaml")
    seat.see("going on in mine-continued.yaml")
    seat.type("1")
    seat.type("q")
    assert seat.leave()[0] == 0
    assert (tmp_path / "mine.yaml").read_text() == text
    assert len(load_case(tmp_path / "mine-continued.yaml", small_book()).entries) == 2


def test_a_shop_folder_that_cannot_be_written_is_told_before_anything_is_asked_for_nothing(
    tmp_path: Path,
) -> None:
    (tmp_path / "shop").mkdir()
    (tmp_path / "shop" / "cases").write_text("a file where a folder should be")

    seat = Terminal(tmp_path, "ask")
    seat.type("burn")
    code, rest = seat.leave()
    assert code == 1
    assert "shop/cases" in rest
    assert "Traceback" not in rest


def test_a_damaged_case_of_the_shop_does_not_keep_anyone_from_asking(tmp_path: Path) -> None:
    (tmp_path / "shop" / "cases").mkdir(parents=True)
    (tmp_path / "shop" / "cases" / "old.yaml").write_text("title: [\n")

    seat = Terminal(tmp_path, "ask")
    seat.see("old.yaml")
    seat.see("What is wrong with the part?")
    seat.type("q")
    assert seat.leave()[0] == 0


@pytest.mark.parametrize("env", [{"NO_COLOR": "1"}, {"TERM": "dumb"}, {"TERM": "xterm"}])
def test_no_screen_holds_a_control_sequence(tmp_path: Path, env: dict[str, str]) -> None:
    seat = Terminal(tmp_path, "rank", "-c", "chatter", env=env)

    code, screen = seat.leave()
    assert code == 0
    assert "\x1b" not in screen


def test_an_old_console_gets_every_character_it_can_show(tmp_path: Path) -> None:
    old = {"PYTHONIOENCODING": "cp1252", "PYTHONUTF8": "0"}
    seat = Terminal(tmp_path, "rank", "-c", "chatter", env=old)

    code, screen = seat.leave()
    assert code == 0
    assert "?" not in screen.split("WHAT ACTS")[1].split("WHAT TO DO")[0]
