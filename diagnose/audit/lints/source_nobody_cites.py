"""A source or a caution that nothing names."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study
from diagnose.audit.walking import references

GENERAL = ("common-practice", "from-memory")


def look(study: Study) -> Iterator[Remark]:
    """Sources and cautions that stand nowhere; the two general sources are free to all."""
    cited = {word for _, _, _, word in references(study.strings)}
    for name in study.book.sources:
        if name not in cited and name not in GENERAL:
            what = f"nothing cites the source {name}"
            yield Remark("source", name, ("id",), what, "cite it where it is meant, or take it out")
    for name in study.book.cautions:
        if name not in cited:
            what = f"the caution {name} stands before no step"
            yield Remark("caution", name, ("id",), what, "name it under 'cautions:' of a step")


LINT = Lint(
    id="source-nobody-cites",
    says="A source or a caution that nothing names.",
    page=(
        "A source that nothing cites was mistyped where it should be, or its claim was dropped."
        " A caution that stands before no step protects nobody."
    ),
    file="sources.yaml",
    good="- id: from-memory\n",
    bad=(
        "- id: old-handbook\n"
        "  title: a handbook that nobody names\n"
        "  standing: from memory\n"
        "- id: from-memory\n"
    ),
    look=look,
)
