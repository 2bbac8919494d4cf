"""A number without its unit, of the wrong kind, or impossible."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="bad-quantity",
    says="A number without its unit, of the wrong kind, or impossible.",
    page=(
        'Numbers carry their unit, since 6 thou and 6 mm are both "6". A reading has a range '
        "outside of which it is impossible; what lies outside is refused."
    ),
    file="checks/part/bar-spacing.yaml",
    good="example: 6 mm\n",
    bad="example: 6 rpm\n",
    known_by=(
        r"^this wants an? ",
        r"has no unit",
        r"write it like",
        r"is a unit of",
        r"is not a unit",
        r"no unit of",
        r"is not a number that can be measured",
        r"holds two numbers",
        r"runs backwards",
        r"is below zero",
        r"colder than",
        r"too large a number",
        r"marks in no length",
        r"is too (little|much) to be possible",
        r"lowest is not below",
        r"is nothing that is measured",
        r"nothing is written; write",
        r"; write the unit",
        r"measures ",
        r"a number check has no '",
    ),
)
