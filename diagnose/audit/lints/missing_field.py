"""A field that must be there is missing or empty."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="missing-field",
    says="A field that must be there is missing or empty.",
    page=(
        "Each kind has fields without which it is of no use to the person at the machine: a "
        "cause without its fix, a check without its help, a link without its because. The fault"
        " says what to write."
    ),
    file="causes/wheel/wheel-left-undressed.yaml",
    good="  proof: The next pass leaves no colour.\n",
    bad="",
    known_by=(
        r"has no '(?!without_cause)[a-z_]+:'",
        r"the fix has no '",
        r"nothing is written here",
        r"should be listed here",
        r"name at least one",
        r"two examples at least",
        r"two steps at least",
        r"name one source at least",
        r"at least two answers",
        r"at least two values",
        r"nothing follows from this rule",
        r"does not say what must come",
        r"does not say what its readings are",
        r"needs its prior and its strength",
    ),
)
