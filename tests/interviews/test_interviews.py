"""Whole interviews as text: what is typed, and the screen that comes of it.

A file begins with a line that says what it shows. `--update` rewrites what follows with what the
interview says now; read the difference before you keep it.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.interviews.playing import Play, typed_lines
from tests.small import small_book

FILES = sorted(Path(__file__).parent.glob("*.txt"))


def played(text: str) -> tuple[str, Play]:
    """The file as it would be written now, and the play of it."""
    title = text.splitlines()[0]
    play = Play(small_book(), typed_lines(text)).run()
    lines = [line.rstrip() for line in play.text.splitlines()]
    return "\n".join([title, "", *lines, "", f"== {play.end}", ""]), play


@pytest.mark.parametrize("file", FILES, ids=lambda f: f.stem)
def test_an_interview_goes_as_written(file: Path, request: pytest.FixtureRequest) -> None:
    written = file.read_text(encoding="utf-8")

    now, play = played(written)
    if request.config.getoption("--update"):
        file.write_text(now, encoding="utf-8")
        return
    assert now == written
    assert next(play.lines, None) is None, "typed lines were left over"


@pytest.mark.parametrize("file", FILES, ids=lambda f: f.stem)
def test_every_screen_survives_an_old_console_and_its_width(file: Path) -> None:
    text = file.read_text(encoding="utf-8")

    text.encode("cp1252")
    assert max(len(line) for line in text.splitlines()) <= 80


def test_there_are_interviews() -> None:
    assert len(FILES) >= 8
