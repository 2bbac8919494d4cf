"""A pack brings lessons and nothing else; a bad one is one message and changes nothing."""

from __future__ import annotations

import contextlib
import io
import stat
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.book.pages import MOST_BYTES
from diagnose.book.problems import BookError
from diagnose.case.case_text import case_text
from diagnose.shop.closed import cases_of
from diagnose.shop.knowledge import load_with_own
from diagnose.shop.pack_files import MOST_FILES, read_pack
from diagnose.shop.packs import Card, make_pack, take_pack
from tests.shop.shops import MACHINE, belt, case, closed, put
from tests.small import SMALL

CARD = "schema: 1\nid: belt-lessons\nname: belt lessons\n"
SLACK = "knowledge/causes/drive/slack-belt.yaml"
GOOD = {"pack.yaml": CARD, SLACK: belt("slack-belt")}
BOMB = "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\nd: [*c, *c]\n"


def zipped(path: Path, files: dict[str, str]) -> Path:
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as pack:
        for name, text in files.items():
            pack.writestr(name, text)
    return path


def spread(path: Path, files: dict[str, str]) -> Path:
    for name, text in files.items():
        put(path, name, text)
    return path


def state(folder: Path) -> dict[str, bytes]:
    return {
        p.relative_to(folder).as_posix(): p.read_bytes() for p in folder.rglob("*") if p.is_file()
    }


@pytest.mark.parametrize("form", [zipped, spread], ids=["one file", "a folder"])
def test_a_good_pack_is_taken_and_its_causes_are_drafts(
    tmp_path: Path, form: Callable[[Path, dict[str, str]], Path]
) -> None:
    shop = tmp_path / "shop"
    files = {**GOOD, "README.md": "read me", SLACK: belt("slack-belt").replace("draft", "proven")}
    taken = take_pack(SMALL, shop, form(tmp_path / "pack", files))
    assert taken.ids == ("slack-belt",)
    book, left_out = load_with_own(SMALL, shop)
    assert left_out == ()
    assert book.causes["slack-belt"].status == "draft"
    assert book.origin("slack-belt") == "pack belt-lessons"


def test_a_cause_of_a_pack_is_tried_once_a_case_closed_here_names_it(tmp_path: Path) -> None:
    take_pack(SMALL, tmp_path / "shop", zipped(tmp_path / "p.zip", GOOD))
    closed(tmp_path / "shop", "a", case(), "2026-03-09", "slack-belt")
    assert load_with_own(SMALL, tmp_path / "shop")[0].causes["slack-belt"].status == "tried"


def test_a_pack_is_taken_once(tmp_path: Path) -> None:
    shop, pack = tmp_path / "shop", zipped(tmp_path / "p.zip", GOOD)
    take_pack(SMALL, shop, pack)
    before = state(shop)
    with pytest.raises(BookError, match="'belt-lessons' is taken already"):
        take_pack(SMALL, shop, pack)
    assert state(shop) == before


def change(**more: str) -> dict[str, str]:
    return {**GOOD, **{name.replace("__", "/"): text for name, text in more.items()}}


