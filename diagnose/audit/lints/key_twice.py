"""The same field stands twice in one group."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="key-twice",
    says="The same field stands twice in one group.",
    page=(
        "When a name stands twice, one of the two values would win in silence, and nobody could"
        " tell which. Keep one."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="status: tried\n",
    bad=("status: tried\nstatus: draft\n"),
    known_by=(r"which one counts",),
)
