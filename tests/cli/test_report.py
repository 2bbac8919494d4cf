"""`diagnose report` and `diagnose demo`: the page of a case."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.running import GOOD, Cli, write


def test_the_page_goes_where_it_is_told_and_names_the_cause(cli: Cli) -> None:
    told = cli("report", write("case.yaml", GOOD), "--out", "pages/spacer.html")

    page = Path("pages/spacer.html").read_text(encoding="utf-8")
    assert told.code == 0
    assert told.out == "pages/spacer.html\n"
    assert page.startswith("<!DOCTYPE html>")
    assert "Wheel out of balance" in page


def test_the_page_goes_to_the_reports_folder_under_the_name_of_the_case(
    cli: Cli, tmp_path: Path
) -> None:
    told = cli("report", write("spacer-plate.yaml", GOOD))

    assert Path(told.out.strip()) == tmp_path / "reports" / "spacer-plate.html"
    assert Path(told.out.strip()).is_file()


def test_a_page_with_a_stop_is_whole_and_ends_with_three(cli: Cli) -> None:
    told = cli("report", write("case.yaml", GOOD), "-a", "ring-test=dull", "--out", "page.html")

    assert told.code == 3
    assert "A cracked wheel can burst at speed." in Path("page.html").read_text(encoding="utf-8")


def test_the_demo_prints_what_it_found_and_writes_its_page(
    cli: Cli, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("diagnose.book.locate.shared_folder", lambda: tmp_path / "shared")
    write("shared/machines/north.yaml", "id: north\nname: north\nfacts: {drive-kind: belt}\n")
    write("shared/cases/spacer-plate-ripples.yaml", GOOD + "machine: north\n")

    told = cli("demo")
    assert told.code == 0
    assert "Most likely: Wheel out of balance" in told.out
    assert (tmp_path / "reports" / "spacer-plate-ripples.html").is_file()
    assert "spacer-plate-ripples.html" in told.err
