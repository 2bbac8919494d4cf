"""A complaint in which far too many, or too few, causes act."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.acting import LEAST, MOST
from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Complaints whose expected number of acting causes is not sane."""
    for name, found in study.acting.items():
        if found.sane:
            continue
        many = found.expected > MOST
        what = f"{found.expected:.2f} causes act in this complaint alone; {LEAST} to {MOST} is sane"
        most = ", ".join(f"{cause} {chance:.2f}" for cause, chance in found.most)
        mend = f"{'lower' if many else 'raise'} what is written of: {most}"
        yield Remark("symptom", name, ("id",), what, mend)


LINT = Lint(
    id="acting-out-of-bounds",
    says="A complaint in which far too many, or too few, causes act.",
    page=(
        "With nothing known but the complaint, about one cause should act (0.8 to 1.5). More, "
        "and its causes are written commoner or stronger than they can all be; fewer, and most "
        "of it would come from what the book does not list. knowledge stats prints the number."
    ),
    file="causes/wheel/wheel-left-undressed.yaml",
    good="how_common: 0.25\n",
    bad="how_common: 0.001\n",
    found_in="symptoms/burnt-patches.yaml",
    look=look,
)
