"""A circumstance written as a sign that a cause shows, or the other way."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="circumstance-as-sign",
    says="A circumstance written as a sign that a cause shows, or the other way.",
    page=(
        "A circumstance (set-up, history, machine) was so before: it changes the odds of causes"
        ' and stands under "more_likely_when:". A sign is made by a cause. A circumstance '
        "written as a sign explains other causes away that it has nothing to do with."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="shows:\n",
    bad=(
        "shows:\n"
        "  - {finding: drive, is: direct, how_often: often, because: so, source:"
        " common-practice}\n"
    ),
    known_by=(
        r"is a circumstance",
        r"a circumstance has no 'without_cause",
        r"only a sign (sharpens|can be)",
    ),
)
