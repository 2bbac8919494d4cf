"""What feeds, spark-out, crossfeed and a slower wheel conclude on the shipped knowledge.

The numbers are worked out by hand beside each case.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.book.loader import load_book
from diagnose.book.model import Book
from diagnose.case.files import load_case
from diagnose.reasoning.gates import RAISED
from diagnose.reasoning.reason import Reasoned, reason

KNOWLEDGE = Path(__file__).parents[2] / "knowledge"


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book(KNOWLEDGE)


def told(book: Book, folder: Path, complaint: str, **answers: str) -> Reasoned:
    """The case of one complaint and these answers, reasoned through."""
    lines = [f"title: a case of {complaint}", f"complaint: [{complaint}]", "entries:"]
    lines += [
        f"  - {{answer: {name.replace('_', '-')}, value: {value}}}"
        for name, value in answers.items()
    ]
    path = folder / "case.yaml"
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return reason(book, load_case(path, book))


def most(reasoned: Reasoned, finding: str) -> str:
    words = reasoned.read.deduced.words[finding]
    return max(words.items(), key=lambda item: item[1])[0]


# 0.02 mm x 0.5^0 = 20 um; 0.005 x 0.5^3 = 0.6 um; 0.005 x 0.5^20 = 5e-9 um
@pytest.mark.parametrize(
    ("depth", "passes", "state"),
    [
        ("0.02 mm", "0", "too-few"),
        ("0.005 mm", "3", "enough"),
        ("0.005 mm", "20", "more-than-needed"),
    ],
)
def test_passes_without_feed_are_judged_by_what_they_leave(
    book: Book, tmp_path: Path, depth: str, passes: str, state: str
) -> None:
    case = told(
        book, tmp_path, "rough-without-pattern", depth_of_cut=depth, spark_out_strokes=passes
    )
    assert most(case, "spark-out-state") == state


# 13 mm / 4 = 3.3 times; / 2 = 6.5 times; / 0.5 = 26 times
@pytest.mark.parametrize(
    ("step", "passes"),
    [("4 mm", "few-passes"), ("2 mm", "some-passes"), ("0.5 mm", "many-passes")],
)
def test_a_crossfeed_is_judged_by_how_often_each_place_is_passed_over(
    book: Book, tmp_path: Path, step: str, passes: str
) -> None:
    case = told(book, tmp_path, "steps-at-each-crossfeed", crossfeed=step, wheel_width="13 mm")
    assert most(case, "passes-over-each-place") == passes


# threshold 6.2 + 7.2 x 178^.25 / (a^.75 x 200^.5): 12.4 at 0.2 mm, 65 at 0.01, 151 at 0.003 J/mm3
@pytest.mark.parametrize(
    ("depth", "room"), [("0.2 mm", "beyond"), ("0.01 mm", "near"), ("0.003 mm", "far")]
)
def test_room_before_burn_shrinks_with_the_depth(
    book: Book, tmp_path: Path, depth: str, room: str
) -> None:
    case = told(
        book, tmp_path, "burnt-patches", work_material="hardened-steel",
        wheel_diameter="178 mm", table_speed="12 m/min", depth_of_cut=depth,
    )  # fmt: skip
    assert most(case, "burn-room") == room


def slower_wheel(book: Book, folder: Path, turns: str, bars: str) -> Reasoned:
    return told(
        book, folder, "even-bars-across-travel", drive="inverter-direct", table_speed="10 m/min",
        spindle_speed="2850 rpm", bars_in_25mm="7.1", slower_wheel_speed=turns,
        bars_at_slower_wheel=bars,
    )  # fmt: skip


# 1900 / 2850 = 0.667 and 4.73 / 7.1 = 0.667: it followed; 7.1 again: it kept its rate
@pytest.mark.parametrize(
    ("bars", "rate"), [("4.73", "follows-the-wheel"), ("7.1", "stays-the-same")]
)
def test_a_slower_wheel_tells_what_the_wheel_drives_from_what_keeps_its_rate(
    book: Book, tmp_path: Path, bars: str, rate: str
) -> None:
    assert most(slower_wheel(book, tmp_path, "1900 rpm", bars), "rate-at-slower-wheel") == rate


def test_a_wheel_hardly_slower_tells_nothing(book: Book, tmp_path: Path) -> None:
    words = slower_wheel(book, tmp_path, "2700 rpm", "6.7").read.deduced.words
    assert "rate-at-slower-wheel" not in words


def test_bars_that_keep_their_rate_clear_the_balance_of_the_wheel(
    book: Book, tmp_path: Path
) -> None:
    def chance(bars: str) -> float:
        ranked = slower_wheel(book, tmp_path, "1900 rpm", bars).belief.ranked
        return next(r.acts for r in ranked if r.cause == "unbalanced-wheel")

    assert chance("7.1") < chance("4.73")


def test_a_crack_holds_the_part_whatever_else_is_said(book: Book, tmp_path: Path) -> None:
    case = told(book, tmp_path, "heat-cracks", before_anything_runs="none")
    states = {hazard.stop.id: hazard.state for hazard in case.read.hazards}
    assert states["crack-in-the-part"] == RAISED
