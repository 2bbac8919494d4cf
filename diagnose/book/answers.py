"""What a person writes as the answer to a check, read with care and never guessed at."""

from __future__ import annotations

from pathlib import Path

from diagnose.book.model import Check, Option
from diagnose.book.near import listed, nearest

UNKNOWN = "don't know"
_UNKNOWN = frozenset(
    ("don't know", "dont know", "do not know", "don’t know", "unknown", "not known", "?")
)


class AnswerError(ValueError):
    """The answer cannot be used: what is wrong, how to mend it, the option perhaps meant."""

    def __init__(self, what: str, mend: str = "", near: str = "") -> None:
        tail = f"; did you mean {near}?" if near else ""
        super().__init__(what + tail + (f"; {mend}" if mend else ""))
        self.what, self.mend, self.near = what, mend, near


def read_answer(check: Check, text: str, numbered: bool = True, folder: Path | None = None) -> str:
    """The answer as a case keeps it.

    An option's id for kind `one`, ids with ", " between for kind `any`, the number as written
    for kind `number`, the readings themselves for kind `file` (a file named is looked for in
    `folder`), or "don't know". An option may be given by its id, its words, the start of either
    when only one option starts so, or (`numbered`) by its place in the list, from 1.

    Raises AnswerError, which names the answers or the unit that is missing.
    """
    words = " ".join(text.split())
    if not words:
        raise AnswerError("nothing was answered", _how(check))
    if words.lower() in _UNKNOWN and words.lower() not in check.by_option:
        return UNKNOWN
    if check.kind == "number":
        return _number(check, words)
    if check.kind == "any":
        return _several(check, words, numbered)
    if check.kind == "one":
        return _option(check, words, numbered).id
    return _readings(check, words, folder)


def _how(check: Check) -> str:
    if check.kind == "number":
        return f"write a number with its unit, for example {check.example}"
    if check.options:
        return f"it can be: {listed(o.id for o in check.options)}"
    return "write the readings, or the name of a file with them"


def _option(check: Check, words: str, numbered: bool) -> Option:
    low = words.lower()
    for option in check.options:
        if low in (option.id, option.say.lower()):
            return option
    if numbered and low.isdecimal():
        if 1 <= int(low) <= len(check.options):
            return check.options[int(low) - 1]
        raise AnswerError(f"there is no answer {low}", f"they go from 1 to {len(check.options)}")
    starts = [o for o in check.options if _starts(o, low)]
    if len(starts) == 1:
        return starts[0]
    if starts:
        both = " or ".join(o.id for o in starts[:4])
        raise AnswerError(f"'{words}' could be {both}", "write a little more of it")
    near = nearest("-".join(low.split()), check.by_option)
    raise AnswerError(f"'{words}' is no answer to {check.id}", _how(check), near)


def _starts(option: Option, low: str) -> bool:
    return option.id.startswith("-".join(low.split())) or option.say.lower().startswith(low)


def _several(check: Check, words: str, numbered: bool) -> str:
    parts = [p.strip() for p in words.replace(";", ",").split(",") if p.strip()]
    if numbered and all(p.isdecimal() for p in words.replace(",", " ").split()):
        parts = words.replace(",", " ").split()
    if not parts:
        raise AnswerError("nothing was answered", _how(check))
    found = list(dict.fromkeys(_option(check, part, numbered).id for part in parts))
    if "none" in found and len(found) > 1:
        raise AnswerError("'none' cannot stand beside other answers", "write one or the other")
    order = [o.id for o in check.options]
    return ", ".join(sorted(found, key=order.index))


def _readings(check: Check, words: str, folder: Path | None) -> str:
    from diagnose.book.grid_checks import grid_reading, told_how
    from diagnose.physics.readings import BadReadings

    if not told_how(check):
        raise AnswerError("this check does not say what its readings are", "mend the check first")
    try:
        return grid_reading(check, words, folder).text
    except BadReadings as error:
        place = f"{error.file}:{error.line}: " if error.line else f"{error.file}: "
        what = (place if error.file else "") + error.what.rstrip(".")
        raise AnswerError(what, error.mend[:1].lower() + error.mend[1:].rstrip(".")) from None


def _with_own_example(told: str, check: Check) -> str:
    from diagnose.physics.units import DIMENSIONS

    usual = DIMENSIONS[check.dimension].example
    return told.replace(usual, check.example) if check.example else told


def _number(check: Check, words: str) -> str:
    from diagnose.physics.quantities import QuantityError, read_quantity

    example = f"for example {check.example}" if check.example else ""
    try:
        value = read_quantity(words, check.dimension).value
    except QuantityError as error:
        raise AnswerError(_with_own_example(str(error), check)) from None
    if check.lowest is not None and value < check.lowest:
        raise AnswerError(f"{words} is too little to be possible for {check.id}", example)
    if check.highest is not None and value > check.highest:
        raise AnswerError(f"{words} is too much to be possible for {check.id}", example)
    return words
