"""An example that gives no answer at all, or two that are the same case."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Examples of a cause without answers, or like an earlier one."""
    for cause in study.book.causes.values():
        seen: list[tuple[object, object]] = []
        for n, example in enumerate(cause.examples):
            case = (frozenset(example.complaint), dict(example.answers))
            if not example.answers:
                what = "this example gives no answer"
                path = ("examples", n, "answers")
                yield Remark("cause", cause.id, path, what, "give what was found")
            elif case in seen:
                what = "this is the same case as an earlier example"
                mend = "change an answer, so that it tests something else"
                yield Remark("cause", cause.id, ("examples", n, "answers"), what, mend)
            seen.append(case)


LINT = Lint(
    id="example-gives-nothing",
    says="An example that gives no answer at all, or two that are the same case.",
    page=(
        "An example is a test: without answers it only says which cause is the commonest, and "
        "two examples with the same answers test one thing twice."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="answers: {wheel-changed: no, neighbour-off: gone}",
    bad="answers: {wheel-changed: yes, bars-even: yes}",
    look=look,
)