OVER = belt("lumpy-belt")
HUGE = "x" * (MOST_BYTES + 1)
NEWER = case_text(case()).replace("schema: 1", "schema: 9")
BAD: dict[str, tuple[dict[str, str], str]] = {
    "a path that climbs out": ({**GOOD, "knowledge/../../evil.yaml": "x"}, "leads out of the pack"),
    "an absolute path": ({**GOOD, "/etc/evil.yaml": "x"}, "leads out of the pack"),
    "a path of another system": ({**GOOD, "knowledge\\..\\evil.yaml": "x"}, "leads out"),
    "a drive": ({**GOOD, "C:evil.yaml": "x"}, "leads out of the pack"),
    "a hidden file": ({**GOOD, "knowledge/.hidden/x.yaml": "x"}, "has no place in a pack"),
    "a program": ({**GOOD, "knowledge/causes/x.py": "x"}, "is no YAML file"),
    "a file beside": ({**GOOD, "shop.yaml": "x"}, "has no place in a pack"),
    "a machine": ({**GOOD, "machines/x.yaml": MACHINE}, "has no place in a pack"),
    "a huge file": ({**GOOD, "knowledge/causes/drive/x.yaml": HUGE}, "over 1 MiB"),
    "too much in all": (
        {**GOOD, **{f"knowledge/causes/drive/x{n}.yaml": "x" * (MOST_BYTES - 9) for n in range(9)}},
        "more than 500 files or 8 MiB",
    ),
    "too many files": (
        {**GOOD, **{f"knowledge/causes/drive/x{n}.yaml": "x" for n in range(MOST_FILES)}},
        "more than 500 files",
    ),
    "an alias bomb": ({**GOOD, "knowledge/causes/drive/x.yaml": BOMB}, "'&a': names for parts"),
    "an override without a reason": ({**GOOD, "knowledge/causes/drive/lumpy-belt.yaml": OVER},
                                     "'lumpy-belt' is in the knowledge already"),
    "an override with a bare yes": (
        {**GOOD, "knowledge/causes/drive/lumpy-belt.yaml": f"{OVER}overrides: yes\n"},
        "'yes' gives no reason",
    ),
    "a stop overridden": (
        {**GOOD, "knowledge/stops/cracked-wheel.yaml":
            (SMALL / "stops/cracked-wheel.yaml").read_text() + "overrides: ours never crack\n"},
        "guards against a hazard",
    ),
    "a case of a newer version": ({**GOOD, "cases/a.yaml": NEWER}, "written by a newer version"),
    "a pack of a newer version": ({**GOOD, "pack.yaml": CARD.replace("1", "2")}, "another version"),
    "no card": ({SLACK: belt("slack-belt")}, "there is no pack.yaml in it"),
    "a card without id": ({**GOOD, "pack.yaml": "schema: 1\nname: x\n"}, "has no 'id:'"),
    "a card whose id climbs": ({**GOOD, "pack.yaml": CARD.replace("belt-lessons", "../x")},
                               "'../x' cannot be a name here"),
    "a fault in a file": ({**GOOD, SLACK: belt("slack-belt").replace("status", "sttus")}, "sttus"),
}  # fmt: skip


@pytest.mark.parametrize("name", BAD)
def test_a_bad_pack_is_one_clear_message_and_nothing_is_changed(tmp_path: Path, name: str) -> None:
    files, says = BAD[name]
    shop = tmp_path / "shop"
    put(shop, "machines/north.yaml", MACHINE)
    before = state(tmp_path)
    pack = zipped(tmp_path / "p.zip", files)
    with pytest.raises(BookError, match=says) as error:
        take_pack(SMALL, shop, pack)
    assert "Traceback" not in str(error.value)
    pack.unlink()
    assert state(tmp_path) == before


def test_a_link_in_a_pack_is_refused(tmp_path: Path) -> None:
    folder = spread(tmp_path / "pack", GOOD)
    (folder / "knowledge/causes/drive/x.yaml").symlink_to("/etc/hostname")
    with pytest.raises(BookError, match="is a link: nothing of this pack is taken"):
        take_pack(SMALL, tmp_path / "shop", folder)
    pack = tmp_path / "p.zip"
    with zipfile.ZipFile(pack, "w") as file:
        info = zipfile.ZipInfo("knowledge/x.yaml")
        info.external_attr = (stat.S_IFLNK | 0o777) << 16
        file.writestr(info, "/etc/hostname")
    with pytest.raises(BookError, match="is a link"):
        take_pack(SMALL, tmp_path / "shop", pack)


