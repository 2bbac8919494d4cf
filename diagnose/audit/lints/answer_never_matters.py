"""An answer that means nothing, raises nothing and is named nowhere."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Answers, but the first, that nothing hangs on; of a danger, any answer leaves it open."""
    named = _named(study)
    for check in study.book.checks.values():
        asks_of_danger = any(o.raises or o.clears for o in check.options)
        if check.reports is not None or check.kind not in ("one", "any") or asks_of_danger:
            continue
        for n, option in enumerate(check.options):
            acts = option.means or option.raises or option.clears
            if n and not acts and (check.id, option.id) not in named:
                what = f"nothing hangs on the answer '{option.id}'"
                mend = "write what it means, or take it out"
                yield Remark("check", check.id, ("options", n, "id"), what, mend)


def _named(study: Study) -> set[tuple[str, str]]:
    found = {
        (test.fact, word)
        for placed in study.conditions
        for test in placed.condition.tests
        for word in test.words
    }
    for cause in study.book.causes.values():
        found |= {(f.check, o) for f in cause.be_sure for o in _options(study, f.check)}
    for check in study.book.checks.values():
        if any((check.id, o.id) in found for o in check.options) or check.trial:
            found |= {(check.id, o.id) for o in check.options}
    return found


def _options(study: Study, check: str) -> Iterator[str]:
    known = study.book.checks.get(check)
    yield from (o.id for o in known.options) if known else ()


LINT = Lint(
    id="answer-never-matters",
    says="An answer that means nothing, raises nothing and is named nowhere.",
    page=(
        "Every answer after the first must do something: mean a finding, raise or clear a stop,"
        " speak for a cause, or be named by a condition. One that does nothing looks like "
        "evidence and is none."
    ),
    file="checks/wheel/wheel-look.yaml",
    good="  - {id: loaded, say: bright metal specks}\n",
    bad=("  - {id: loaded, say: bright metal specks}\n  - {id: wet, say: wet all over}\n"),
    look=look,
)
