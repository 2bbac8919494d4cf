"""Writing the page: whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from diagnose.book.problems import BookError
from diagnose.report.page import PageError, render_page, write_page
from tests.report.views import calm_view, rich_view


def test_the_page_is_written_and_its_path_given(tmp_path: Path) -> None:
    target = tmp_path / "new" / "page.html"
    assert write_page(rich_view(), target) == target
    assert target.read_text(encoding="utf-8") == render_page(rich_view())


def test_a_folder_as_target_is_one_clear_error(tmp_path: Path) -> None:
    with pytest.raises(PageError, match="this is a folder, not a file"):
        write_page(rich_view(), tmp_path)


def test_a_place_that_cannot_be_written_is_one_clear_error(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("x")
    with pytest.raises(PageError, match="nothing can be written here"):
        write_page(rich_view(), tmp_path / "file" / "page.html")


def test_when_writing_fails_the_old_page_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = write_page(calm_view(), tmp_path / "page.html")

    def refuse(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(os, "replace", refuse)
    with pytest.raises(PageError, match="Permission denied"):
        write_page(rich_view(), target)
    assert target.read_text(encoding="utf-8") == render_page(calm_view())
    assert os.listdir(tmp_path) == ["page.html"]


def test_the_error_is_handled_like_any_other_bad_input() -> None:
    assert issubclass(PageError, BookError)
