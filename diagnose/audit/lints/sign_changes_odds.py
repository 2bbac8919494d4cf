"""A sign that changes the odds of a cause."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Circumstances of causes that name a sign which the same cause shows."""
    for cause in study.book.causes.values():
        shown = {link.finding for link in cause.shows}
        for n, shift in enumerate(cause.more_likely_when):
            twice = [f for f in shift.when.facts if f in shown]
            if twice:
                what = f"{twice[0]} is a sign of this cause and changes its odds as well"
                mend = "keep it under 'shows:' alone"
                yield Remark("cause", cause.id, ("more_likely_when", n, "when"), what, mend)


LINT = Lint(
    id="sign-changes-odds",
    says="A sign that changes the odds of a cause.",
    page=(
        "A sign is evidence and is weighed by the links. When it stands under "
        '"more_likely_when:" or "possible_when:" as well, it counts twice. What was so before '
        "is a circumstance; what the cause makes is a sign."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="when: {wheel-newly-mounted: yes}",
    bad="when: {bars-evenly-spaced: yes}",
    look=look,
)
