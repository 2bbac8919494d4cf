"""Shapes of plain numbers and of the words that stand for numbers."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.book.nodes import Node
from diagnose.book.shapes import Reading, Schema, plain


def number(text: str) -> float | None:
    """A finite decimal number, `12 %` as 0.12, or None."""
    words = text.strip()
    share = 0.01 if words.endswith("%") else 1.0
    try:
        value = float(words.removesuffix("%").strip()) * share
    except ValueError:
        return None
    return value if math.isfinite(value) else None


@dataclass(frozen=True)
class Amount:
    """A number from `least` to `most`, without a unit: minutes, a share."""

    least: float = 0.0
    most: float = 1e6
    unit: str = ""

    def read(self, node: Node, reading: Reading) -> float | None:
        word = plain(node, reading, "a number")
        if word is None:
            return None
        value = number(word)
        if value is None:
            mend = f"write the {self.unit} as a bare number" if self.unit else "write a number"
            reading.fault(node, f"'{word}' is not a number", mend)
            return None
        if not self.least <= value <= self.most:
            reading.fault(node, f"{word} is outside {self.least:g} to {self.most:g}")
            return None
        return value

    def schema(self) -> Schema:
        return {"type": ["number", "string"]}


@dataclass(frozen=True)
class Rate:
    """How often, or how likely: a word of a scale of words.yaml, or a number between 0 and 1.

    Read as (probability, the word as written).
    """

    scale: str = "how_often"
    most: float = 1.0

    def read(self, node: Node, reading: Reading) -> tuple[float, str] | None:
        word = plain(node, reading, "a word of the scale")
        if word is None:
            return None
        value = number(word)
        if value is None:
            return self._of_scale(node, word, reading)
        if not 0.0 < value < self.most:
            mend = f"write a number above 0 and below {self.most:g}, or a word of the scale"
            reading.fault(node, f"{word} is not possible here", mend)
            return None
        return value, word

    def _of_scale(self, node: Node, word: str, reading: Reading) -> tuple[float, str] | None:
        if reading.scales is None:
            return None
        scale = reading.scales[self.scale]
        if word not in scale:
            reading.not_among(node, word, scale)
            return None
        return scale[word], word

    def schema(self) -> Schema:
        return {"$ref": f"#/definitions/{self.scale}"}


OFTEN = Rate()
COMMON = Rate("how_common")
CHANGE = Rate("change", most=1000.0)
MINUTES = Amount(0.0, 100_000.0, "minutes")
