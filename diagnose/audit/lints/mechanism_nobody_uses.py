"""A mechanism that no cause leads through."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Mechanisms without an arrow to them."""
    arrows = [a for c in study.book.causes.values() for a in c.leads_through]
    arrows += [a for m in study.book.mechanisms.values() for a in m.leads_to]
    reached = {a.to for a in arrows}
    for name in study.book.mechanisms:
        if name not in reached:
            what = f"no cause and no mechanism leads to {name}"
            mend = "name it under 'leads_through:' of a cause, or take it out"
            yield Remark("mechanism", name, ("id",), what, mend)


LINT = Lint(
    id="mechanism-nobody-uses",
    says="A mechanism that no cause leads through.",
    page=(
        "A mechanism is a step between a cause and a symptom. One that nothing leads to is "
        "never told to anyone: link it, or take it out."
    ),
    file="mechanisms.yaml",
    good="- id: grains-rub\n",
    bad=(
        "- id: dust-floats\n"
        "  name: dust floats\n"
        "  explain: Fine dust hangs in the coolant and goes round again.\n"
        "  leads_to:\n"
        "    - {to: burnt-patches, because: dirty coolant cools less, source:"
        " common-practice}\n"
        "- id: grains-rub\n"
    ),
    look=look,
)
