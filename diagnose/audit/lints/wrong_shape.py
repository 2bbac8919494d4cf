"""A list, a group or a plain text stands where another should."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="wrong-shape",
    says="A list, a group or a plain text stands where another should.",
    page=(
        "Every field has one shape: a text, a list, or a group of fields. A bracket too many or"
        " a wrong indentation makes one into another."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="  minutes: {first_time: 60, practised: 30}\n",
    bad="  minutes: 60\n",
    known_by=(
        r"this is a (list|group of fields);",
        r"this should be a group",
        r"is written as fields",
        r"this file is a list; each entry",
        r"should stand here$",
        r"a conclusion is exactly one thing",
        r"'is:' belongs to a finding",
        r"is read as text of the line above",
    ),
)
