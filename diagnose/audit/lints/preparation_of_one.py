"""A shared preparation that only one check shares."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study
from diagnose.book.near import nearest


def look(study: Study) -> Iterator[Remark]:
    """Preparations with one check, or with no minutes."""
    sharing: dict[str, list[str]] = {}
    for check in study.book.checks.values():
        if check.shares_preparation:
            sharing.setdefault(check.shares_preparation, []).append(check.id)
        elif check.preparation_minutes:
            what = "minutes of a preparation that is not named"
            mend = "name it: shares_preparation: cover-off"
            yield Remark("check", check.id, ("preparation_minutes",), what, mend)
    for name, checks in sharing.items():
        if len(checks) == 1:
            what = f"no other check shares the preparation '{name}'"
            near = nearest(name, [n for n in sharing if n != name])
            mend = "add its minutes to the check's own"
            yield Remark("check", checks[0], ("shares_preparation",), what, mend, near)


LINT = Lint(
    id="preparation-of-one",
    says="A shared preparation that only one check shares.",
    page=(
        '"shares_preparation:" names work that two or more checks need, so that it is paid for '
        "once. With one check alone it is mistyped, or its minutes belong to the check."
    ),
    file="checks/wheel/wheel-look.yaml",
    good="tools: [glass]\n",
    bad=("tools: [glass]\nshares_preparation: guard-off\npreparation_minutes: 3\n"),
    look=look,
)
