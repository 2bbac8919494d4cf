"""A condition that can never hold."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study
from diagnose.book.conditions import Test
from diagnose.book.model import Check


def look(study: Study) -> Iterator[Remark]:
    """Conditions whose tests contradict each other, the range of a reading, or all answers."""
    for placed in study.conditions:
        what = _clash(placed.condition.tests) or _out_of_reach(study, placed.condition.tests)
        if what:
            mend = "mend the condition, or take out what hangs on it"
            yield Remark(placed.kind, placed.entry, placed.path, what, mend)


def _clash(tests: tuple[Test, ...]) -> str:
    for n, one in enumerate(tests):
        for other in tests[n + 1 :]:
            if one.fact != other.fact:
                continue
            if one.how == other.how == "is" and not set(one.words) & set(other.words):
                return f"{one.fact} cannot be {one.words[0]} and {other.words[0]} at once"
            a, b = _span(one), _span(other)
            if a and b and (a[1] <= b[0] or b[1] <= a[0]):
                return f"{one.fact} cannot lie in both ranges at once"
    return ""


def _span(test: Test) -> tuple[float, float] | None:
    limits = {
        "above": (test.low, inf),
        "below": (-inf, test.high),
        "between": (test.low, test.high),
    }
    return limits.get(test.how)


def _out_of_reach(study: Study, tests: tuple[Test, ...]) -> str:
    for test in tests:
        check, span = study.book.checks.get(test.fact), _span(test)
        if check is not None and span and _outside(check, *span):
            return f"{test.fact} never lies there: its reading has another range"
        told = study.values_told.get(test.fact)
        if (
            test.how == "is"
            and told is not None
            and not set(test.words) & (told | _rest(study, test))
        ):
            return f"no answer and no rule ever gives {test.fact} as {test.words[0]}"
    return ""


def _outside(check: Check, low: float, high: float) -> bool:
    if check.lowest is None or check.highest is None:
        return False
    return high <= check.lowest or low >= check.highest


def _rest(study: Study, test: Test) -> frozenset[str]:
    """The first value of a finding, which is so when nothing else is."""
    finding = study.book.findings.get(test.fact)
    return frozenset(finding.value_ids[:1]) if finding else frozenset()


LINT = Lint(
    id="condition-never-holds",
    says="A condition that can never hold.",
    page=(
        "A condition on one fact that must be two things at once, a number outside the range "
        "that its reading can have, or a value that nothing gives: what hangs on it is dead."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="when: {wheel-newly-mounted: yes}",
    bad="when: [{wheel-newly-mounted: yes}, {wheel-newly-mounted: no}]",
    look=look,
)
