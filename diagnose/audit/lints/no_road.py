"""A cause whose road of mechanisms and whose links do not agree."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Causes whose roads and links do not agree."""
    book = study.book
    for cause in book.causes.values():
        shown = {link.finding for link in cause.shows}
        wide = shown | {s for name in shown if (s := book.findings[name].sharpens)}
        complaints = wide & set(book.symptoms)
        if not complaints:
            continue
        roads = [set(_ends(study, arrow.to)) for arrow in cause.leads_through]
        if not complaints & set().union(*roads):
            what = f"no mechanism leads from {cause.id} to {' or '.join(sorted(complaints))}"
            path = ("leads_through",) if roads else ("id",)
            yield Remark("cause", cause.id, path, what, "write the road under 'leads_through:'")
            continue
        for n, ends in enumerate(roads):
            if ends and not ends & wide:
                what = f"this leads to {', '.join(sorted(ends))}, which the cause does not show"
                mend = "link what it leads to under 'shows:', or take the step out"
                yield Remark("cause", cause.id, ("leads_through", n, "to"), what, mend)


def _ends(study: Study, start: str) -> Iterator[str]:
    """The signs and symptoms that a mechanism leads to."""
    todo, seen = [start], {start}
    while todo:
        now = todo.pop()
        if now not in study.book.mechanisms:
            yield now
            continue
        for arrow in study.book.mechanisms[now].leads_to:
            if arrow.to not in seen:
                seen.add(arrow.to)
                todo.append(arrow.to)


LINT = Lint(
    id="no-road",
    says=(
        "A cause that no chain of mechanisms leads to a complaint it shows, or that leads to "
        "one it does not show."
    ),
    page=(
        "A newcomer learns from the chain: cause, mechanism, symptom. When a cause shows a "
        "symptom there must be a road of mechanisms to one of those it shows, else the tool can"
        " say that but not why. And a road that ends at a symptom which the cause does not show"
        " says two things at once."
    ),
    file="causes/surroundings/shaking-floor.yaml",
    good="{to: waves-cut-in-the-work,",
    bad="{to: grains-rub,",
    look=look,
)
