"""A calculation that is not there, or is fed wrongly."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="bad-calculation",
    says="A calculation that is not there, or is fed wrongly.",
    page=(
        "A rule works numbers out with the named calculations of the tool (diagnose calc "
        "--list). Each input must be given, under its own name, with a number of its own kind."
    ),
    file="rules/bars.yaml",
    good="{spacing: bar-spacing, table_speed: table-speed}, gives: bar-frequency",
    bad="{spacing: bar-spacing, table_sped: table-speed}, gives: bar-frequency",
    known_by=(
        r"there is no calculation '",
        r"has no input '",
        r"needs .* as well",
        r"' is [a-z-]+ here and ",
        r"; a [a-z-]+ is needed here",
    ),
)
