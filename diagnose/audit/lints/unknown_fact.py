"""A condition or a calculation names a fact that nothing gives."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="unknown-fact",
    says="A condition or a calculation names a fact that nothing gives.",
    page=(
        "A fact is the answer of a check, a finding, or a number that a rule works out. A "
        "condition on anything else could never hold."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="when: {wheel-newly-mounted: yes}",
    bad="when: {wheel-newly-mountd: yes}",
    known_by=(r"there is no fact '",),
)
