"""Fields of a check that do not fit its kind."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="wrong-kind-of-check",
    says="Fields of a check that do not fit its kind.",
    page=(
        "A question has answers; a reading has a unit, a range and an example. Fields of the "
        'other kind would be passed over. "Don\'t know" is offered at every question by itself.'
    ),
    file="checks/wheel/wheel-look.yaml",
    good="kind: one\n",
    bad="kind: number\n",
    known_by=(
        r"a check of kind",
        r"belongs to a check of kind",
        r"is offered at every question",
        r"no answer says anything of",
        r"'[^']*' is nothing that is measured",
    ),
)
