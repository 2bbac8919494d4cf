"""A conclusion from a grid of readings that the readings cannot carry."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="grid-claims-too-much",
    says="A conclusion from a grid of readings that the readings cannot carry.",
    page=(
        "An indicator that rides on the machine shows the part against the machine's own travel: "
        "it cannot show that the ways are worn or that the part is flat. A conclusion from the "
        "numbers of a grid says what the readings must be able to show ('shows: flat'), and is "
        "refused where they cannot. Other conclusions have no 'shows:'."
    ),
    file="rules/bars.yaml",
    good="    - {finding: bar-rhythm, is: none-found}\n",
    bad="    - {finding: bar-rhythm, is: none-found, shows: flat}\n",
    known_by=(
        r"rests on a grid and says not",
        r"[Tt]hese readings cannot show",
        r"'shows:' belongs to",
    ),
)
