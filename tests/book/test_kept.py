"""The book kept between runs: quick, never stale, never trusted, never in the way."""

from __future__ import annotations

import json
import random
import shutil
from pathlib import Path

import pytest

from diagnose.book import kept, packed
from diagnose.book.kept import load_kept
from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from diagnose.book.problems import BookError
from tests.small import SMALL


@pytest.fixture
def knowledge(tmp_path: Path) -> Path:
    shutil.copytree(SMALL, tmp_path / "knowledge")
    return tmp_path / "knowledge"


@pytest.fixture
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("DIAGNOSE_CACHE", str(tmp_path / "kept"))
    return tmp_path / "kept"


def only_file(place: Path) -> Path:
    (found,) = place.glob("*.book")
    return found


def test_the_shipped_book_comes_back_as_it_was() -> None:
    book = load_book(knowledge_folder())
    assert packed.from_text(packed.to_text(book)) == book


def test_the_second_run_reads_no_yaml(
    knowledge: Path, place: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = load_kept(knowledge)

    def refuse(*_: object) -> Book:
        raise AssertionError("the files were read again")

    monkeypatch.setattr(kept, "load_book", refuse)
    assert load_kept(knowledge) == first
    assert only_file(place).is_file()


def test_an_edit_of_any_file_is_seen_at_once(knowledge: Path, place: Path) -> None:
    load_kept(knowledge)
    path = next(iter(sorted((knowledge / "causes").rglob("*.yaml"))))
    path.write_text(path.read_text(encoding="utf-8") + "# a word more\n", encoding="utf-8")
    assert load_kept(knowledge).version == load_book(knowledge).version
    assert len(list(place.glob("*.book"))) == 2


def test_a_book_with_faults_is_not_kept(knowledge: Path, place: Path) -> None:
    path = next(iter(sorted((knowledge / "causes").rglob("*.yaml"))))
    path.write_text("id: [\n", encoding="utf-8")
    with pytest.raises(BookError):
        load_kept(knowledge)
    assert not list(place.glob("*.book"))


def test_whatever_is_damaged_is_read_anew(knowledge: Path, place: Path) -> None:
    right = load_kept(knowledge)
    whole = only_file(place).read_bytes()
    draw = random.Random(1)
    damaged = [b"", whole[: len(whole) // 2], b"\xff" * 40, b"[" * 100_000, whole + b" "]
    for _ in range(20):
        at = draw.randrange(len(whole))
        damaged.append(whole[:at] + bytes([whole[at] ^ 1]) + whole[at + 1 :])
    for data in damaged:
        only_file(place).write_bytes(data)
        assert load_kept(knowledge) == right
    assert only_file(place).read_bytes() == whole


def test_the_folder_may_be_deleted_or_be_a_file(knowledge: Path, place: Path) -> None:
    right = load_kept(knowledge)
    shutil.rmtree(place)
    assert load_kept(knowledge) == right
    shutil.rmtree(place)
    place.write_text("in the way", encoding="utf-8")
    assert load_kept(knowledge) == right


def test_off_keeps_nothing(knowledge: Path, place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("DIAGNOSE_CACHE", "off")
    load_kept(knowledge)
    assert not place.exists()


def test_only_the_newest_few_are_left(knowledge: Path, place: Path) -> None:
    path = next(iter(sorted((knowledge / "causes").rglob("*.yaml"))))
    for _ in range(kept.MOST_KEPT + 3):
        path.write_text(path.read_text(encoding="utf-8") + "# a word more\n", encoding="utf-8")
        load_kept(knowledge)
    assert len(list(place.glob("*.book"))) == kept.MOST_KEPT


@pytest.mark.parametrize(
    "text",
    [
        '["Popen", "echo"]',
        '["os.system", "echo"]',
        '["Book"]',
        '["tuple", 1, 2]',
        '{"__class__": "Book"}',
        "1",
        "null",
    ],
)
def test_nothing_but_the_parts_of_a_book_is_ever_made(text: str) -> None:
    json.loads(text)
    with pytest.raises(packed.NotABook):
        packed.from_text(text)
