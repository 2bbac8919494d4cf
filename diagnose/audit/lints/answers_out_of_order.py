"""Answers that do not run from nothing of the kind to most striking."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.signatures import signs_of
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Pick-one checks of one sign whose first answer is not nothing, or whose order differs."""
    for check in study.book.checks.values():
        if check.kind != "one" or check.reports is not None:
            continue
        for sign in signs_of(study.book, check):
            ids = study.book.findings[sign].value_ids
            told = [
                (ids.index(o.means[sign]), n)
                for n, o in enumerate(check.options)
                if sign in o.means
            ]
            last = -1
            for place, n in told:
                if place < last and not (check.options[n].raises or check.options[n].clears):
                    what = f"'{check.options[n].id}' is less striking than the answer before it"
                    mend = f"the order of {sign} is: {', '.join(ids)}"
                    yield Remark("check", check.id, ("options", n, "id"), what, mend)
                    break
                last = max(last, place)


LINT = Lint(
    id="answers-out-of-order",
    says="Answers that do not run from nothing of the kind to most striking.",
    page=(
        "Answers to a question about a sign run as the values of the sign do: nothing of the "
        "kind first, the most striking last. The tool and the person rely on it."
    ),
    file="checks/wheel/wheel-look.yaml",
    good=("  - {id: open, say: open and dull}\n  - {id: shiny, say: shiny flats on the grains}\n"),
    bad=("  - {id: shiny, say: shiny flats on the grains}\n  - {id: open, say: open and dull}\n"),
    look=look,
)
