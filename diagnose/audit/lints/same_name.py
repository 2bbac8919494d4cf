"""Two entries of one kind with the same name or the same summary."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.shelves import SHELVES
from diagnose.audit.study import Study

FIELDS = ("name", "summary", "ask", "say", "title", "explain")


def look(study: Study) -> Iterator[Remark]:
    """Names that stand twice within a kind, and answers that read alike within a check."""
    for kind, shelf in SHELVES.items():
        for field in FIELDS:
            yield from _twice(kind, field, getattr(study.book, shelf).values())
    for check in study.book.checks.values():
        said: dict[str, str] = {}
        for n, option in enumerate(check.options):
            first = said.setdefault(option.say.lower(), option.id)
            if first != option.id:
                what = f"the answers {first} and {option.id} read alike"
                yield Remark("check", check.id, ("options", n, "say"), what, "say what differs")


def _twice(kind: str, field: str, things: Iterable[object]) -> Iterator[Remark]:
    seen: dict[str, str] = {}
    for thing in things:
        name, text = getattr(thing, "id", ""), str(getattr(thing, field, "") or "").lower()
        if not text or (kind == "finding" and not getattr(thing, "source", "")):
            continue
        first = seen.setdefault(text, name)
        if first != name:
            what = f"{first} has the same '{field}:' as {name}"
            yield Remark(kind, name, (field,), what, "say what is different here")


LINT = Lint(
    id="same-name",
    says="Two entries of one kind with the same name or the same summary.",
    page=(
        "The person at the machine sees names, not ids. Two causes or two answers that read "
        "alike cannot be told apart on the screen; mostly one was copied and not changed."
    ),
    file="causes/wheel/wheel-left-undressed.yaml",
    good="name: Wheel left undressed too long\n",
    bad="name: Wheel out of balance\n",
    look=look,
)
