"""A shop's own entry in place of a shipped one that gives no reason, or must not stand there."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="override-out-of-bounds",
    says="An entry in place of a shipped one that gives no reason, or that must not stand there.",
    page=(
        "A shop may write an entry of its own in place of a shipped one, and says why in a "
        "sentence: 'overrides: our chuck is older than any in the books'. What guards against a "
        "hazard - a stop, a caution, the question that clears a stop - and the scale of words "
        "stay as shipped. The shipped knowledge itself overrides nothing."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="status: tried\n",
    bad="status: tried\noverrides: our wheels are heavier\n",
    known_by=(
        r"gives no reason",
        r"there is nothing to override",
        r"is in the knowledge already",
        r"guards against a hazard",
        r"is a shipped stop",
        r"the scale of words is that of the shipped",
    ),
)
