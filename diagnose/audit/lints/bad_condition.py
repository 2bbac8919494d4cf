"""A condition that is not written as conditions are."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="bad-condition",
    says="A condition that is not written as conditions are.",
    page=(
        "Conditions are a closed set: a fact equals a word or one of several; a number is "
        "above, below, between two numbers, or within a share of another number. Nothing else "
        "is ever evaluated."
    ),
    file="rules/bars.yaml",
    good="{bars-a-turn: {below: 0.9}}",
    bad="{bars-a-turn: {under: 0.9}}",
    known_by=(
        r"is not a condition",
        r"is a number, not one of some words",
        r"is not a number and cannot be compared",
        r"a number is compared by",
        r"between (needs|goes)",
        r"within needs a share",
        r"one of the answers should stand",
        r"they cannot be compared",
    ),
)
