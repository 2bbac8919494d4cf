"""The id of an entry is not the name of its file."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="id-unlike-file",
    says="The id of an entry is not the name of its file.",
    page=(
        "A cause, check, symptom or stop is one file, called after its id, so that a person "
        "finds it and two people do not write the same one twice."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="id: unbalanced-wheel\n",
    bad="id: unbalanced-wheels\n",
    known_by=(r"but the file is called",),
)
