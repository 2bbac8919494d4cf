"""A value or an answer that the finding or check does not have."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="unknown-answer",
    says="A value or an answer that the finding or check does not have.",
    page=(
        "A link names a value of its finding, an example names an answer of its check, a "
        "condition names one of the words a fact can be. A word that is none of them would "
        "never come true."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="answers: {wheel-changed: yes, bars-even: yes}",
    bad="answers: {wheel-changed: maybe, bars-even: yes}",
    known_by=(
        r"is never '",
        r"is a yes/no finding",
        r"has no answer '",
        r"is no answer to",
        r"' could be ",
        r"nothing was answered",
        r"'none' cannot stand",
        r"there is no answer ",
        r"is nothing of the kind: a cause",
    ),
)
