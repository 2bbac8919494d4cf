"""The pocket slip of a complaint: the first questions on one sheet, a box for a number at each.

What is written in the boxes is typed in later as one line: the code of the slip, an answer for
each box, and the last digit of the sum of all digits written. The code holds the complaint and
the questions, so that a slip printed from other knowledge is refused and never misread.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import ceil

from diagnose.book.model import Book, Check
from diagnose.book.numbered import numbered
from diagnose.case.entries import Case
from diagnose.reasoning.gates import TURNING, safety_checks, turns
from diagnose.reasoning.reason import Reasoned, reason

MOST_BOXES = 10
LINES = 35.0  # that a sheet of Letter has for questions in 12 point
SHORT = 3.4  # lines of a question that may take more than half of what is left of the sheet
ACROSS = 76  # signs in a line
LETTERS = "ABCDEFGHJKLMNPQRTUVWXY"  # none that a hand takes for a digit


@dataclass(frozen=True)
class SlipRow:
    """One question with its box. `answers`: number -> words; `unit`: of a number written bare."""

    check: str
    ask: str
    minutes: float
    turning: bool
    several: bool
    answers: tuple[tuple[str, str], ...]
    unit: str
    example: str


@dataclass(frozen=True)
class SlipView:
    """A slip to fill in at the machine."""

    code: str
    symptom: str
    complaint: str
    sketch: str
    version: str
    rows: tuple[SlipRow, ...]


def slip_view(book: Book, symptom: str) -> SlipView:
    """The slip of one complaint: the gate question first, what needs the wheel turning last."""
    checks = _chosen(book, symptom)
    rows = tuple(map(_row, checks))
    told = book.symptoms[symptom]
    code = complaint_code(symptom) + _letters(repr([(r.check, r.answers, r.unit) for r in rows]), 2)
    return SlipView(code, symptom, told.name, told.sketch, book.version, rows)


def complaint_code(symptom: str) -> str:
    """Three letters for a complaint."""
    return _letters(symptom, 3)


def _letters(text: str, count: int) -> str:
    digest = hashlib.sha256(text.encode("utf-8")).digest()
    return "".join(LETTERS[digest[n] % len(LETTERS)] for n in range(count))


def _chosen(book: Book, symptom: str) -> list[Check]:
    reasoned = reason(book, Case("", (symptom,)))
    chosen: list[Check] = []
    left = LINES
    for check in _wanted(book, symptom, reasoned):
        if check in chosen or len(chosen) == MOST_BOXES or check.kind == "file" or check.trial:
            continue
        lines = _lines(check)
        if lines <= (left if check.gate else min(left, max(SHORT, left / 2))):
            chosen.append(check)
            left -= lines
    return sorted(chosen, key=turns)


def _wanted(book: Book, symptom: str, reasoned: Reasoned) -> Iterator[Check]:
    read = reasoned.read
    gates = [c for c in safety_checks(book, read.hazards, read.gathered) if c.gate]
    yield from gates
    able = {c.check for c in reasoned.valued.candidates}
    firsts = book.symptoms[symptom].first_questions
    yield from (book.checks[n] for n in firsts if n in able)
    best = sorted(reasoned.valued.candidates, key=lambda c: (-c.rate, c.check))
    yield from (book.checks[c.check] for c in best)


def _lines(check: Check) -> float:
    """How many printed lines a question takes, with the space round it."""
    full, at = ceil((len(check.ask) + 24) / ACROSS), ACROSS
    for option in check.options:
        wide = len(option.say) + 5
        full, at = (full + 1, wide) if at + wide > ACROSS else (full, at + wide)
    return full + (0.3 if check.options else 1.3)


def _row(check: Check) -> SlipRow:
    answers = tuple((n, check.by_option[o].say) for n, o in _in_order(numbered(check).items()))
    unit = re.sub(r"^[\d.,/ +-]+", "", check.example) if check.kind == "number" else ""
    return SlipRow(
        check.id,
        check.ask,
        check.minutes,
        TURNING in check.needs,
        check.kind == "any",
        answers,
        unit,
        check.example,
    )


def _in_order(pairs: Iterable[tuple[str, str]]) -> list[tuple[str, str]]:
    return sorted(pairs, key=lambda pair: int(pair[0]))
