"""A pocket slip: filled at the machine, typed in later, and refused when it is mistyped."""

from __future__ import annotations

import pytest

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from diagnose.book.numbered import numbered
from diagnose.book.problems import BookError
from diagnose.case.entries import UNKNOWN
from diagnose.report.slip_page import render_slip
from diagnose.view.slip import SlipRow, SlipView, complaint_code, slip_view
from diagnose.view.slip_typed import case_of_slip, check_digit, told
from tests.report.reading import parsed, said, with_every_text
from tests.report.test_hostile_text import ATTACKS

BARS = "even-bars-across-travel"


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book(knowledge_folder())


@pytest.fixture(scope="module")
def slip(book: Book) -> SlipView:
    return slip_view(book, BARS)


def filled(row: SlipRow) -> str:
    """The last answer of a row, or its example with the unit left out."""
    return row.answers[-1][0] if row.answers else row.example.split()[0]


def line(slip: SlipView, boxes: list[str]) -> str:
    return " ".join([slip.code, *boxes, check_digit(boxes)])


def test_every_complaint_has_a_code_of_its_own(book: Book) -> None:
    assert len({complaint_code(s) for s in book.symptoms}) == len(book.symptoms)


def test_the_gate_question_comes_first_and_turning_last(book: Book, slip: SlipView) -> None:
    assert book.checks[slip.rows[0].check].gate
    turning = [row.turning for row in slip.rows]
    assert turning == sorted(turning)
    assert len(slip.rows) >= 4


def test_what_was_written_becomes_the_case(book: Book, slip: SlipView) -> None:
    boxes = [filled(row) for row in slip.rows]
    case = case_of_slip(book, line(slip, boxes).lower())
    assert case.complaint == (BARS,)
    for row, box, entry in zip(slip.rows, boxes, case.entries, strict=True):
        check = book.checks[row.check]
        assert entry.name == row.check
        wanted = numbered(check)[box] if row.answers else f"{box} {row.unit}".strip()
        assert entry.value == wanted
    assert len(told(book, case)) == len(slip.rows)


def test_a_dash_is_not_known_and_clears_nothing(book: Book, slip: SlipView) -> None:
    case = case_of_slip(book, line(slip, ["-"] * len(slip.rows)))
    assert {e.value for e in case.entries} == {UNKNOWN}


def test_every_single_digit_typed_wrong_is_refused(book: Book, slip: SlipView) -> None:
    boxes = [filled(row) for row in slip.rows]
    total = check_digit(boxes)
    for place, box in enumerate(boxes):
        for digit in "0123456789":
            if box != digit and len(box) == 1:
                wrong = [*boxes[:place], digit, *boxes[place + 1 :]]
                with pytest.raises(BookError, match="the sum does not fit"):
                    case_of_slip(book, " ".join([slip.code, *wrong, total]))


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (lambda _: [], "the slip is empty"),
        (lambda words: ["SSSSS", *words[1:]], "no slip has the code"),
        (lambda words: [words[0][:3] + "ZZ", *words[1:]], "not printed from this knowledge"),
        (lambda words: words[:-1], "boxes and the sum"),
        (lambda words: [*words, "0"], "boxes and the sum"),
    ],
)
def test_a_mistyped_line_is_refused_with_one_message(
    book: Book, slip: SlipView, change: object, message: str
) -> None:
    words = line(slip, [filled(row) for row in slip.rows]).split()
    with pytest.raises(BookError, match=message) as refused:
        case_of_slip(book, " ".join(change(words)))  # type: ignore[operator]  # drawn by name
    assert len(refused.value.problems) == 1


def test_a_number_that_is_no_answer_names_its_box(book: Book, slip: SlipView) -> None:
    boxes = [filled(row) for row in slip.rows]
    at = next(n for n, row in enumerate(slip.rows) if row.answers and not row.several)
    boxes[at] = "99"
    with pytest.raises(BookError, match=rf"box {at + 1} .*there is no answer 99"):
        case_of_slip(book, line(slip, boxes))


def test_the_sheet_says_every_question_and_answer(slip: SlipView) -> None:
    text = said(parsed(render_slip(slip)))
    for row in slip.rows:
        assert row.ask in text
        assert all(f"{number} {words}" in text for number, words in row.answers)
    assert slip.code in text


@pytest.mark.parametrize("text", ATTACKS)
def test_no_text_breaks_out_of_its_place(slip: SlipView, text: str) -> None:
    honest = {e.tag for e in parsed(render_slip(slip)).iter()}
    tree = parsed(render_slip(with_every_text(slip, text)))
    assert {e.tag for e in tree.iter()} <= honest
    assert " ".join(text.split()) in said(tree)
