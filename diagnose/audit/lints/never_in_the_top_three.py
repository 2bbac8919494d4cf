"""A cause that no answers can bring into the first three."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Causes that rank below third where everything speaks for them."""
    for name, case in study.best_cases.items():
        if case.rank > 3 or case.rank == 0:
            what = f"in its own best case it ranks {case.rank or 'nowhere'}; above it: {case.above}"
            mend = "link what only it shows, or say in which circumstance it is likelier"
            yield Remark("cause", name, ("shows",), what, mend)


LINT = Lint(
    id="never-in-the-top-three",
    says="A cause that no answers can bring into the first three.",
    page=(
        "Every cause must be findable: in its own best case, with all it shows seen and its "
        "circumstances so, it must stand among the first three. One that never does is covered "
        "by others, too rare, or too weakly linked, and the person whose machine has it is sent"
        " elsewhere."
    ),
    file="causes/surroundings/shaking-floor.yaml",
    good="how_common: occasional\n",
    bad="how_common: 0.0000001\n",
    look=look,
    dear=True,
)
