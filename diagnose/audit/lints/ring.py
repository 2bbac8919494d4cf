"""Mechanisms, or sharper signs, that lead round in a ring."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="ring",
    says="Mechanisms, or sharper signs, that lead round in a ring.",
    page=(
        "Cause and effect run one way. A ring would make a thing its own cause, and no chain "
        "from cause to symptom could be told."
    ),
    file="mechanisms.yaml",
    good="    - {to: even-bars-across-travel, because: light catches the hills as bars,",
    bad="    - {to: wheel-lifts-once-a-turn, because: light catches the hills as bars,",
    known_by=(r"in a ring",),
)
