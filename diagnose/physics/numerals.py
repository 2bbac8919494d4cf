"""Reads the number at the head of what was written: decimals of both kinds, and fractions."""

from __future__ import annotations

import math
import re

_VULGAR = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_DECIMAL = r"(?:\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?![\d/])|\d[\d.,]*|[.,]\d+)(?:[eE][-+]?\d+)?"
_FRACTION = r"(?:\d+[ -]+)?\d+\s*/\s*\d+"
_HEAD = re.compile(rf"^\s*([-+]?\s*(?:{_FRACTION}|{_DECIMAL}))\s*(.*)$")


class NumeralError(ValueError):
    """The number cannot be read, or could mean two things."""


def split_numeral(words: str) -> tuple[str, str]:
    """The number at the head of the text and what follows it. Raises NumeralError."""
    for sign, plain in _VULGAR.items():
        words = words.replace(sign, f" {plain}")
    found = _HEAD.match(words)
    if found is None:
        raise NumeralError(f"'{words}' does not begin with a number")
    return found.group(1), found.group(2).strip()


def read_numeral(text: str) -> float:
    """The value of a decimal (point or comma) or a fraction (`1 1/2`). Raises NumeralError."""
    words = text.strip()
    negative = words.startswith("-")
    words = words.lstrip("+-").strip()
    value = _fraction(words) if "/" in words else _decimal(words)
    if not math.isfinite(value):
        raise NumeralError(f"'{text}' is too large a number to mean anything")
    return -value if negative else value


def _fraction(words: str) -> float:
    whole, top, bottom = re.fullmatch(r"(?:(\d+)[ -]+)?(\d+)\s*/\s*(\d+)", words).groups()  # type: ignore[union-attr]  # words match
    if int(bottom) == 0:
        raise NumeralError(f"'{words}' divides by nothing")
    return int(whole or 0) + int(top) / int(bottom)


def _decimal(words: str) -> float:
    digits = words.replace(" ", "")
    commas, points = digits.count(","), digits.count(".")
    if commas and points:
        thousands = "," if digits.rindex(",") < digits.rindex(".") else "."
        digits = digits.replace(thousands, "").replace(",", ".")
    elif commas == 1:
        if re.fullmatch(r"[1-9]\d{0,2},\d{3}", digits):
            raise NumeralError(
                f"'{words}' could be {digits.replace(',', '')} or {digits.replace(',', '.')}: "
                "write it without the comma, or with a point"
            )
        digits = digits.replace(",", ".")
    elif commas > 1:
        if not re.fullmatch(r"\d{1,3}(,\d{3})+", digits):
            raise NumeralError(f"'{words}' has too many commas")
        digits = digits.replace(",", "")
    try:
        return float(digits)
    except ValueError:
        raise NumeralError(f"'{words}' is not a number") from None
