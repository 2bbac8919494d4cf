"""A filled slip, typed in as one line, made into a case; or refused with one message."""

from __future__ import annotations

import re

from diagnose.book.answers import AnswerError, read_answer
from diagnose.book.model import Book
from diagnose.book.numbered import numbered
from diagnose.book.problems import BookError, Problem
from diagnose.case.entries import UNKNOWN, Case, Entry
from diagnose.view.slip import SlipRow, SlipView, complaint_code, slip_view

NOT_KNOWN = "-"
HOW = "type the code of the slip, the boxes in order with a blank between, - for not known, the sum"
_NUMBER = re.compile(r"[\d.,/+-]+")


def case_of_slip(book: Book, text: str) -> Case:
    """The case of a slip typed as `CODE 2 3 - 1,4 9.5 7`.

    Raises BookError with one problem: the code, the number of boxes, the sum, or one box.
    """
    words = text.split()
    if not words:
        raise _fault("the slip is empty", HOW)
    slip = _slip(book, words[0].upper())
    boxes, wanted = words[1:], len(slip.rows) + 1
    if len(boxes) != wanted:
        what = f"the slip {slip.code} has {wanted - 1} boxes and the sum; {len(boxes)} were typed"
        raise _fault(what, HOW)
    answers, total = boxes[:-1], check_digit(boxes[:-1])
    if boxes[-1] != total:
        what = f"the sum does not fit: the boxes as typed give {total}, not {boxes[-1]}"
        raise _fault(what, "compare every box with the slip")
    entries = tuple(
        _entry(book, row, typed, number)
        for number, (row, typed) in enumerate(zip(slip.rows, answers, strict=True), 1)
    )
    return Case(slip.complaint, (slip.symptom,), entries)


def check_digit(boxes: list[str]) -> str:
    """The last digit of the sum of all digits written in the boxes; units are not counted."""
    written = (_NUMBER.match(box) for box in boxes)
    return str(sum(int(d) for w in written if w for d in w.group() if d.isdigit()) % 10)


def told(book: Book, case: Case) -> list[str]:
    """What was read from a slip, a line for each question, to compare with the paper."""
    lines = []
    for entry in case.entries:
        check = book.checks[entry.name]
        parts = entry.value.split(", ") if check.options else [entry.value]
        says = [check.by_option[p].say if p in check.by_option else p for p in parts]
        lines.append(f"{check.ask} {'; '.join(says)}")
    return lines


def _slip(book: Book, code: str) -> SlipView:
    meant = [s for s in book.symptoms if complaint_code(s) == code[:3]]
    if not meant:
        raise _fault(f"no slip has the code {code}", "copy the letters at the top of the slip")
    for symptom in meant:
        slip = slip_view(book, symptom)
        if slip.code == code:
            return slip
    mend = f"print it anew: diagnose slip {meant[0]}, or look at its last two letters"
    raise _fault(f"the slip {code} was not printed from this knowledge", mend)


def _entry(book: Book, row: SlipRow, typed: str, number: int) -> Entry:
    if typed == NOT_KNOWN:
        return Entry("answer", row.check, UNKNOWN)
    check = book.checks[row.check]
    try:
        value = read_answer(check, _value(row, typed, numbered(check)), numbered=False)
    except AnswerError as error:
        raise _fault(f"box {number} ({row.ask}): {error.what}", error.mend) from None
    return Entry("answer", row.check, value, "said" if row.answers else "measured")


def _value(row: SlipRow, typed: str, options: dict[str, str]) -> str:
    if not row.answers:
        bare = _NUMBER.fullmatch(typed)
        return f"{typed} {row.unit}".strip() if bare else typed
    parts = typed.split(",")
    wrong = [p for p in parts if p not in options]
    if wrong or (len(parts) > 1 and not row.several):
        last = max(options, key=int)
        mend = f"one number up to {last}" + (", several with commas" if row.several else "")
        raise AnswerError(f"there is no answer {wrong[0] if wrong else typed}", mend)
    return ", ".join(options[p] for p in parts)


def _fault(what: str, mend: str) -> BookError:
    return BookError([Problem("slip", 0, 0, what, mend, "")])
