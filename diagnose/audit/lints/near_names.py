"""Two ids that are almost the same."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.shelves import SHELVES
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Pairs of near ids of one kind, at the second of the two."""
    for kind, shelf in SHELVES.items():
        names = sorted(getattr(study.book, shelf))
        seen: dict[frozenset[str], str] = {}
        for name in names:
            if kind == "finding" and name in study.book.symptoms:
                continue
            for form in _forms(name):
                first = seen.setdefault(form, name)
                if first != name:
                    what = f"the ids '{first}' and '{name}' are almost the same"
                    yield Remark(kind, name, ("id",), what, "give one a name of its own")
                    break


def _forms(name: str) -> set[frozenset[str]]:
    """The words of a name without their order, and without an s at the end."""
    return {frozenset(word.removesuffix("s") for word in name.split("-"))}


LINT = Lint(
    id="near-names",
    says="Two ids that are almost the same.",
    page=(
        "Two entries of one kind whose ids have the same words in another order, or differ by "
        "one letter, are taken for each other by whoever writes a link. Most often one of them "
        "is a slip and the other is meant."
    ),
    file="findings/signs.yaml",
    good="- id: thin-stream\n",
    bad=(
        "- id: thin-streams\n"
        "  kind: sign\n"
        "  name: the stream is thin\n"
        "  without_cause: rarely\n"
        "  source: common-practice\n"
        "- id: thin-stream\n"
    ),
    look=look,
)
