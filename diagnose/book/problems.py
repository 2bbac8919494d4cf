"""What is wrong with a file, said so that the person who wrote it can mend it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

WIDTH = 100


@dataclass(frozen=True)
class Problem:
    """One fault of one file.

    `what` is wrong, `mend` says what to do about it, `suggestion` is the word that was perhaps
    meant. `source` is the line of the file, for the caret. Line and column count from 1; line 0
    means the file as a whole.
    """

    file: str
    line: int
    column: int
    what: str
    mend: str = ""
    suggestion: str = ""
    source: str = ""

    @property
    def place(self) -> str:
        """`file:line:column`, or the file alone when the fault has no line."""
        return f"{self.file}:{self.line}:{self.column}" if self.line else self.file

    def render(self) -> str:
        """The fault as text: place and fault, the line with a caret under it, the mend."""
        parts = [f"{self.place}: {self.what}"]
        if self.line and self.source.strip():
            parts += _caret(self.source, self.line, self.column)
        if self.suggestion:
            parts.append(f"  did you mean {self.suggestion}?")
        if self.mend:
            parts.append(f"  {self.mend}")
        return "\n".join(parts)


def _caret(source: str, line: int, column: int) -> list[str]:
    text = source.replace("\t", " ")
    start = max(0, column - 1 - WIDTH // 2) if len(text) > WIDTH else 0
    label = f"{line:6d} | "
    shown = text[start : start + WIDTH].rstrip()
    return [label + shown, " " * (len(label) + column - 1 - start) + "^"]


class BookError(Exception):
    """One or more files cannot be used as they stand.

    `problems` are all the faults of all the files, sorted by file and line; the text of the
    error is every one of them, rendered.
    """

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(in_order(problems))
        super().__init__("\n".join(p.render() for p in self.problems))


def in_order(problems: Iterable[Problem]) -> list[Problem]:
    """Sorted by file, line and column; the same fault said twice is kept once."""
    return sorted(dict.fromkeys(problems), key=lambda p: (p.file, p.line, p.column, p.what))
