"""A first question of a symptom that tells its causes nothing."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """First questions that no cause of the symptom hangs on."""
    book = study.book
    for symptom in book.symptoms.values():
        causes = [c for c, _, _ in study.shown_by.get(symptom.id, ())]
        moved = {check for c in causes for check in study.signatures[c.id].rows}
        numbers = {n for check in moved for n in book.checks[check].together_with}
        for n, name in enumerate(symptom.first_questions):
            check = book.checks.get(name)
            if check is None or not causes or name in moved | numbers | study.looked_at:
                continue
            if check.gate or check.together_with or any(o.raises for o in check.options):
                continue
            if any(f in study.looked_at for o in check.options for f in o.means):
                continue
            what = f"{name} tells nothing of the causes of {symptom.id}"
            mend = "ask what moves them, or link what the question settles"
            yield Remark("symptom", symptom.id, ("first_questions", n), what, mend)


LINT = Lint(
    id="first-question-settles-nothing",
    says="A first question of a symptom that tells its causes nothing.",
    page=(
        "The first questions of a symptom are those an old hand asks first. Each must move a "
        "cause that makes this symptom, or ask about a danger."
    ),
    file="symptoms/taper-along-travel.yaml",
    good="first_questions: [underside-look]\n",
    bad="first_questions: [underside-look, bars-even]\n",
    look=look,
)
