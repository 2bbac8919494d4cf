"""Two signs concluded from the same facts, neither of which sharpens the other."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study
from diagnose.book.conditions import Condition


def look(study: Study) -> Iterator[Remark]:
    """Signs of one condition, in the order of the rules."""
    seen: dict[tuple[Condition, Condition], tuple[str, str]] = {}
    for rule in study.book.rules.values():
        for n, then in enumerate(rule.then):
            finding = study.book.findings.get(then.finding)
            if (
                finding is None
                or finding.kind != "sign"
                or not (rule.when.tests or then.condition.tests)
            ):
                continue
            key = (rule.when, then.condition)
            first, owner = seen.setdefault(key, (finding.id, rule.id))
            if first != finding.id and not _sharper(study, first, finding.id):
                place = "here" if owner == rule.id else f"in rule {owner}"
                what = f"the same facts mean {first} {place} and {finding.id}: they count twice"
                mend = "keep the more exact one, or write 'sharpens:' in its finding"
                yield Remark("rule", rule.id, ("then", n, "finding"), what, mend)


def _sharper(study: Study, one: str, other: str) -> bool:
    for sharp, blunt in ((one, other), (other, one)):
        now: str | None = sharp
        while now is not None:
            now = study.book.findings[now].sharpens
            if now == blunt:
                return True
    return False


LINT = Lint(
    id="rules-count-twice",
    says="Two signs concluded from the same facts, neither of which sharpens the other.",
    page=(
        "One fact is one piece of evidence. A rule that concludes two signs at once, or two "
        'rules with the same "when:", makes one look count twice, unless one sign sharpens the '
        "other: then the blunter drops out."
    ),
    file="rules/bars.yaml",
    good="    - {finding: bar-rhythm, is: none-found}\n",
    bad=("    - {finding: bar-rhythm, is: none-found}\n    - {finding: dirt-marks-below}\n"),
    look=look,
)
