"""A cause whose gates can never hold together, or whose circumstances its gates rule out."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study
from diagnose.book.conditions import Condition


def look(study: Study) -> Iterator[Remark]:
    """Gates against gates, and circumstances against gates."""
    for cause in study.book.causes.values():
        for n, gate in enumerate(cause.possible_when):
            for earlier in cause.possible_when[:n]:
                fact = _shut(earlier.when, gate.when)
                if fact:
                    what = f"this gate and an earlier one shut each other out by {fact}"
                    path = ("possible_when", n, "when")
                    yield Remark("cause", cause.id, path, what, "take one of the two out")
            for k, shift in enumerate(cause.more_likely_when):
                fact = _shut(gate.when, shift.when)
                if fact:
                    what = f"the gate on {fact} rules the cause out just then"
                    path = ("more_likely_when", k, "when")
                    yield Remark("cause", cause.id, path, what, "take it out, or mend the gate")


def _shut(one: Condition, other: Condition) -> str:
    for a in one.tests:
        for b in other.tests:
            same = a.fact == b.fact and a.how == b.how == "is"
            if same and not set(a.words) & set(b.words):
                return a.fact
    return ""


LINT = Lint(
    id="gates-contradict",
    says=(
        "A cause whose gates can never hold together, or whose circumstances its gates rule out."
    ),
    page=(
        '"possible_when:" says without what a cause is impossible. Gates that shut each other '
        "out make it impossible always, and a circumstance that a gate forbids never counts."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="more_likely_when:\n",
    bad=(
        "possible_when:\n"
        "  - {when: {drive: belt}, because: it comes through the belt}\n"
        "  - {when: {drive: direct}, because: it needs a direct drive}\n"
        "more_likely_when:\n"
    ),
    look=look,
)
