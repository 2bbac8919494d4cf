"""The page of a lint: what it means, an example it finds and the same one mended."""

from __future__ import annotations

from diagnose.audit.lint import Lint
from diagnose.audit.linting import lint_of, lints
from diagnose.book.near import nearest
from diagnose.book.problems import BookError, Problem
from diagnose.view.explanation import Explanation
from diagnose.view.folding import wrapped

BEFORE = "lint:"


def is_lint(words: str) -> bool:
    """True when the words ask for a lint: `lint:near-names`, `lint:`."""
    return words.strip().startswith(BEFORE)


def lint_pages(words: str) -> list[Explanation]:
    """The page of the lint asked for; the list of all of them for `lint:` alone.

    Raises BookError when there is no lint of that name.
    """
    name = words.strip().removeprefix(BEFORE).strip()
    if not name:
        lines = tuple(f"{lint.id}: {lint.says}" for lint in lints())
        return [Explanation("lint", "lint:", "All lints", "", (("Lints", lines),), None)]
    lint = lint_of(name)
    if lint is None:
        near = nearest(name, [known.id for known in lints()])
        mend = "diagnose explain lint: lists them all"
        raise BookError([Problem("explain", 0, 0, f"there is no lint '{name}'", mend, near)])
    return [_page(lint)]


def _page(lint: Lint) -> Explanation:
    sections = (
        ("What it means", (lint.page,)),
        (f"It is found here ({lint.file})", _lines(lint.bad)),
        ("It is let be here", _lines(lint.good)),
    )
    return Explanation("lint", lint.id, lint.says, "", sections, None)


def _lines(text: str) -> tuple[str, ...]:
    return tuple(text.rstrip("\n").split("\n")) if text.strip() else ("(nothing stands there)",)


def lint_text(told: Explanation) -> str:
    """The page for a terminal; examples keep their lines."""
    lines = [told.name.upper(), f"({told.kind}: {told.id})"]
    for heading, texts in told.sections:
        lines += ["", heading]
        for text in texts:
            example = heading.startswith("It is ")
            lines.append(f"    {text}" if example else wrapped(text, 4, "  - "))
    return "\n".join(lines)
