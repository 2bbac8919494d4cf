"""A practised hand that takes longer than a first-timer, or a fix in no time."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Fixes whose minutes cannot be."""
    for name, fix in study.own_fixes.items():
        if fix.minutes_practised > fix.minutes_first_time:
            what = "a practised hand would take longer than a first-timer"
            yield Remark("cause", name, ("fix", "minutes"), what, "swap the two")
        elif fix.minutes_practised <= 0.0:
            what = "a fix in no time at all"
            yield Remark("cause", name, ("fix", "minutes"), what, "write honest minutes")


LINT = Lint(
    id="practised-slower",
    says="A practised hand that takes longer than a first-timer, or a fix in no time.",
    page=(
        "The plan weighs minutes. A practised hand is never slower than a first-timer, and "
        "nothing is mended in no time."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="{first_time: 60, practised: 30}",
    bad="{first_time: 30, practised: 60}",
    look=look,
)
