"""A circumstance on which nothing hangs."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Circumstances that no condition looks at."""
    for finding in study.book.findings.values():
        if finding.kind == "circumstance" and finding.id not in study.looked_at | _by_check(study):
            what = f"nothing hangs on {finding.id}"
            mend = "write 'more_likely_when:' in the causes it changes, or take it out"
            yield Remark("finding", finding.id, ("id",), what, mend)


def _by_check(study: Study) -> frozenset[str]:
    """Circumstances whose check is itself named by a condition."""
    asked = [c for c in study.book.checks.values() if c.id in study.looked_at]
    return frozenset(f for c in asked for f in c.settles)


LINT = Lint(
    id="circumstance-changes-nothing",
    says="A circumstance on which nothing hangs.",
    page=(
        "A circumstance is asked because it makes causes more or less likely, rules one out, or"
        " decides what else is asked. One that no condition names costs a question and changes "
        "no decision."
    ),
    file="findings/circumstances.yaml",
    good="- id: drive\n",
    bad=(
        "- id: bench-lamp\n"
        "  kind: circumstance\n"
        "  name: there is a lamp at the machine\n"
        "  source: common-practice\n"
        "- id: drive\n"
    ),
    look=look,
)
