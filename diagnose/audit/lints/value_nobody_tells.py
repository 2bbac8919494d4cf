"""A value that a cause shows and no answer or rule can ever give."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Links to values that cannot come about."""
    for name, rows in study.shown_by.items():
        told = study.values_told.get(name, frozenset())
        if name in study.book.symptoms:
            continue
        for cause, n, link in rows:
            if link.value not in told:
                shown = name if link.value == "yes" else f"{name} as {link.value}"
                what = f"no answer and no rule ever gives {shown}"
                mend = "write 'means:' at the answer that does, or a rule that concludes it"
                yield Remark("cause", cause.id, ("shows", n, "finding"), what, mend)
                break


LINT = Lint(
    id="value-nobody-tells",
    says="A value that a cause shows and no answer or rule can ever give.",
    page=(
        "A link to a value that nobody can find out is dead: no answer means it, and no rule "
        'concludes it. Mostly an answer lacks its "means:", or a conclusion was dropped.'
    ),
    file="checks/wheel/wheel-look.yaml",
    good="  - {id: loaded, say: bright metal specks}\n",
    bad="",
    found_in="causes/wheel/wheel-left-undressed.yaml",
    look=look,
)
