"""What the plain words of a card answer already, so that it is not asked again."""

from __future__ import annotations

import re
from collections.abc import Mapping

from diagnose.book.model import Book

NUMBER = r"\d+/\d+|\d+(?:[.,]\d+)?(?:[ -]\d+/\d+)?"
UNIT = r"mm|inch(?:es)?|in\b|\"|''|”|″"
SIZES = re.compile(
    rf"(?<![\w/.])({NUMBER})\s*({UNIT})?\s*[xX×*]\s*({NUMBER})\s*({UNIT})?"
    rf"(?:\s*[xX×*]\s*(?:{NUMBER})\s*({UNIT})?)?"
)
TURNS = re.compile(r"(\d[\d.,]*)\s*(?:rpm|r\.p\.m\.?|r/min|rev/min|1/min|turns)\b", re.IGNORECASE)
RIM = re.compile(r"(\d[\d.,]*)\s*(m/s|ft/min|s?fpm|sfm)\b", re.IGNORECASE)
DRY = re.compile(r"(?:always |runs? |grinds? |we grind |it is )?dry(?: only| grinding)?|none|no"
                 r"|no coolant|without(?: coolant)?", re.IGNORECASE)  # fmt: skip
SMALLEST_MM = 30.0  # no wheel of a surface grinder is so small: below it a size is in inches
SPEEDS = ("marked-turning-speed", "marked-rim-speed")


def facts_in_words(kind: str, words: Mapping[str, str], book: Book) -> dict[str, str]:
    """Answers by check that the words of a machine or wheel card give; only what is sure.

    A speed limit that was read off the wheel also says that its mark can be read.
    """
    found = _of_wheel(words) if kind == "wheel" else _of_machine(words)
    return {name: text for name, value in found.items() if (text := _read(book, name, value))}


def words_in_marking(kind: str, marking: str) -> frozenset[str]:
    """The fields of a wheel card that its marking fills already."""
    if kind != "wheel":
        return frozenset()
    filled = {"size": _sizes(marking), "limit": _speeds(marking)}
    return frozenset(name for name, found in filled.items() if found)


def told_already(facts: Mapping[str, str]) -> frozenset[str]:
    """Checks that need no asking beside these facts: a limit is marked one way or the other."""
    spoken = any(name in facts for name in SPEEDS)
    return frozenset(facts) | (frozenset(SPEEDS) if spoken else frozenset())


def _of_machine(words: Mapping[str, str]) -> dict[str, str]:
    dry = DRY.fullmatch(words.get("coolant", "").strip(" ."))
    return {"wet-or-dry": "dry"} if dry else {}


def _of_wheel(words: Mapping[str, str]) -> dict[str, str]:
    from diagnose.review.marking_facts import facts_of

    marking, size, limit = (words.get(name, "") for name in ("marking", "size", "limit"))
    found: dict[str, str] = {}
    for text in (marking, RIM.sub(" ", TURNS.sub(" ", SIZES.sub(" ", marking)))):
        found |= facts_of(" ".join(text.split()).rstrip(" ,;"))
    found |= _sizes(marking) | _sizes(size)
    found |= _speeds(marking) | _speeds(limit)
    if any(name in found for name in SPEEDS):
        found["wheel-mark"] = "can-be-read"
    return found


def _sizes(text: str) -> dict[str, str]:
    """Diameter and width: in inches when it says so, has a fraction, or would be tiny in mm."""
    said = SIZES.search(text)
    if not said:
        return {}
    diameter, width = said[1], said[3]
    units = {u.lower() for u in (said[2], said[4], said[5]) if u}
    first = re.match(r"\d+", diameter)
    tiny = "/" in diameter or (first is not None and float(first[0]) < SMALLEST_MM)
    inches = not units <= {"mm"} or (not units and ("/" in width or tiny))
    unit = "in" if inches else "mm"
    return {"wheel-diameter": f"{diameter} {unit}", "wheel-width": f"{width} {unit}"}


def _speeds(text: str) -> dict[str, str]:
    found: dict[str, str] = {}
    turns, rim = TURNS.search(text), RIM.search(text)
    if turns:
        found["marked-turning-speed"] = f"{_plain(turns[1])} rpm"
    if rim:
        unit = "m/s" if rim[2].lower() == "m/s" else "ft/min"
        found["marked-rim-speed"] = f"{_plain(rim[1])} {unit}"
    return found


def _plain(number: str) -> str:
    """A number without the marks between its thousands: 3,600 is 3600."""
    return re.sub(r"[.,](?=\d{3}\b)", "", number).rstrip(".,")


def _read(book: Book, name: str, value: str) -> str:
    """The answer as a case keeps it; "" when the book has no such check or cannot read it."""
    from diagnose.book.answers import AnswerError, read_answer

    check = book.checks.get(name)
    try:
        return read_answer(check, value, numbered=False) if check else ""
    except AnswerError:
        return ""
