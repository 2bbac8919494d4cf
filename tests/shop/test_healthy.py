"""What is not as it was when the machine ground well is shown; what is the same is not."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.shop.card_text import put_healthy
from diagnose.shop.cards import load_shop
from diagnose.shop.healthy import Healthy, differences
from tests.shop.shops import MACHINE, put
from tests.small import small_book

GOOD = Healthy(
    "north",
    "2026-01-12",
    answers={"spindle-speed": "2850 rpm", "coolant-stream": "thin", "bar-spacing": "6 mm"},
    readings={"idle-shake": "0.4 mm/s", "chuck-map": "all within 3 um"},
)


def differing(told: dict[str, str], now: dict[str, str] | None = None) -> dict[str, str]:
    return {d.id: d.times for d in differences(GOOD, told, now or {}, small_book())}


def test_a_number_differs_when_the_bands_do_not_meet() -> None:
    # bar-spacing is told within 5 %
    assert differing({"bar-spacing": "6.3 mm"}) == {}
    assert differing({"bar-spacing": "9 mm"}) == {"bar-spacing": "1.5 times"}


def test_the_give_or_take_of_an_answer_counts() -> None:
    assert differing({"bar-spacing": "9 +- 3 mm"}) == {}


def test_a_number_in_other_units_is_the_same_number() -> None:
    assert differing({"bar-spacing": "0.236 in"}) == {}


def test_readings_of_ones_own_are_compared_by_name_and_unit() -> None:
    assert differing({}, {"idle-shake": "1.1 mm/s"}) == {"idle-shake": "2.8 times"}
    assert differing({}, {"idle-shake": "0.42 mm/s"}) == {}
    assert differing({}, {"chuck-map": "one corner 20 um low"}) == {"chuck-map": ""}
    assert differing({}, {"chuck-map": "all  within 3 um"}) == {}


def test_what_was_not_written_down_then_is_no_difference() -> None:
    assert differing({"table-speed": "15 m/min"}, {"block-finish": "1 um"}) == {}


def test_without_a_record_nothing_differs() -> None:
    assert differences(None, {"bar-spacing": "9 mm"}, {}, small_book()) == ()


def test_the_latest_record_of_a_machine_counts_and_the_earlier_stays(tmp_path: Path) -> None:
    put(tmp_path, "machines/north.yaml", MACHINE)
    first = put_healthy(tmp_path, GOOD)
    again = put_healthy(tmp_path, Healthy("north", "2026-02-01", readings={"idle-shake": "1 mm/s"}))
    assert first != again
    shop = load_shop(tmp_path, small_book())
    assert shop.healthy["north"].date == "2026-02-01"
    assert shop.problems == ()


def test_a_record_written_is_read_back_the_same(tmp_path: Path) -> None:
    put(tmp_path, "machines/north.yaml", MACHINE)
    put_healthy(tmp_path, GOOD)
    read = load_shop(tmp_path).healthy["north"]
    assert (read.answers, read.readings) == (GOOD.answers, GOOD.readings)


@pytest.mark.parametrize(
    ("text", "line", "says"),
    [
        ("machine: nrth\ndate: 2026-01-01\n", 1, "the shop has no machine 'nrth'"),
        ("machine: north\ndate: 12.1.2026\n", 2, "'12.1.2026' is no day"),
        ("machine: north\ndate: 2026-01-01\nanswers: {bar-spacing: 6}\n", 3, "has no unit"),
    ],
)
def test_a_fault_of_a_record_is_named_with_its_line(
    tmp_path: Path, text: str, line: int, says: str
) -> None:
    shop = tmp_path / "shop"
    put(shop, "machines/north.yaml", MACHINE)
    put(shop, "healthy/a.yaml", text)
    (problem,) = load_shop(shop, small_book()).problems
    assert (problem.file, problem.line) == ("shop/healthy/a.yaml", line)
    assert says in problem.what
