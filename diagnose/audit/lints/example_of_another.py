"""An example whose cause is not the one it stands beside."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Examples that do not name their own cause, or name it both ways."""
    for cause in study.book.causes.values():
        for n, example in enumerate(cause.examples):
            if cause.id not in (example.first, example.not_first):
                what = f"this example says nothing of {cause.id}"
                yield Remark(
                    "cause", cause.id, ("examples", n), what, "name it, or move the example"
                )
            elif example.first == example.not_first:
                what = f"{cause.id} cannot be first and not first"
                yield Remark("cause", cause.id, ("examples", n), what, "keep one")


LINT = Lint(
    id="example-of-another",
    says="An example whose cause is not the one it stands beside.",
    page=(
        "The examples of a cause say that it comes first, or that it does not. One that speaks "
        "of another cause alone belongs in the file of that cause."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="examples:\n",
    bad=(
        "examples:\n"
        "  - title: a belt with a lump in it\n"
        "    complaint: [even-bars-across-travel]\n"
        "    answers: {drive-kind: belt}\n"
        "    first: lumpy-belt\n"
    ),
    look=look,
)
