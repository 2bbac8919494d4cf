"""A word or number that is not on the scale of the field."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="off-the-scale",
    says="A word or number that is not on the scale of the field.",
    page=(
        "How often, how common, how much more likely and every choice are written with the "
        "words of a closed scale (words.yaml and the field tables), so that the same word means"
        " the same everywhere. 0 and 1 are not possible: nothing is so sure that no evidence "
        "could move it."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="how_often: usually",
    bad="how_often: 1",
    known_by=(
        r"is not one of the words",
        r"is not possible here",
        r"is outside [-0-9]",
        r"is not a number",
        r"neither yes nor no",
        r"must lie above 0",
        r"come[s]? to more than always",
        r"come to 1 or more",
    ),
)
