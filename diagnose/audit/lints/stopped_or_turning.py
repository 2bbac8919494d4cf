"""A question says one state of the wheel and the check needs another."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Checks whose words and needs do not agree on the wheel."""
    for check in study.book.checks.values():
        low = check.ask.lower()
        for says, need in (("wheel stopped", "wheel-stopped"), ("wheel running", "wheel-turning")):
            if low.startswith(says) and need not in check.needs:
                what = f"the question says '{says}' and the check does not need {need}"
                path = ("needs",) if check.needs else ("ask",)
                yield Remark("check", check.id, path, what, f"write needs: [{need}]")
        if "wheel-stopped" in check.needs and "wheel-turning" in check.needs and not check.trial:
            what = "the wheel cannot stand still and turn"
            yield Remark("check", check.id, ("needs",), what, "keep one, or make it a trial")


LINT = Lint(
    id="stopped-or-turning",
    says="A question says one state of the wheel and the check needs another.",
    page=(
        'A person reads the question; the tool reads "needs:". When the question says "Wheel '
        'stopped:" and the check does not need it, or the other way, the tool might offer it '
        "while the wheel turns, or past an open stop."
    ),
    file="checks/wheel/wheel-look.yaml",
    good="needs: [wheel-stopped]\n",
    bad="",
    look=look,
)
