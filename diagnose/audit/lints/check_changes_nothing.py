"""A check that settles nothing on which anything hangs."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Checks without any effect."""
    sure = {f.check for c in study.book.causes.values() for f in c.be_sure}
    asked = {s.asked_by for s in study.book.stops.values()}
    for check in study.book.checks.values():
        does = check.settles or check.reports or check.id in sure | asked | study.looked_at
        stops = any(o.raises or o.clears for o in check.options)
        if not does and not stops and not check.trial and not check.gate:
            what = f"{check.id} settles nothing on which anything hangs"
            yield Remark("check", check.id, ("id",), what, "say what it settles, or take it out")


LINT = Lint(
    id="check-changes-nothing",
    says="A check that settles nothing on which anything hangs.",
    page=(
        "A check costs minutes and must be able to change something: a sign that causes show, a"
        " circumstance, a stop, a fact of a rule, or the report of a cause."
    ),
    file="checks/part/bars-even.yaml",
    good="settles: [bars-evenly-spaced]\n",
    bad="",
    look=look,
)