def test_a_file_that_unpacks_to_more_than_it_says_is_refused(tmp_path: Path) -> None:
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as pack:
        pack.writestr("knowledge/x.yaml", "x" * (20 * MOST_BYTES))
    raw = buffer.getvalue()
    size = (20 * MOST_BYTES).to_bytes(4, "little")
    assert raw.count(size) == 2
    path = tmp_path / "p.zip"
    path.write_bytes(raw.replace(size, (10).to_bytes(4, "little")))
    with pytest.raises(BookError):
        take_pack(SMALL, tmp_path / "shop", path)
    assert not (tmp_path / "shop/packs/belt-lessons").exists()


@given(st.binary(max_size=400), st.integers(0, 300))
def test_no_bytes_at_all_bring_more_than_a_message(raw: bytes, at: int) -> None:
    import tempfile

    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as pack:
        for name, text in GOOD.items():
            pack.writestr(name, text)
    good = buffer.getvalue()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "p.zip"
        for bad in (raw, good[:at] + raw + good[at + len(raw) :]):
            path.write_bytes(bad)
            with contextlib.suppress(BookError):  # any other error fails the test
                assert set(read_pack(path)) <= set(GOOD)


def test_a_pack_is_made_of_knowledge_and_of_nothing_else(tmp_path: Path) -> None:
    shop = tmp_path / "shop"
    put(shop, "machines/north.yaml", MACHINE)
    put(shop, SLACK, belt("slack-belt"))
    put(shop, "knowledge/schema/cause.json", "{}")
    closed(shop, "a", case("secret"), "2026-03-09", "slack-belt")
    book, _ = load_with_own(SMALL, shop)
    out = tmp_path / "p.zip"
    card = Card("belt-lessons", "belt lessons", "2026-03-10")
    assert make_pack(shop, book, card, out, (), with_cases=False) == ["pack.yaml", SLACK]
    assert b"secret" not in b"".join(read_pack(out).values())
    again = tmp_path / "again.zip"
    make_pack(shop, book, card, again, (), with_cases=False)
    assert again.read_bytes() == out.read_bytes()
    with pytest.raises(BookError, match="there already"):
        make_pack(shop, book, card, out, (), with_cases=False)
    taken = take_pack(SMALL, tmp_path / "other", out)
    assert (taken.ids, taken.cases) == (("slack-belt",), 0)


def test_cases_go_along_when_asked_for_and_are_not_counted_as_ones_own(tmp_path: Path) -> None:
    shop = tmp_path / "shop"
    put(shop, SLACK, belt("slack-belt"))
    closed(shop, "a", case("plate"), "2026-03-09", "slack-belt")
    book, _ = load_with_own(SMALL, shop)
    out = tmp_path / "p.zip"
    make_pack(shop, book, Card("x", "x"), out, (), with_cases=True)
    taken = take_pack(SMALL, tmp_path / "other", out)
    assert taken.cases == 1
    book, _ = load_with_own(SMALL, tmp_path / "other")
    assert [k.pack for k in cases_of(tmp_path / "other", book).closed] == ["x"]
    assert book.causes["slack-belt"].status == "draft"


def test_only_what_is_named_and_what_it_needs_goes_along(tmp_path: Path) -> None:
    shop = tmp_path / "shop"
    put(shop, SLACK, belt("slack-belt").replace("bars-evenly-spaced", "felt-crushed"))
    put(shop, "knowledge/causes/drive/wet-belt.yaml", belt("wet-belt"))
    sign = "- id: felt-crushed\n  name: x\n  kind: sign\n  without_cause: rarely\n"
    put(shop, "knowledge/findings/felt.yaml", sign + "  source: common-practice\n")
    book, left_out = load_with_own(SMALL, shop)
    assert left_out == ()
    files = make_pack(shop, book, Card("x", "x"), tmp_path / "p.zip", ["slack-belt"],
                      with_cases=False)  # fmt: skip
    assert files == ["pack.yaml", SLACK, "knowledge/findings/felt.yaml"]
    with pytest.raises(BookError, match="has no 'lumpy-belt'"):
        make_pack(shop, book, Card("x", "x"), tmp_path / "q.zip", ["lumpy-belt"], with_cases=False)
