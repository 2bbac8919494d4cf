"""A word that stands once in all the files and is almost one that stands often."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study
from diagnose.audit.walking import texts

WORD = re.compile(r"[A-Za-z]+(?:'[a-z]+)?")
OFTEN = 4  # times a word stands elsewhere before a near one is taken for a slip


def look(study: Study) -> Iterator[Remark]:
    """Words of five letters or more with one letter doubled, or two letters changed round."""
    found = list(texts(study.strings))
    counts = Counter(w.lower() for *_, text in found for w in WORD.findall(text))
    for kind, entry, path, text in found:
        for word in WORD.findall(text):
            low = word.lower()
            if counts[low] > 1 or len(low) < 5:
                continue
            meant = next((w for w in _mended(low) if counts[w] >= OFTEN), "")
            if meant:
                what = f"'{word}' stands only here in all the files"
                yield Remark(kind, entry, path, what, "if it is a slip, mend it", meant)


def _mended(word: str) -> Iterator[str]:
    """What the word may have been: a letter too many, or two letters changed round.

    A letter doubled in the middle is a slip; one at the end makes another form of a word.
    """
    for n in range(len(word) - 2):
        if word[n] == word[n + 1]:
            yield word[:n] + word[n + 1 :]
        elif n:
            yield word[:n] + word[n + 1] + word[n] + word[n + 2 :]


LINT = Lint(
    id="slip-of-the-pen",
    says="A word that stands once and is almost one that stands often.",
    page=(
        "A letter doubled by the keyboard, or two letters changed round, makes a page look "
        "careless and a search miss it. A word that stands once in all the files and is so made "
        "from one that stands often is shown, with the word it may have been."
    ),
    file="checks/wheel/wheel-look.yaml",
    good="Wheel stopped:",
    bad="Wheel stoppped:",
    look=look,
)
