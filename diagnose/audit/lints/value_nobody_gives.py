"""A value of a finding that nothing makes: no link, no answer, no rule."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Values beyond the first that cannot come about."""
    for finding in study.book.findings.values():
        if finding.id in study.book.symptoms:
            continue
        told = study.values_told.get(finding.id, frozenset())
        written = len(finding.values) > 2 or finding.value_ids != ("no", "yes")
        for n, value in enumerate(finding.values[1:], 1):
            if value.id not in told:
                path = ("values", n, "id") if written else ("id",)
                what = f"no answer and no rule ever gives {finding.id} the value '{value.id}'"
                mend = "write 'means:' at the answer that does, or take it out"
                yield Remark("finding", finding.id, path, what, mend)


LINT = Lint(
    id="value-nobody-gives",
    says="A value of a finding that nothing makes: no link, no answer, no rule.",
    page=(
        "A value that no answer means and no rule concludes can never come about, and nothing "
        "can hang on it."
    ),
    file="findings/signs.yaml",
    good="    - {id: loaded, name: bright metal specks, without_cause: rarely}\n",
    bad=(
        "    - {id: loaded, name: bright metal specks, without_cause: rarely}\n"
        "    - {id: torn, name: torn and chipped, without_cause: rarely}\n"
    ),
    look=look,
)
