"""A number without its unit, of the wrong kind, or impossible."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="bad-quantity",
    says="A number or a row of readings without its unit, of the wrong kind, or impossible.",
    page=(
        'Numbers carry their unit, since 6 thou and 6 mm are both "6". A reading has a range '
        "outside of which it is impossible; what lies outside is refused. The readings of a grid "
        "stand in rows of the same length, with their unit after them."
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
        r"'mil' means",
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
        r"There are .* readings",
        r"(The|of the) readings have no unit",
        r"[Nn]o reading before the unit",
        r"has .* readings, the first has",
        r"says nothing of how a grid",
        r"[Rr]ows of the grid are not",
        r"grid has .* rows",
        r"[Nn]o reading in this grid",
        r"reading is infinite",
        r"step between readings must",
        r"no number in this file",
        r"may be a decimal comma",
    ),
)
