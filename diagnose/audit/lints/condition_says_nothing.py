"""A condition that is always true."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Conditions of words that leave no word out."""
    for placed in study.conditions:
        for test in placed.condition.tests:
            words = _words(study, test.fact)
            if test.how == "is" and words and words <= set(test.words):
                what = f"{test.fact} is always one of these"
                mend = "leave out the words for which it should not hold"
                yield Remark(placed.kind, placed.entry, placed.path, what, mend)


def _words(study: Study, fact: str) -> set[str]:
    finding, check = study.book.findings.get(fact), study.book.checks.get(fact)
    if finding is not None:
        return set(finding.value_ids)
    return {o.id for o in check.options} if check is not None else set()


LINT = Lint(
    id="condition-says-nothing",
    says="A condition that is always true.",
    page=(
        "A condition that names every word a fact can be holds whenever the fact is known, so "
        "it separates nothing."
    ),
    file="rules/bars.yaml",
    good="    - {wheel-face: [shiny, loaded]}\n",
    bad="    - {wheel-face: [open, shiny, loaded]}\n",
    look=look,
)
