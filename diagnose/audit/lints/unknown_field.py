"""A field that this kind of entry does not have."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="unknown-field",
    says="A field that this kind of entry does not have.",
    page=(
        "A mistyped field would be passed over in silence, and what it says would be lost. The "
        "fields of each kind are listed with the fault, and an editor that knows the JSON "
        "Schema (diagnose knowledge schema) completes them."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="how_common: 0.4\n",
    bad="how_comon: 0.4\n",
    known_by=(r"has no field '",),
)
