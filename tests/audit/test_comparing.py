"""What an edit of the knowledge moves: examples, cases, closed cases."""

from __future__ import annotations

import json
from pathlib import Path

from click.testing import CliRunner

from diagnose.audit.comparing import changes, compare, stand
from diagnose.audit.comparison_text import comparison_text
from diagnose.book.loader import load_book
from diagnose.book.model import Book
from diagnose.case.entries import Case, Closed, Entry
from diagnose.cli.commands import diagnose
from tests.small import SMALL, change, copy_small, small_book

UNBALANCED = "causes/wheel/unbalanced-wheel.yaml"
BARS = Case(
    "bars on a plate",
    ("even-bars-across-travel",),
    (Entry("answer", "bars-even", "no"), Entry("correct", "bars-even", "yes", replaces=1)),
    closed=Closed("2026-03-14", ("unbalanced-wheel",)),
)


def rarer(tmp_path: Path) -> Book:
    folder = copy_small(tmp_path)
    change(folder, UNBALANCED, "how_common: common", "how_common: 0.0001")
    return load_book(folder)


def test_nothing_moves_between_a_book_and_itself() -> None:
    found = compare(small_book(), small_book(), [BARS], [BARS])
    assert found.changes == {}
    assert {m.verdict for m in found.moves} == {"same"}
    examples = sum(len(c.examples) for c in small_book().causes.values())
    assert len(found.moves) == examples + 2


def test_a_cause_made_rare_puts_its_examples_and_closed_cases_back(tmp_path: Path) -> None:
    found = compare(small_book(), rarer(tmp_path), [BARS], [BARS])
    worse = {(m.kind, m.cause) for m in found.moves if m.verdict == "worse"}
    assert ("example", "unbalanced-wheel") in worse
    assert ("closed case", "unbalanced-wheel") in worse
    assert found.changes == {"cause": {"changed": ("unbalanced-wheel",)}}
    back = compare(rarer(tmp_path / "again"), small_book(), (), [BARS])
    assert ("closed case", "better") in {(m.kind, m.verdict) for m in back.moves}


def test_an_example_that_must_not_be_first_gets_worse_when_it_becomes_first(
    tmp_path: Path,
) -> None:
    folder = copy_small(tmp_path)
    change(folder, UNBALANCED, "how_common: common", "how_common: 0.9")
    change(folder, UNBALANCED, "neighbour-off: gone", "neighbour-off: same")
    often = load_book(folder)
    moves = compare(small_book(), often).moves
    (move,) = [m for m in moves if m.wanted == "not first" and m.cause == "unbalanced-wheel"]
    assert move.before.rank == 1 or move.after.rank == 1


def test_corrections_are_put_in_place_before_a_case_is_ranked() -> None:
    plain = Case("x", BARS.complaint, (Entry("answer", "bars-even", "yes"),))
    book = small_book()
    assert stand(book, BARS, "unbalanced-wheel") == stand(book, plain, "unbalanced-wheel")


def test_an_answer_that_the_other_book_lacks_is_left_out_and_said() -> None:
    odd = Case("x", BARS.complaint, (Entry("answer", "smell-of-it", "oily"),))
    assert stand(small_book(), odd).note == "without the answer to smell-of-it"
    lost = Case("x", ("no-such-complaint",), ())
    assert stand(small_book(), lost).note == "no complaint that this knowledge has"


def test_what_came_and_went_is_named(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    with (folder / "cautions.yaml").open("a", encoding="utf-8") as file:
        file.write("- {id: eyes, say: Wear glasses., source: common-practice}\n")
    book = load_book(folder)
    assert changes(small_book(), book) == {"caution": {"new": ("eyes",)}}
    assert changes(book, small_book()) == {"caution": {"gone": ("eyes",)}}


def test_the_text_names_what_got_worse_first(tmp_path: Path) -> None:
    text = comparison_text(compare(small_book(), rarer(tmp_path), (), [BARS]))
    assert text.index("Worse:") < text.index("closed case 'bars on a plate'")
    assert "cause, changed: unbalanced-wheel" in text


def test_the_command_ends_with_0_and_prints_text_or_data(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, UNBALANCED, "how_common: common", "how_common: 0.0001")
    shop = ("--shop", (tmp_path / "none").as_posix())
    words = ["knowledge", "compare", *shop, SMALL.as_posix(), folder.as_posix()]
    told = CliRunner().invoke(diagnose, words)
    assert told.exit_code == 0
    assert "1 worse" in told.stdout or "worse" in told.stdout
    data = json.loads(CliRunner().invoke(diagnose, [*words, "--json"]).stdout)
    assert data["schema"] == 1
    assert any(m["verdict"] == "worse" for m in data["moves"])


def test_a_folder_that_is_not_there_is_one_message(tmp_path: Path) -> None:
    words = ["knowledge", "compare", SMALL.as_posix(), (tmp_path / "none").as_posix()]
    told = CliRunner().invoke(diagnose, words)
    assert told.exit_code == 1
    assert "there is no such folder" in told.stdout
