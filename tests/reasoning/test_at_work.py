"""Two causes at once: what is at work for all that is known is mended before help is called."""

from __future__ import annotations

import numpy as np
import pytest

from diagnose.book.kept import load_kept
from diagnose.book.locate import knowledge_folder
from diagnose.case.entries import Case
from diagnose.reasoning.fixes import LAST_RESORT, FixTable
from diagnose.reasoning.next_check import Valued
from diagnose.reasoning.policy import FIRM, Step, before_help, decide
from diagnose.reasoning.reason import Reasoned, acting, reason
from tests.stories.replaying import play

BOOK = load_kept(knowledge_folder())
SEVERAL = 0.6  # the share of "more than one fix is needed" in these figures


def decided(minutes: float, at_work: float) -> Step:
    """Nothing left to ask; one fix in question, which would not cure alone."""
    valued = Valued((), np.array([1.0 - SEVERAL, SEVERAL, 0.0]), 1.0, LAST_RESORT)
    fixes = FixTable(("balance",), np.array([minutes]), np.array([0.9]), np.zeros(1, dtype=int))
    step = decide(
        BOOK, valued, fixes, safe=True, safety=(), opening=(), first_questions=(),
        asked=20, known=20, tried=False,
    )  # fmt: skip
    assert step.kind == "stuck"
    return before_help(step, valued, fixes, {"balance": at_work})


def played(number: str) -> Reasoned:
    """The end of one story, by the answers of its player."""
    steps: list[Reasoned] = []
    play(BOOK, number, seen=steps.append)
    return steps[-1]


def test_what_is_very_likely_at_work_is_mended_though_it_may_not_cure_alone() -> None:
    minutes = (1.0 - SEVERAL) * 0.9 * LAST_RESORT * 2.5  # too long for its chance of curing alone
    assert decided(minutes, 0.0).kind == "stuck"
    step = decided(minutes, 0.9)
    assert (step.kind, step.name) == ("fix", "balance")
    assert "alone or with something else" in step.why


def test_what_is_only_likely_at_work_is_no_reason_for_a_long_job() -> None:
    minutes = (1.0 - SEVERAL) * 0.9 * LAST_RESORT * 2.5
    assert decided(minutes, FIRM - 0.01).kind == "stuck"


def test_a_job_longer_than_help_is_worth_waits_for_help() -> None:
    assert decided(LAST_RESORT * 2.0, 0.95).kind == "stuck"


@pytest.mark.parametrize("complaint", ["even-bars-across-travel", "part-tapered", "burnt-patches"])
def test_a_fix_is_as_sure_at_work_as_the_likeliest_cause_it_mends(complaint: str) -> None:
    told = reason(BOOK, Case("", (complaint,)))
    at_work = told.fixes.at_work(acting(told.network, told.belief))
    for fix, chance in at_work.items():
        mends = [r.acts for r in told.belief.ranked if BOOK.causes[r.cause].fix.id == fix]
        assert chance == max(mends)


@pytest.mark.parametrize("number", ["12", "44", "143", "187"])
def test_the_plan_begins_with_the_fix_that_is_named(number: str) -> None:
    told = played(number)
    assert told.step.kind == "fix"
    assert told.plan.cure[0].fix.id == told.step.name
    assert len({s.fix.id for s in told.plan.cure}) == len(told.plan.cure)
