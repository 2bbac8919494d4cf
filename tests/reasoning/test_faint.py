"""Nothing is tried while it is but one chance among many and a look would still tell."""

from __future__ import annotations

from dataclasses import replace

import pytest

from diagnose.book.kept import load_kept
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from diagnose.case.entries import UNKNOWN, Case, Entry
from diagnose.reasoning.gates import turns
from diagnose.reasoning.policy import FAINT, LONGEST_LOOK, WORTH_A_LOOK, decide
from diagnose.reasoning.reason import Reasoned, reason


@pytest.fixture(scope="module")
def book() -> Book:
    return load_kept(knowledge_folder())


def first_fix(book: Book, complaint: str) -> Reasoned:
    """The interview of one who knows nothing but the complaint, up to the first fix proposed."""
    case = Case("", (complaint,))
    for _ in range(40):
        told = reason(book, case)
        if told.step.kind not in ("ask", "safety"):
            return told
        case = case.with_entry(Entry("answer", told.step.name, UNKNOWN))
    raise AssertionError("it never ends")


@pytest.mark.parametrize("complaint", ["even-bars-across-travel", "burnt-patches", "part-tapered"])
def test_what_is_tried_first_is_likely_or_no_look_tells_any_more(
    book: Book, complaint: str
) -> None:
    told = first_fix(book, complaint)
    if told.step.kind != "fix":
        return
    chance = told.valued.now[told.fixes.ids.index(told.step.name)]
    looks = [
        c.check
        for c in told.valued.candidates
        if c.gain >= WORTH_A_LOOK
        and c.minutes <= LONGEST_LOOK
        and (told.read.safe or not any(turns(book.checks[n]) for n in (c.check, *c.first_ask)))
    ]
    assert chance >= FAINT or not looks


def test_a_likely_fix_is_not_held_back(book: Book) -> None:
    """The policy is asked with the same figures, the likeliest fix made almost sure."""
    told = reason(book, Case("", ("even-bars-across-travel",)))
    sure = told.valued.now * 0.0
    quick = min(range(len(told.fixes.ids)), key=lambda i: told.fixes.minutes[i])
    sure[quick] = 1.0
    told_nothing = tuple(
        replace(c, gain=0.01, outcomes=tuple(replace(o, shares=sure) for o in c.outcomes))
        for c in told.valued.candidates
    )
    valued = replace(told.valued, now=sure, entropy=0.0, candidates=told_nothing)
    step = decide(
        book,
        valued,
        told.fixes,
        safe=True,
        safety=(),
        opening=(),
        first_questions=(),
        asked=0,
        known=0,
        tried=False,
    )
    assert (step.kind, step.name) == ("fix", told.fixes.ids[quick])
