"""A cause that shows no complaint."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Causes without a link to a symptom."""
    for cause in study.book.causes.values():
        if not any(_complaint(study, link.finding) for link in cause.shows):
            what = f"{cause.id} shows no complaint"
            yield Remark("cause", cause.id, ("shows",), what, "name the symptom it makes")


def _complaint(study: Study, sign: str) -> bool:
    now: str | None = sign
    while now is not None and now not in study.book.symptoms:
        now = study.book.findings[now].sharpens
    return now is not None


LINT = Lint(
    id="no-complaint",
    says="A cause that shows no complaint.",
    page=(
        "Every case begins with a complaint. A cause with no link to any symptom, or to a sign "
        "that sharpens one, can never act on what the person came with, so it can never be "
        "ranked."
    ),
    file="causes/holding/dirt-under-part.yaml",
    good=(
        "  - {finding: taper-along-travel, how_often: usually, because: the end that"
        " stands high is ground thin, source: common-practice}\n"
    ),
    bad="",
    look=look,
)
