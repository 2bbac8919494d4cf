"""Power locked out in the fix, and no caution that says so."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Fixes with the power locked out, or a wheel running, whose cautions speak of neither."""
    for name, fix in study.own_fixes.items():
        said = " ".join(
            study.book.cautions[c].say.lower()
            for c in study.book.causes[name].cautions
            if c in study.book.cautions
        )
        if said and "power-locked-out" in fix.needs and "lock" not in said:
            what = "the fix needs the power locked out, and no caution of the cause says so"
            mend = "name the caution about locking out under 'cautions:'"
            yield Remark("cause", name, ("cautions",), what, mend)


LINT = Lint(
    id="lock-out-untold",
    says="Power locked out in the fix, and no caution that says so.",
    page=(
        "A fix that needs the power locked out has the caution about it among the cautions of "
        "the cause, not in a step alone."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="cautions: [lock-out-first, stand-aside-at-start]\n",
    bad="cautions: [stand-aside-at-start]\n",
    look=look,
)
