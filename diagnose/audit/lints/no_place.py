"""A check that does not say where it is made."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Checks without a place."""
    for check in study.book.checks.values():
        if not check.place:
            what = f"{check.id} does not say where it is made"
            mend = "write place: history, part, wheel, machine or bench"
            yield Remark("check", check.id, ("id",), what, mend)


LINT = Lint(
    id="no-place",
    says="A check that does not say where it is made.",
    page=(
        "The walk list groups checks by place (history, part, wheel, machine, bench) so that a "
        "person goes round once. A check without a place is left to the end."
    ),
    file="checks/part/bars-even.yaml",
    good="place: part\n",
    bad="",
    look=look,
)
