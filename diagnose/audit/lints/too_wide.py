"""A complaint in which the exact sum would be too wide."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Causes in whose own best case the sum is wider than it may be."""
    for name, case in study.best_cases.items():
        if case.width > study.widest:
            what = f"with all it shows the sum is {case.width} wide; {study.widest} is the most"
            mend = "drop links that are hardly above the background"
            yield Remark("cause", name, ("shows",), what, mend)


LINT = Lint(
    id="too-wide",
    says="A complaint in which the exact sum would be too wide.",
    page=(
        "The ranking is an exact sum over all combinations of causes. When too many signs share"
        " too many causes it grows beyond bounds, and the tool would have to set evidence "
        "aside. Split the symptom, or drop links that are hardly above the background."
    ),
    file="causes/drive/lumpy-belt.yaml",
    good=(
        "  - {finding: bars-evenly-spaced, how_often: usually, because: the belt turns"
        " evenly, source: common-practice}\n"
    ),
    bad=(
        "  - {finding: bars-evenly-spaced, how_often: usually, because: the belt turns"
        " evenly, source: common-practice}\n"
        "  - {finding: dirt-marks-below, how_often: often, because: it throws grit,"
        " source: common-practice}\n"
        "  - {finding: wheel-face, is: shiny, how_often: often, because: it slips, source:"
        " common-practice}\n"
    ),
    look=look,
    dear=True,
)
