"""What a person types at a question, understood: a command, an answer, or a slip explained."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.book.answers import AnswerError, read_answer
from diagnose.book.model import Check
from diagnose.book.numbered import numbered
from diagnose.case.entries import UNKNOWN

LETTERS = {
    "w": "why",
    "b": "back",
    "d": "unknown",
    "t": "think",
    "n": "later",
    "l": "list",
    "q": "quit",
}
WORDS = {
    "?": "why",
    "why": "why",
    "back": "back",
    "don't know": "unknown",
    "dont know": "unknown",
    "think so": "think",
    "i think so": "think",
    "not now": "later",
    "later": "later",
    "list": "list",
    "quit": "quit",
    "stop": "quit",
}


@dataclass(frozen=True)
class Typed:
    """One typed line. kind: answer | slip | keep (Enter alone) | one of the commands.

    `value` is the answer as a case keeps it; for a slip it says what is wrong.
    """

    kind: str
    value: str = ""
    sure: bool = True


def command(line: str) -> str:
    """The command a line means, or ""."""
    word = " ".join(line.lower().replace("’", "'").split())
    return LETTERS.get(word) or WORDS.get(word, "")


def pick(last: int, first: int = 1) -> str:
    """What to type where only a number of a list will do."""
    return f"Type {first}." if last == first else f"Type a number from {first} to {last}."


def understand(check: Check, line: str) -> Typed:
    """A line typed at the question of a check. One-letter commands come before any answer."""
    words = " ".join(line.split())
    if not words:
        return Typed("keep")
    if words.lower() in LETTERS:
        return Typed(LETTERS[words.lower()])
    if words.lower().startswith("t ") and check.kind != "file":
        inner = understand(check, words[2:])
        return Typed(inner.kind, inner.value, inner.kind != "answer")
    if not _is_an_answer(check, words) and command(words):
        return Typed(command(words))
    try:
        value = read_answer(check, ids(check, words), numbered=False)
    except AnswerError as error:
        return Typed("slip", _slip(check, words, error))
    return Typed("unknown") if value == UNKNOWN else Typed("answer", value)


def ids(check: Check, words: str) -> str:
    """Numbers of answers as the ids they stand for; anything else as it is."""
    if check.kind not in ("one", "any"):
        return words
    numbers = numbered(check)
    parts = words.replace(",", " ").split()
    if not all(part in numbers for part in parts):
        return words
    return ", ".join(numbers[part] for part in parts)


def _is_an_answer(check: Check, words: str) -> bool:
    return words.lower() in {text for o in check.options for text in (o.id, o.say.lower())}


def _slip(check: Check, words: str, error: AnswerError) -> str:
    if check.options and all(p.isdecimal() for p in words.replace(",", " ").split()):
        last = max((int(n) for n in numbered(check)), default=0)
        return f"There is no answer {words}; they go up to {last}."
    if not check.options:
        mend = f" {error.mend[:1].upper()}{error.mend[1:]}." if error.mend else ""
        return f"{error.what[:1].upper()}{error.what[1:]}.{mend}"
    near = check.by_option.get(error.near)
    if near is not None:
        return f"'{words}' is not one of the answers. Did you mean: {near.say}?"
    return f"'{words}' is not one of the answers; type its number."
