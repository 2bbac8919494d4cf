"""One number measured brings the true cause from outside the first three to the top.

Four invented cases on the shipped knowledge. Each ends with the deciding reading; the trace says
which rule worked it out, from what, and the account gives that finding the weight.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

import pytest

from diagnose.book.loader import load_book
from diagnose.book.model import Book
from diagnose.case.files import load_case
from diagnose.cli.commands import diagnose
from diagnose.cli.exits import run
from diagnose.physics.catalogue import calculation
from diagnose.reasoning.explain import account, how
from diagnose.reasoning.reason import Reasoned, reason

CASES = Path(__file__).parent / "readings"
KNOWLEDGE = Path(__file__).parents[2] / "knowledge"


@dataclass(frozen=True)
class Decided:
    """A case, the reading that decides it, the cause, and the finding, value, rules and number."""

    case: str
    reading: str
    cause: str
    finding: str
    value: str
    rules: tuple[str, ...]
    number: str
    worth: float

    def __str__(self) -> str:
        return self.case


# The numbers are worked out by hand: 10 m/min / (25 mm / 1.5) / 2850 rpm, 0.21 bars a turn;
# 0.05 x 2 mm x 12 m/min x 60 J/mm3 / (0.7 x 0.37 kW), 4.6 times the power; a depth of 0.015 mm that
# nobody measured is 0.187 mm of diamond, x 950 turns / 13 mm, 14 times over each place; equal
# spacing at two speeds, 0.
DECIDED = [
    Decided("slow-bars-of-a-belt", "bars-in-25mm", "belt-worn-or-set", "bar-rhythm",
            "slower-than-the-wheel", ("bars-to-spacing", "bars-against-the-wheel"),
            "bars-per-turn", 0.21),
    Decided("cut-over-the-power", "depth-of-cut", "cut-too-deep", "cut-size", "over-the-power",
            ("cut-in-hard-steel", "cut-over-the-power"), "share-of-power", 4.63),
    Decided("diamond-too-slow", "dress-seconds", "dressed-too-fine", "dress-fineness",
            "very-fine-dress", ("dress-to-overlap",), "dress-overlaps", 13.69),
    Decided("rack-at-two-table-speeds", "bars-at-quicker-table", "table-rack-or-rollers",
            "spacing-at-other-speed", "stays-in-place", ("bars-at-two-table-speeds",),
            "bars-followed-the-table", 0.0),
]  # fmt: skip


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book(KNOWLEDGE)


def before_and_after(book: Book, each: Decided) -> tuple[Reasoned, Reasoned]:
    case = load_case(CASES / f"{each.case}.yaml", book)
    assert case.entries[-1].name == each.reading
    return reason(book, replace(case, entries=case.entries[:-1])), reason(book, case)


def place(reasoned: Reasoned, cause: str) -> int:
    return 1 + [ranked.cause for ranked in reasoned.belief.ranked].index(cause)


@pytest.mark.parametrize("each", DECIDED, ids=str)
def test_one_reading_moves_the_true_cause_from_outside_the_first_three_to_first(
    book: Book, each: Decided
) -> None:
    before, after = before_and_after(book, each)
    assert place(before, each.cause) > 3
    assert place(after, each.cause) == 1


@pytest.mark.parametrize("each", DECIDED, ids=str)
def test_the_trace_says_which_sum_of_which_readings_did_it(book: Book, each: Decided) -> None:
    before, after = before_and_after(book, each)
    assert each.finding not in before.read.deduced.words
    chain = how(after, each.finding)
    assert {step.value for step in chain if step.concluded == each.finding} >= {each.value}
    assert set(each.rules) <= {step.rule for step in chain}
    assert each.reading in {fact for step in chain for fact in step.from_facts}
    number = after.read.deduced.numbers[each.number]
    assert number.value == pytest.approx(each.worth, rel=0.02, abs=1e-9)
    assert number.low <= each.worth <= number.high + 1e-9


@pytest.mark.parametrize("each", DECIDED, ids=str)
def test_the_account_gives_the_finding_the_most_weight(book: Book, each: Decided) -> None:
    _, after = before_and_after(book, each)
    shares = {s.item.name: s.weight for s in account(after, [each.cause])[0].shares}
    assert shares[each.finding] > 0
    assert shares[each.finding] == max(shares.values())


@pytest.mark.parametrize("each", DECIDED, ids=str)
def test_the_command_prints_how_the_finding_came_about(
    each: Decided, capsys: pytest.CaptureFixture[str]
) -> None:
    code = run(diagnose, ["rank", str(CASES / f"{each.case}.yaml"), "--how", each.finding])
    said = capsys.readouterr().out
    assert code in (0, 3)
    assert each.number in said


@pytest.mark.parametrize(
    ("count", "value"), [("5", "follows-the-speed"), ("7.5", "stays-in-place")]
)
def test_two_table_speeds_tell_time_from_place(book: Book, count: str, value: str) -> None:
    case = load_case(CASES / "rack-at-two-table-speeds.yaml", book)
    last = replace(case.entries[-1], value=count)
    words = reason(book, replace(case, entries=(*case.entries[:-1], last))).read.deduced.words
    assert max(words["spacing-at-other-speed"].items(), key=lambda kv: kv[1])[0] == value


def test_a_second_speed_too_near_the_first_decides_nothing(book: Book) -> None:
    case = load_case(CASES / "rack-at-two-table-speeds.yaml", book)
    near = [replace(e, value="11 m/min") if e.name == "quicker-table-speed" else e
            for e in case.entries]  # fmt: skip
    deduced = reason(book, replace(case, entries=tuple(near))).read.deduced
    assert "spacing-at-other-speed" not in deduced.words
    assert any("must lie between" in why for _, why in deduced.could_not)


# a published example of dressing: tip 0.015 in, 0.001 in deep, 406 mm wheel at 1410 rpm; the
# diamond goes 192.5 mm a minute for an overlap of 2 and half as fast for 4
@pytest.mark.parametrize(("travel", "overlap"), [(192.5, 2.0), (96.25, 4.0)])
def test_the_sum_of_the_dress_rule_gives_the_published_example(
    book: Book, travel: float, overlap: float
) -> None:
    work = book.rules["dress-to-overlap"].work_out
    assert work is not None
    width, tip, depth, turns = 0.025, 0.015 * 0.0254, 0.001 * 0.0254, 1410 / 60
    seconds = width / (travel / 1000 / 60)
    found = calculation(work.with_).function(
        face_time=seconds, wheel_width=width, turning_speed=turns, tip_radius=tip,
        dress_depth=depth,
    )  # fmt: skip
    assert found == pytest.approx(overlap, rel=0.005)


def test_the_overlap_carries_the_depth_of_the_dress_that_nobody_measured(book: Book) -> None:
    _, after = before_and_after(book, DECIDED[2])
    number = after.read.deduced.numbers["dress-overlaps"]
    # 0.01 mm deep is 0.154 mm of diamond, 0.02 mm deep 0.215 mm; 20 s of a hand are 17 to 23 s
    assert number.low == pytest.approx(0.1536 * 17 * 47.5 / 13, rel=0.01)
    assert number.high == pytest.approx(0.2154 * 23 * 47.5 / 13, rel=0.01)
