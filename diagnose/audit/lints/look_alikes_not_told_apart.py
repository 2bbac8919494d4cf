"""Look-alikes with different fixes that no quick check separates."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.signatures import FAR, QUICK, separation
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Pairs of look-alikes without a check between them; the best one there is is named."""
    book = study.book
    told: set[frozenset[str]] = set()
    for cause in book.causes.values():
        for n, name in enumerate(cause.look_alikes):
            other = book.causes.get(name)
            pair = frozenset((cause.id, name))
            if other is None or other.fix.id == cause.fix.id or pair in told:
                continue
            told.add(pair)
            ways = separation(book, study.signatures[cause.id], study.signatures[name])
            if any(far >= FAR and check.minutes <= QUICK for far, check in ways):
                continue
            best = f"; the best is {ways[0][1].id} ({ways[0][0]:.2f})" if ways else ""
            what = f"no check of {QUICK:g} min tells {name} from {cause.id}{best}"
            mend = "write the check that does, or link what differs"
            yield Remark("cause", cause.id, ("look_alikes", n), what, mend)


LINT = Lint(
    id="look-alikes-not-told-apart",
    says="Look-alikes with different fixes that no quick check separates.",
    page=(
        "Two causes that are taken for each other and are mended differently need a check of 20"
        " minutes or less whose answers differ clearly (a total variation of .3). Without one "
        "the tool can only guess, and guesses cost the longer fix half of the time."
    ),
    file="causes/coolant/coolant-misses-the-cut.yaml",
    good=("{finding: thin-stream, how_often: almost always, because: it is seen at the nozzle,"),
    bad=("{finding: wheel-face, is: shiny, how_often: often, because: it is seen at the nozzle,"),
    look=look,
)
