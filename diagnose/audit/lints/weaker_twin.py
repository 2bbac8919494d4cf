"""A cause whose links are a weaker part of those of another."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study
from diagnose.book.model import Cause


def look(study: Study) -> Iterator[Remark]:
    """Causes with another fix whose links, circumstances and reports another cause covers."""
    causes = list(study.book.causes.values())
    for cause in causes:
        own = _links(cause)
        for other in causes:
            if other.id == cause.id or other.fix.id == cause.fix.id:
                continue
            theirs = _links(other)
            covered = all(theirs.get(key, 0.0) >= often for key, often in own.items())
            shifts = {(s.when, s.factor) for s in cause.more_likely_when}
            more = shifts - {(s.when, s.factor) for s in other.more_likely_when}
            if covered and not more and not cause.be_sure and not cause.set_by:
                what = f"all it shows {other.id} shows as often: nothing tells them apart"
                mend = "say what it shows that the other does not, or make them one"
                yield Remark("cause", cause.id, ("shows",), what, mend)
                break


def _links(cause: Cause) -> dict[tuple[str, str], float]:
    return {(link.finding, link.value): link.how_often for link in cause.shows}


LINT = Lint(
    id="weaker-twin",
    says="A cause whose links are a weaker part of those of another.",
    page=(
        "When every sign of one cause is shown by another at least as often, the first can "
        "never be told from it by anything seen: it only ever ranks below. Say what it shows "
        "that the other does not, or make it one cause."
    ),
    file="causes/drive/lumpy-belt.yaml",
    good=(
        "  - {finding: thin-stream, how_often: sometimes, because: the belt throws the"
        " coolant about, source: common-practice}\n"
    ),
    bad="",
    look=look,
)
