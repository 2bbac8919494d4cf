"""A sign that no cause shows."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Signs, and values of signs, without a single link."""
    blunter = {f.sharpens for f in study.book.findings.values() if f.sharpens}
    reported = {c.reports.finding for c in study.book.checks.values() if c.reports}
    for sign in study.book.findings.values():
        if sign.kind != "sign" or sign.id in study.shown_by or sign.id in blunter:
            continue
        if sign.id in study.looked_at and sign.id not in reported:
            continue
        kind = "symptom" if sign.id in study.book.symptoms else "finding"
        what = f"no cause shows {sign.id}"
        yield Remark(kind, sign.id, ("id",), what, "link it from the causes that make it")


LINT = Lint(
    id="sign-nobody-shows",
    says="A sign that no cause shows.",
    page=(
        "A sign that no cause shows moves nothing: a question that asks for it costs a minute "
        "and tells nothing. Link it from the causes that make it, or take it out. A sign that "
        "another one sharpens may stand for it."
    ),
    file="findings/signs.yaml",
    good="- id: thin-stream\n",
    bad=(
        "- id: smell-of-oil\n"
        "  kind: sign\n"
        "  name: a smell of burnt oil\n"
        "  without_cause: rarely\n"
        "  source: common-practice\n"
        "- id: thin-stream\n"
    ),
    look=look,
)
