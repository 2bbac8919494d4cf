"""A stop that its question cannot raise or cannot clear."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="stop-nobody-asks",
    says="A stop that its question cannot raise or cannot clear.",
    page=(
        "Every stop names the check that is certain to be asked before anything turns. An "
        "answer of that check must raise it and another must clear it, with the wheel stopped; "
        "else the danger would never be asked about, or never be cleared."
    ),
    file="checks/wheel/ring-test.yaml",
    good="say: it rang clear, clears: [cracked-wheel]",
    bad="say: it rang clear",
    found_in="stops/cracked-wheel.yaml",
    known_by=(
        r"no answer of [^ ]+ [a-z]+ [^ ]+$",
        r"too late to ask about a danger",
    ),
)
