"""A cause without its two examples."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="examples-missing",
    says="A cause without its two examples.",
    page=(
        "The examples beside a cause are its tests: one case in which it must come first, and "
        "one that only looks like it, in which it must not. Without the second, a cause that is"
        " always first would pass."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="    not_first: unbalanced-wheel\n",
    bad="    first: shaking-floor\n",
    known_by=(r"no example has '",),
)
