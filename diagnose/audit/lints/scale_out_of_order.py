"""The words of a scale do not fall from more to less."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study


def look(study: Study) -> Iterator[Remark]:
    """Scales that do not fall from word to word."""
    words = study.book.words
    for name in ("how_often", "how_common", "change"):
        before, last = "", float("inf")
        for word, value in getattr(words, name).items():
            if value >= last:
                what = f"'{word}' is {value:g}, not below '{before}' ({last:g})"
                mend = "list the words from strongest to weakest"
                yield Remark("words", word, (name, word), what, mend)
            before, last = word, value


LINT = Lint(
    id="scale-out-of-order",
    says="The words of a scale do not fall from more to less.",
    page=(
        "words.yaml lists each scale from the strongest word to the weakest. Two words with one"
        ' number, or a scale that goes up and down, makes "usually" and "often" mean the wrong '
        "thing in every file at once."
    ),
    file="words.yaml",
    good="usually: 0.77",
    bad="usually: 0.95",
    look=look,
)
