"""A tool or a label that is almost one used elsewhere."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study
from diagnose.audit.walking import tags

GROUPS = (("tools",), ("changes", "spoiled_by", "renewed_by"), ("shares_preparation",), ("family",))


def look(study: Study) -> Iterator[Remark]:
    """Labels used once that are near one used elsewhere."""
    for group in GROUPS:
        used: dict[str, list[tuple[str, str, tuple[str | int, ...]]]] = {}
        for kind, entry, path, tag in tags(study.strings):
            if path[0 if path[0] != "fix" else 1] in group:
                used.setdefault(tag, []).append((kind, entry, path))
        for tag, places in used.items():
            if len(places) > 1:
                continue
            others = [t for t in used if t != tag and abs(len(t) - len(tag)) <= 1]
            near = next((t for t in others if _one_letter(tag, t)), "")
            if near:
                kind, entry, path = places[0]
                yield Remark(kind, entry, path, f"'{tag}' is used only here", "", near)


def _one_letter(one: str, other: str) -> bool:
    """True when one letter more, less or other makes one word the other."""
    short, long = sorted((one, other), key=len)
    if len(short) == len(long):
        return sum(a != b for a, b in zip(short, long, strict=True)) == 1
    return any(long[:n] + long[n + 1 :] == short for n in range(len(long)))


LINT = Lint(
    id="near-tags",
    says="A tool or a label that is almost one used elsewhere.",
    page=(
        "Labels (tools, shared preparations, what is changed, families) are free words. One "
        "that is used once and is almost like another that is used more often is a slip: a shop"
        " that has a glass would be told it lacks a glas."
    ),
    file="checks/part/bar-spacing.yaml",
    good="tools: [rule]\n",
    bad="tools: [glas]\n",
    look=look,
)
