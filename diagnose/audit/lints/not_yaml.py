"""The file is no YAML that can be read."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="not-yaml",
    says="The file is no YAML that can be read.",
    page=(
        'The files are YAML: "name: value" lines, "- " before each part of a list, spaces and '
        "never tabs at the start of a line. Until the form is right nothing can be said of what"
        ' the file means. Put quotes around a text that holds ": " or starts with a special '
        "sign; close every bracket and quote."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="name: Wheel out of balance\n",
    bad="name: Wheel: out of balance\n",
    known_by=(
        r"a tab at the start",
        r"a character that no text has",
        r"names for parts of a page",
        r"starts with '!'",
        r"where none can be",
        r"no ':' after this name",
        r"nothing to read here",
        r"not level with",
        r"is not closed",
        r"never closed",
        r"starts a code",
        r"a second page starts",
        r"a list cannot start here",
        r"cannot start with this sign",
        r"this cannot be read: ",
        r"lists within lists",
        r"must be plain words",
    ),
)
