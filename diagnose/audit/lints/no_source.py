"""A claim without a source."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Parts that should carry a source and do not."""
    book = study.book
    for cause in book.causes.values():
        yield from _lacking("cause", cause.id, "more_likely_when", cause.more_likely_when)
        yield from _lacking("cause", cause.id, "leads_through", cause.leads_through)
        yield from _lacking("cause", cause.id, "first_aid", cause.first_aid)
    for symptom in book.symptoms.values():
        yield from _lacking("symptom", symptom.id, "first_aid", symptom.first_aid)
        yield from _lacking("symptom", symptom.id, "the_part", symptom.the_part)
    for mechanism in book.mechanisms.values():
        yield from _lacking("mechanism", mechanism.id, "leads_to", mechanism.leads_to)
    for check in book.checks.values():
        if not check.source:
            yield _remark("check", check.id, ("id",))
    for finding in book.findings.values():
        sign = finding.kind == "sign" and finding.id not in book.symptoms
        if sign and not finding.source:
            yield _remark("finding", finding.id, ("id",))


def _lacking(kind: str, entry: str, field: str, parts: Sequence[object]) -> Iterator[Remark]:
    for n, part in enumerate(parts):
        if not getattr(part, "source", ""):
            yield _remark(kind, entry, (field, n))


def _remark(kind: str, entry: str, path: tuple[str | int, ...]) -> Remark:
    mend = "write source: ID; common-practice will do if it is only what everyone knows"
    return Remark(kind, entry, path, "nothing says where this comes from", mend)


LINT = Lint(
    id="no-source",
    says="A claim without a source.",
    page=(
        "Every link, change of odds, range, rule, first aid and step of cause and effect says "
        "where it comes from, even if that is only common practice. Without it nobody can judge"
        " how far to trust it, or mend it when the source turns out wrong."
    ),
    file="mechanisms.yaml",
    good="because: the cut is deeper whenever the wheel comes down, source: common-practice}",
    bad="because: the cut is deeper whenever the wheel comes down}",
    look=look,
)
