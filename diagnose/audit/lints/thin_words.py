"""A text that says nothing: a word or a number where a sentence should stand."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study
from diagnose.audit.walking import texts

LEAST = {
    "help": 3,
    "because": 2,
    "summary": 4,
    "ask": 3,
    "explain": 4,
    "proof": 3,
    "steps": 2,
    "do": 2,
    "do_first": 2,
    "looks_like": 2,
    "what_is_wrong": 3,
    "cleared_when": 3,
    "title": 2,
    "note": 2,
}


def look(study: Study) -> Iterator[Remark]:
    """Texts of fewer words than the field needs, or without any letters."""
    for kind, entry, path, text in texts(study.strings):
        least = LEAST.get(str(path[-1] if isinstance(path[-1], str) else path[-2]), 1)
        words = [w for w in text.replace("-", " ").split() if any(c.isalpha() for c in w)]
        left_over = "TODO" in text or "..." in text
        if len(words) < least or left_over or not words:
            what = f"'{text}' says too little here"
            yield Remark(kind, entry, path, what, "write it as you would say it to a newcomer")


LINT = Lint(
    id="thin-words",
    says="A text that says nothing: a word or a number where a sentence should stand.",
    page=(
        "Help, reasons, summaries and steps are for a person who does not know yet. One word, a"
        " bare number or a left-over mark teaches nobody. The reason of a link is what makes "
        "the page believable."
    ),
    file="causes/wheel/wheel-left-undressed.yaml",
    good="because: rubbing heats the work",
    bad="because: heat",
    look=look,
)
