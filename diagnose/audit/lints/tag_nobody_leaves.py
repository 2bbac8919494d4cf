"""A check is spoiled, or a stop renewed, by a tag that nothing leaves."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study
from diagnose.book.near import nearest


def look(study: Study) -> Iterator[Remark]:
    """Tags that are waited for and never left; ones that only a person reports are let be."""
    left = {t for f in study.own_fixes.values() for t in f.changes}
    left |= {t for c in study.book.checks.values() for t in c.changes}
    waits = [("check", c.id, "spoiled_by", c.spoiled_by) for c in study.book.checks.values()]
    waits += [("stop", s.id, "renewed_by", s.renewed_by) for s in study.book.stops.values()]
    uses: dict[str, int] = {}
    for _, _, _, tags in waits:
        for tag in tags:
            uses[tag] = uses.get(tag, 0) + 1
    for kind, name, field, tags in waits:
        for n, tag in enumerate(tags):
            if tag not in left and uses[tag] == 1:
                near = nearest(tag, left)
                what = f"nothing ever leaves '{tag}'"
                mend = "" if near else "name a tag that stands under 'changes:'"
                yield Remark(kind, name, (field, n), what, mend, near)


LINT = Lint(
    id="tag-nobody-leaves",
    says="A check is spoiled, or a stop renewed, by a tag that nothing leaves.",
    page=(
        '"spoiled_by:" and "renewed_by:" name what a fix, a trial or a check leaves changed. A '
        "tag that nothing leaves is mistyped, and the check would never be asked again, or the "
        "stop never renewed."
    ),
    file="checks/part/bar-spacing.yaml",
    good="spoiled_by: [part-ground-again]\n",
    bad="spoiled_by: [part-grond-again]\n",
    look=look,
)
