"""The same thing stands twice in one list."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.shelves import SHELVES
from diagnose.audit.study import Study
from diagnose.audit.walking import repeats


def look(study: Study) -> Iterator[Remark]:
    """Lists of any entry in which two parts are the same."""
    for kind, shelf in SHELVES.items():
        for name, thing in getattr(study.book, shelf).items():
            borrowed = kind == "cause" and thing.fix.id != thing.id
            for path, first, second in repeats(thing):
                if borrowed and path[:1] == ("fix",):
                    continue
                what = f"this says the same as number {first + 1} of the list"
                yield Remark(kind, name, (*path, second), what, "take one out, or change it")


LINT = Lint(
    id="said-twice",
    says="The same thing stands twice in one list.",
    page=(
        "A list that names one thing twice was copied and not finished: the second was meant to"
        " be another."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="look_alikes: [lumpy-belt, shaking-floor]\n",
    bad="look_alikes: [lumpy-belt, lumpy-belt]\n",
    look=look,
)
