"""A reading without an example of an answer."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Number checks without an example."""
    for check in study.book.checks.values():
        if check.kind == "number" and not check.example:
            what = "this reading has no 'example:'"
            mend = "write an answer as a person would, with its unit"
            yield Remark("check", check.id, ("kind",), what, mend)


LINT = Lint(
    id="reading-without-help",
    says="A reading without an example of an answer.",
    page=(
        "Whoever reads a number off a rule needs to see one written down as he should write it:"
        " with its unit, in the size it usually has. The example also shows on the screen when "
        "an answer could not be read."
    ),
    file="checks/part/bar-spacing.yaml",
    good="example: 6 mm\n",
    bad="",
    look=look,
)
