"""The same evidence is counted twice."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="counted-twice",
    says="The same evidence is counted twice.",
    page=(
        "One answer is one piece of evidence. When it means two signs, when a sign is shown "
        "twice, or when a check reports two causes, the same look would move the ranking twice."
    ),
    file="checks/wheel/wheel-look.yaml",
    good="say: shiny flats on the grains}",
    bad="say: shiny flats on the grains, means: {wheel-face: shiny, thin-stream: yes}}",
    known_by=(
        r"it would count twice",
        r"is shown here and on line",
        r"already reports .*; a check reports",
        r"stands here twice",
        r"which the check does not settle",
    ),
)
