"""The shop's cards are read as far as they can be; their faults never stop anything."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.book.problems import BookError
from diagnose.case.entries import Case
from diagnose.shop.cards import load_shop
from tests.small import small_book

SHOP = """\
name: Quarry Lane Toolroom
tools: [rule, Feeler gauge]
machines:
  - id: north-grinder
    name: the one by the north wall
    facts: {drive-kind: belt, spindle-speed: 2850 rpm}
"""
WHEEL = """\
id: grey-46
name: grey wheel on the second hook
marking: 38A46-J8V
facts: {ring-test: rang-clear}
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    shop = tmp_path / "shop"
    (shop / "wheels").mkdir(parents=True)
    (shop / "machines").mkdir()
    (shop / "shop.yaml").write_text(SHOP)
    (shop / "wheels/grey-46.yaml").write_text(WHEEL)
    return shop


def test_cards_come_from_shop_yaml_and_from_files(folder: Path) -> None:
    shop = load_shop(folder, small_book())
    assert shop.problems == ()
    assert shop.name == "Quarry Lane Toolroom"
    assert shop.tools == ("rule", "feeler-gauge")
    assert shop.machines["north-grinder"].facts["spindle-speed"] == "2850 rpm"
    assert shop.wheels["grey-46"].marking == "38A46-J8V"


def test_the_facts_of_a_case_are_those_of_its_cards(folder: Path) -> None:
    case = Case("x", ("burnt-patches",), machine="north-grinder", wheel="grey-46")
    assert load_shop(folder, small_book()).facts_for(case) == {
        "drive-kind": "belt",
        "spindle-speed": "2850 rpm",
        "ring-test": "rang-clear",
    }


def test_a_card_the_shop_does_not_have_is_named_with_the_nearest(folder: Path) -> None:
    case = Case("x", ("burnt-patches",), machine="nort-grinder", path="spacer.yaml")
    with pytest.raises(BookError, match="no machine 'nort-grinder'") as error:
        load_shop(folder).facts_for(case)
    assert error.value.problems[0].suggestion == "north-grinder"
    assert error.value.problems[0].file == "spacer.yaml"


def test_a_case_without_cards_has_no_facts_from_the_shop(folder: Path) -> None:
    assert load_shop(folder).facts_for(Case("x", ())) == {}


@pytest.mark.parametrize("missing", [None, "nowhere"])
def test_no_folder_is_an_empty_shop(tmp_path: Path, missing: str | None) -> None:
    shop = load_shop(tmp_path / missing if missing else None, small_book())
    assert (dict(shop.machines), dict(shop.wheels), shop.tools, shop.problems) == ({}, {}, None, ())


def test_a_fault_is_named_and_the_rest_still_works(folder: Path) -> None:
    (folder / "wheels/grey-46.yaml").write_text(WHEEL.replace("rang-clear", "rang"))
    (folder / "wheels/broken.yaml").write_text("id: 'x")
    (folder / "machines/south.yaml").write_text(
        "id: south\nname: the small one\nfacts: {drive-knd: belt, spindle-speed: 2850}\n"
    )
    (folder / "machines/north.yaml").write_text("id: north-grinder\nname: twice\n")
    shop = load_shop(folder, small_book())
    assert [(p.file, p.line) for p in shop.problems] == [
        ("shop/machines/north.yaml", 1),
        ("shop/machines/south.yaml", 3),
        ("shop/machines/south.yaml", 3),
        ("shop/wheels/broken.yaml", 1),
    ]
    assert set(shop.machines) == {"north-grinder", "south"}
    assert shop.wheels["grey-46"].facts == {"ring-test": "rang-clear"}


def test_a_broken_shop_yaml_leaves_the_files(folder: Path) -> None:
    (folder / "shop.yaml").write_text("machines: [")
    shop = load_shop(folder, small_book())
    assert len(shop.problems) == 1
    assert set(shop.wheels) == {"grey-46"}


def test_without_a_book_the_facts_stay_as_written(folder: Path) -> None:
    (folder / "machines/a.yaml").write_text("id: a\nname: a\nfacts: {anything: at all}\n")
    assert load_shop(folder).machines["a"].facts == {"anything": "at all"}


def test_the_shop_knows_where_its_own_knowledge_lies(folder: Path) -> None:
    assert load_shop(folder).knowledge is None
    (folder / "knowledge").mkdir()
    assert load_shop(folder).knowledge == folder / "knowledge"
