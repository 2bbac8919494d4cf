"""A fix that is the same as another and has fields of its own, or borrows a borrowed one."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="fix-borrowed-badly",
    says=(
        "A fix that is the same as another and has fields of its own, or borrows a borrowed one."
    ),
    page=(
        'Causes that end in the same fix name it once ("same_as:"), so that the plan does not '
        "say it twice. The fix that is named must be written out in the other cause."
    ),
    file="causes/wheel/wheel-left-undressed.yaml",
    good="  do: Dress the wheel.\n",
    bad=("  do: Dress the wheel.\n  same_as: unbalanced-wheel\n"),
    known_by=(
        r"same as another has no fields",
        r"borrows its fix",
    ),
)
