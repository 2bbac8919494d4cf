"""A fix or a check in danger without its caution."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study

DANGEROUS = ("wheel-turning", "power-locked-out", "guard-open")
CHANGES = ("wheel-changed",)


def look(study: Study) -> Iterator[Remark]:
    """Fixes and checks that need, or change, what can hurt, with no caution at all."""
    for name, fix in study.own_fixes.items():
        danger = [n for n in fix.needs if n in DANGEROUS]
        danger += [c for c in fix.changes if c in CHANGES]
        if danger and not study.book.causes[name].cautions:
            what = f"the fix means {danger[0]} and has no caution before it"
            yield Remark("cause", name, ("fix",), what, "name it under 'cautions:' of the cause")
    for check in study.book.checks.values():
        risky = [n for n in check.needs if n in DANGEROUS]
        if risky and not check.cautions:
            what = f"this check means {risky[0]} and has no caution before it"
            yield Remark("check", check.id, ("needs",), what, "name it under 'cautions:'")


LINT = Lint(
    id="fix-without-caution",
    says="A fix or a check in danger without its caution.",
    page=(
        "A step with the wheel turning, the power locked out or a wheel taken off has its "
        "caution before it. The cautions of a cause are read before its fix; without one, a "
        "newcomer would learn of the danger from the machine."
    ),
    file="causes/wheel/wheel-left-undressed.yaml",
    good="cautions: [stand-aside-at-start]\n",
    bad="",
    look=look,
)
