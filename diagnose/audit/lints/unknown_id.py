"""A reference to something that is not there, or is of another kind."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="unknown-id",
    says="A reference to something that is not there, or is of another kind.",
    page=(
        "Links, cautions, sources, look-alikes and questions are named by id. A mistyped id "
        "would cut the link; the nearest id is offered. An entry that was renamed keeps its old"
        ' id under "replaces:".'
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="look_alikes: [lumpy-belt, shaking-floor]\n",
    bad="look_alikes: [lumpy-belts, shaking-floor]\n",
    known_by=(
        r"there is no [a-z ]+ '",
        r"is needed here",
        r"is named as its own look-alike",
    ),
)
