"""Reads what a machinist writes: a number with its unit, in inch or metric, with a give-or-take."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from diagnose.physics.dimensions import DIMENSIONS, Dimension
from diagnose.physics.numerals import NumeralError, read_numeral, split_numeral
from diagnose.physics.units import Unit, find_unit, spellings, unit_key

ABSOLUTE_ZERO = -273.15
_GIVE_OR_TAKE = re.compile(r"\s*(?:\+\s*/?\s*-|±|give or take)\s*")
_RANGE = re.compile(r"\s*(?:\.\.+|…|–|\bto\b)\s*")
_HYPHEN_RANGE = re.compile(r"^([\d.,]+)\s*-\s*([\d.,]+(?:\s+\D.*|\D*))$")
_MARKS = re.compile(r"^(.+?)\s*(?:\b(?:marks?|bars?|lines?|waves?)\s*)?\b(?:in|per|over)\s+(.+)$")
_COMPOUND = {("ft", "in"), ("h", "min"), ("min", "s")}


class QuantityError(ValueError):
    """What was written is not a usable quantity; the text says what is wrong and how to mend it."""


@dataclass(frozen=True)
class Quantity:
    """A number as understood: `value` and `uncertainty` (None when not given) in SI.

    `dimension` is an id of `units.DIMENSIONS`; `text` is what was written.
    """

    value: float
    uncertainty: float | None
    dimension: str
    text: str

    @property
    def lowest(self) -> float:
        """Value less the uncertainty."""
        return self.value - (self.uncertainty or 0.0)

    @property
    def highest(self) -> float:
        """Value plus the uncertainty."""
        return self.value + (self.uncertainty or 0.0)


def read_quantity(text: str, dimension: str, default_unit: str | None = None) -> Quantity:
    """The quantity written in `text`, of the dimension, in SI.

    A number without unit takes `default_unit`, if one is given. Raises QuantityError with a plain
    message, KeyError for an unknown dimension.
    """
    kind = DIMENSIONS[dimension]
    words = _tidy(text)
    if not words:
        raise QuantityError(f"nothing is written; write {kind.noun}, for example {kind.example}")
    if re.fullmatch(r"[-+]?(nan|inf|infinity)\b.*", words.casefold()):
        raise QuantityError(f"'{text.strip()}' is not a number that can be measured")
    value, spread = _read(words, kind, default_unit)
    _sensible(value, spread, kind, text.strip())
    return Quantity(value, spread, dimension, text.strip())


def _tidy(text: str) -> str:
    if not text.isprintable():
        text = "".join(c if c.isprintable() else " " for c in text)
    signs = {"−": "-", "‐": "-", "‑": "-", "\u00a0": " ", "\u202f": " ", "\u2009": " ", "μ": "µ"}
    return " ".join("".join(signs.get(c, c) for c in text).split())


def _read(words: str, kind: Dimension, default: str | None) -> tuple[float, float | None]:
    if kind.id == "count-per-length":
        marks = _MARKS.match(words)
        if marks:
            return _marks_in_length(marks.group(1), marks.group(2))
    ends = _RANGE.split(words)
    hyphen = _HYPHEN_RANGE.match(words)
    if hyphen and "/" not in hyphen.group(1) and not re.match(r"^\d+-\d+/\d+", words):
        ends = [hyphen.group(1), hyphen.group(2)]
    if len(ends) == 2 and all(ends):
        return _range(ends[0], ends[1], kind, default)
    parts = _GIVE_OR_TAKE.split(words)
    if len(parts) == 2 and all(parts):
        return _give_or_take(parts[0], parts[1], kind, default)
    if len(parts) > 2 or len(ends) > 2 or not all(parts):
        raise QuantityError(f"'{words}' cannot be read; write it like {kind.example}")
    return _single(words, kind, default), None


def _single(words: str, kind: Dimension, default: str | None) -> float:
    number, unit = _number_and_unit(words, kind, default)
    return unit.to_si(number)


def _number_and_unit(words: str, kind: Dimension, default: str | None) -> tuple[float, Unit]:
    numeral, rest = _split(words, kind)
    second = re.match(r"^([^\d]+?)\s*(\d.*)$", rest) if kind.id in ("length", "time") else None
    if second:
        return _compound(numeral, second.group(1), second.group(2), kind, words)
    return numeral, _unit(rest, kind, default, words)


def _split(words: str, kind: Dimension) -> tuple[float, str]:
    try:
        numeral, rest = split_numeral(words)
        if kind.id == "ratio" and re.match(r"^:\s*[\d.,]+$", rest):
            return read_numeral(numeral) / _divisor(rest[1:].strip()), ""
        return read_numeral(numeral), rest
    except NumeralError as error:
        raise QuantityError(f"{error}; write it like {kind.example}") from None


def _divisor(text: str) -> float:
    value = read_numeral(text)
    if value == 0:
        raise NumeralError(f"'{text}' divides by nothing")
    return value


def _compound(
    first: float, unit_text: str, tail: str, kind: Dimension, words: str
) -> tuple[float, Unit]:
    large = _unit(unit_text, kind, None, words)
    second, small = _number_and_unit(tail, kind, None)
    if (large.name, small.name) not in _COMPOUND:
        raise QuantityError(f"'{words}' holds two numbers; write one, like {kind.example}")
    return first + second * small.factor / large.factor, large


def _unit(text: str, kind: Dimension, default: str | None, words: str) -> Unit:
    if not text:
        if default is None and not kind.bare:
            raise QuantityError(
                f"'{words}' has no unit: write the unit, for example {kind.example}"
            )
        text = default or ""
    found = find_unit(text, kind.id)
    if found is not None:
        return found
    raise QuantityError(_why_not(text, kind))


def _why_not(text: str, kind: Dimension) -> str:
    if unit_key(text).casefold() in ("mil", "mils"):
        return "'mil' means thou to some and mm to others: write thou or mm"
    others = [d for name, d in DIMENSIONS.items() if find_unit(text, name) and name != kind.id]
    if others and text:
        return f"this wants {kind.noun}; {text} is {others[0].noun}. Write it like {kind.example}"
    from difflib import get_close_matches

    near = get_close_matches(unit_key(text).casefold(), spellings(kind.id), n=1, cutoff=0.5)
    hint = f"did you mean {near[0]}?" if near else f"write it like {kind.example}"
    return f"'{text}' is not a unit of {kind.noun} known here; {hint}"


def _range(low: str, high: str, kind: Dimension, default: str | None) -> tuple[float, float]:
    upper, unit = _number_and_unit(high, kind, default)
    _, rest = _split(low, kind)
    first = _single(low, kind, default) if rest else _single(low, kind, unit.name)
    last = unit.to_si(upper)
    if first > last:
        raise QuantityError(
            f"the range runs backwards: write the smaller number first, {high} last"
        )
    return (first + last) / 2, (last - first) / 2


def _give_or_take(
    middle: str, spread: str, kind: Dimension, default: str | None
) -> tuple[float, float]:
    if spread.endswith("%") and kind.id not in ("ratio", "slope"):
        share = _split(spread, kind)[0] / 100
        value = _single(middle, kind, default)
        return value, abs(value) * share
    step, unit = _number_and_unit(spread, kind, _own_unit(middle, kind) or default)
    value = _single(middle, kind, unit.name)
    if step < 0:
        raise QuantityError(f"the give-or-take '{spread}' is below zero; write it without a sign")
    number = unit.from_si(value)
    return value, (unit.to_si(number + step) - unit.to_si(number - step)) / 2


def _own_unit(words: str, kind: Dimension) -> str | None:
    return _split(words, kind)[1] or None


def _marks_in_length(count_text: str, length_text: str) -> tuple[float, float | None]:
    length = read_quantity(
        length_text if re.search(r"\d", length_text) else f"1 {length_text}", "length"
    )
    if length.value == 0:
        raise QuantityError("marks in no length at all; write it like 8 in 25 mm")
    count = read_quantity(count_text, "count")
    spread = None if count.uncertainty is None else count.uncertainty / length.value
    return count.value / length.value, spread


def _sensible(value: float, spread: float | None, kind: Dimension, text: str) -> None:
    if not math.isfinite(value) or (spread is not None and not math.isfinite(spread)):
        raise QuantityError(f"'{text}' is too large a number to mean anything")
    if value < 0 and not kind.signed:
        raise QuantityError(f"'{text}' is below zero; {kind.noun} cannot be")
    if kind.id == "temperature" and value < ABSOLUTE_ZERO:
        raise QuantityError(f"'{text}' is colder than anything can be")
