"""A name is not small letters and digits joined by hyphens."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="bad-name",
    says="A name is not small letters and digits joined by hyphens.",
    page=(
        "Ids are typed by hand, stand in file names and in case files that other shops read. "
        "Small letters, digits and hyphens are alike on every keyboard and every computer."
    ),
    file="findings/signs.yaml",
    good="- id: thin-stream\n",
    bad="- id: Thin Stream\n",
    known_by=(
        r"cannot be a name here",
        r"cannot be a label",
    ),
)
