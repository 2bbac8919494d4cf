"""The shop's own knowledge stands beside the shipped one and can never break it."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.book.loader import load_book
from diagnose.book.problems import BookError
from diagnose.shop.knowledge import load_with_own
from tests.shop.shops import belt, put
from tests.small import SMALL, change, copy_small, small_book

SLACK = "knowledge/causes/drive/slack-belt.yaml"
WHY = "overrides: our belts are older than any in the books\n"


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    return tmp_path / "shop"


def told(shop: Path) -> list[tuple[str, int, str]]:
    """What is left out: file, line, the fault."""
    _, problems = load_with_own(SMALL, shop)
    return [(p.file, p.line, p.what) for p in problems]


def test_a_shop_without_knowledge_has_the_shipped_one(shop: Path) -> None:
    book, problems = load_with_own(SMALL, shop)
    assert (set(book.causes), problems) == (set(small_book().causes), ())


def test_own_files_add_to_the_shipped_ones(shop: Path) -> None:
    put(shop, SLACK, belt("slack-belt"))
    book, problems = load_with_own(SMALL, shop)
    assert set(book.causes) - set(small_book().causes) == {"slack-belt"}
    assert problems == ()
    assert (book.origin("slack-belt"), book.origin("lumpy-belt")) == ("your shop", "")


def test_a_faulty_file_is_left_out_alone_and_named_with_its_line(shop: Path) -> None:
    put(shop, SLACK, belt("slack-belt"))
    put(shop, "knowledge/causes/drive/wet-belt.yaml", belt("wet-belt").replace("status", "sttus"))
    book, problems = load_with_own(SMALL, shop)
    assert set(book.causes) - set(small_book().causes) == {"slack-belt"}
    assert [(p.file, p.line) for p in problems] == [
        ("shop/knowledge/causes/drive/wet-belt.yaml", 4)
    ]
    assert problems[0].suggestion == "status"


@pytest.mark.parametrize(
    "text",
    ["id: [", "\tid: x", "", "a: &a [x]\nb: *a\n", "- 1\n- 2\n", "id: no-more\nname: x\n"],
    ids=["open bracket", "tab", "empty", "alias", "a list", "half written"],
)
def test_whatever_stands_in_a_file_the_shipped_knowledge_works(shop: Path, text: str) -> None:
    put(shop, SLACK, text)
    book, problems = load_with_own(SMALL, shop)
    assert set(book.causes) == set(small_book().causes)
    assert {p.file for p in problems} == {"shop/" + SLACK}


def test_what_needs_a_file_that_is_left_out_is_left_out_too(shop: Path) -> None:
    put(shop, "knowledge/findings/felt.yaml", "- id: felt-crushed\n  kind: sgn\n")
    text = belt("slack-belt")
    assert "finding: bars-evenly-spaced" in text
    put(shop, SLACK, text.replace("finding: bars-evenly-spaced", "finding: felt-crushed"))
    files = {file for file, _, _ in told(shop)}
    assert files == {"shop/knowledge/findings/felt.yaml", "shop/" + SLACK}
    assert set(load_with_own(SMALL, shop)[0].causes) == set(small_book().causes)


def test_an_id_that_is_taken_needs_a_reason(shop: Path) -> None:
    put(shop, "knowledge/causes/drive/lumpy-belt.yaml", belt("lumpy-belt"))
    ((file, line, what),) = told(shop)
    assert (file, line) == ("shop/knowledge/causes/drive/lumpy-belt.yaml", 1)
    assert what.startswith("'lumpy-belt' is in the knowledge already (small_knowledge/causes/")


@pytest.mark.parametrize("reason", ["yes", "true", "no"])
def test_a_bare_yes_is_no_reason(shop: Path, reason: str) -> None:
    put(
        shop, "knowledge/causes/drive/lumpy-belt.yaml", f"{belt('lumpy-belt')}overrides: {reason}\n"
    )
    ((_, _, what),) = told(shop)
    assert what == f"'{reason}' gives no reason"


def test_with_a_reason_the_own_entry_stands_in_place_of_the_shipped_one(shop: Path) -> None:
    text = belt("lumpy-belt").replace("how_common: occasional", "how_common: common")
    assert text != belt("lumpy-belt")
    put(shop, "knowledge/causes/drive/lumpy-belt.yaml", text + WHY)
    book, problems = load_with_own(SMALL, shop)
    assert problems == ()
    assert book.causes["lumpy-belt"].how_common == "common"
    assert book.overridden == {"lumpy-belt": WHY.removeprefix("overrides: ").strip()}


def test_there_must_be_something_to_override(shop: Path) -> None:
    put(shop, "knowledge/causes/drive/lumpi-belt.yaml", belt("lumpi-belt") + WHY)
    _, problems = load_with_own(SMALL, shop)
    assert problems[0].what == "there is no cause 'lumpi-belt' to override"
    assert problems[0].suggestion == "lumpy-belt"


def test_the_shipped_knowledge_overrides_nothing(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, "causes/drive/lumpy-belt.yaml", "status:", f"{WHY}status:")
    with pytest.raises(BookError, match="there is nothing to override"):
        load_book(folder)


@pytest.mark.parametrize(
    "file",
    ["stops/cracked-wheel.yaml", "checks/wheel/ring-test.yaml"],
    ids=["a stop", "its question"],
)
def test_nothing_stands_in_place_of_what_guards_against_a_hazard(shop: Path, file: str) -> None:
    put(shop, f"knowledge/{file}", (SMALL / file).read_text() + WHY)
    says = [what for _, _, what in told(shop)]
    assert any(w.endswith("guards against a hazard: nothing stands in its place") for w in says)
    shipped = load_with_own(SMALL, shop)[0]
    assert shipped.stops == small_book().stops
    assert shipped.checks == small_book().checks


def test_a_question_of_the_shop_cannot_clear_a_shipped_stop(shop: Path) -> None:
    text = (SMALL / "checks/wheel/ring-test.yaml").read_text()
    text = text.replace("ring-test", "looked-at").replace("osha-looked-at", "osha-ring-test")
    put(shop, "knowledge/checks/wheel/looked-at.yaml", text)
    ((_, line, what),) = told(shop)
    assert what == "'cracked-wheel' is a shipped stop: only its shipped question clears it"
    assert "clears" in text.splitlines()[line - 1]
    put(
        shop, "knowledge/checks/wheel/looked-at.yaml", text.replace(", clears: [cracked-wheel]", "")
    )
    book, problems = load_with_own(SMALL, shop)
    assert (problems, "looked-at" in book.checks) == ((), True)


def test_the_scale_of_words_is_not_the_shops_to_change(shop: Path) -> None:
    put(shop, "knowledge/words.yaml", (SMALL / "words.yaml").read_text())
    assert told(shop) == [
        ("shop/knowledge/words.yaml", 0, "the scale of words is that of the shipped knowledge")
    ]


def test_a_fault_that_only_shows_elsewhere_is_laid_to_the_file_that_makes_it(shop: Path) -> None:
    text = (SMALL / "mechanisms.yaml").read_text().split("- id: waves-cut-in-the-work")[1]
    ring = "- id: waves-cut-in-the-work" + text.split("\n- id:")[0]
    ring = ring.replace(f"to: {'even-bars-across-travel'}", "to: wheel-lifts-once-a-turn")
    put(shop, "knowledge/mechanisms.yaml", f"{ring.rstrip()}\n  {WHY}")
    book, problems = load_with_own(SMALL, shop)
    assert {p.file for p in problems} == {"shop/knowledge/mechanisms.yaml"}
    assert set(book.mechanisms) == set(small_book().mechanisms)


def test_a_fault_of_the_shipped_knowledge_is_not_laid_to_the_shop(
    shop: Path, tmp_path: Path
) -> None:
    folder = copy_small(tmp_path)
    change(folder, "causes/drive/lumpy-belt.yaml", "status:", "sttus:")
    put(shop, SLACK, belt("slack-belt"))
    with pytest.raises(BookError, match="sttus"):
        load_with_own(folder, shop)
