"""A link that shows no more often than without the cause."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="not-above-background",
    says="A link that shows no more often than without the cause.",
    page=(
        "How often is a total: how often the sign shows when this cause is there, whatever else"
        " makes it. A total that is not above the rate without any cause says that the cause "
        "hides the sign, which a link cannot say. Leave the link out, or write the opposite as "
        "an option of its own. A sign without a background rate cannot be weighed at all."
    ),
    file="causes/wheel/wheel-left-undressed.yaml",
    good="is: loaded, how_often: occasionally",
    bad="is: loaded, how_often: almost never",
    known_by=(
        r"shows no more often",
        r"no more often with the cause",
        r"report the sign no more often",
        r"no 'without_cause:'",
        r"each value has its own 'without_cause:'",
    ),
)
