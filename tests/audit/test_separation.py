"""How far checks separate causes, and which pairs none separates."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.audit.separation import nearest_pairs, unseparated
from diagnose.audit.signatures import FAR, apart, plain, separation, signatures
from diagnose.audit.study import Study
from diagnose.book.loader import load_book
from tests.audit.sound import sound
from tests.small import change, small_book


def test_total_variation_is_half_the_sum_of_the_differences() -> None:
    assert apart((1.0, 0.0), (0.0, 1.0)) == 1.0
    assert apart((0.5, 0.5), (0.5, 0.5)) == 0.0
    assert apart((0.2, 0.3, 0.5), (0.5, 0.3, 0.2)) == pytest.approx(0.3)


def test_the_row_of_a_check_is_the_written_total() -> None:
    book = small_book()
    signature = signatures(book)["wheel-left-undressed"]
    row = signature.rows["wheel-look"]
    assert row[1] == pytest.approx(0.66)
    assert row[2] == pytest.approx(0.2)
    assert sum(row) == pytest.approx(1.0)


def test_every_row_of_answers_sums_to_one() -> None:
    book = small_book()
    for signature in signatures(book).values():
        for check, row in signature.rows.items():
            assert sum(row) == pytest.approx(1.0), (signature.cause, check)


def test_a_gate_and_a_report_separate() -> None:
    book = small_book()
    found = signatures(book)
    ways = separation(book, found["shaking-floor"], found["unbalanced-wheel"])
    by_name = {check.id: far for far, check in ways}
    assert by_name["neighbour-off"] == pytest.approx(0.77 - 0.09)
    assert found["lumpy-belt"].rows["drive-kind"] == (1.0, 0.0)


def test_a_check_that_a_cause_does_not_move_is_not_in_its_signature() -> None:
    book = small_book()
    assert "coolant-stream" not in signatures(book)["dirt-under-part"].rows
    assert sum(plain(book, book.checks["coolant-stream"])) == pytest.approx(1.0)


def test_a_pair_without_a_quick_check_is_named_with_what_would_separate_it(
    tmp_path: Path,
) -> None:
    folder = sound(tmp_path)
    assert unseparated(Study(load_book(folder))) == []
    for check in ("wheel/wheel-look", "machine/coolant-stream"):
        change(folder, f"checks/{check}.yaml", "minutes: 1\n", "minutes: 30\n")
    change(folder, "checks/machine/stream-by-lamp.yaml", "minutes: 0.5", "minutes: 40")
    (pair,) = unseparated(Study(load_book(folder)))
    assert (pair.one, pair.other) == ("coolant-misses-the-cut", "wheel-left-undressed")
    assert pair.far < FAR
    assert pair.would.startswith("coolant-stream (30 min")


def test_the_least_told_apart_come_first(tmp_path: Path) -> None:
    pairs = nearest_pairs(Study(load_book(sound(tmp_path))))
    assert [p.far for p in pairs] == sorted(p.far for p in pairs)
