"""Readings on number lines: the value, and from where to where it may be."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from diagnose.report.svg import Svg, el, label, line, picture, rect, width_of
from diagnose.view.result import ReadingView

WIDTH, HEIGHT, SIZE = 320.0, 66.0, 16.0
LEFT, RIGHT = 8.0, 312.0
SHARED_UP_TO = 12.0  # readings of one kind share a scale when the greatest is at most this many
COMPARED = ("frequency", "turning-speed", "deviation")  # kinds where two readings belong together


@dataclass(frozen=True)
class Scale:
    """Readings on number lines of one length: the ends in SI, and whether 0 is one of them."""

    readings: tuple[ReadingView, ...]
    start: float
    end: float

    @property
    def tells(self) -> bool:
        """Whether a drawing shows more than the figures alone: a spread of at least one."""
        return any(r.low != r.high for r in self.readings)

    def at(self, value: float) -> float:
        """Where a value (SI) stands on the drawing, kept inside it."""
        share = (value - self.start) / (self.end - self.start)
        return LEFT + (RIGHT - LEFT) * min(max(share, 0.0), 1.0)


def scales(readings: Sequence[ReadingView]) -> list[Scale]:
    """The scales to draw: readings of one kind that are near enough in size share one."""
    kinds: dict[str, list[ReadingView]] = {}
    for reading in readings:
        kinds.setdefault(reading.dimension, []).append(reading)
    out = []
    for kind, group in kinds.items():
        joined = len(group) > 1 and kind in COMPARED and _alike(group)
        for part in [group] if joined else [[r] for r in group]:
            out.append(Scale(tuple(part), *_ends(part, kind)))
    return out


def _alike(group: Sequence[ReadingView]) -> bool:
    sizes = [max(abs(r.si_low), abs(r.si_high)) for r in group]
    return min(sizes) > 0 and max(sizes) / min(sizes) <= SHARED_UP_TO


def _ends(group: Sequence[ReadingView], kind: str) -> tuple[float, float]:
    low, high = min(r.si_low for r in group), max(r.si_high for r in group)
    if kind == "temperature":
        spread = max(high - low, 1.0)
        return low - spread, high + spread
    low, high = min(low, 0.0), max(high, 0.0)
    spread = (high - low) or 1.0
    return (low - 0.08 * spread if low < 0 else 0.0), high + 0.08 * spread


def number_line(reading: ReadingView, scale: Scale, name: str) -> Svg:
    """One reading on its scale: a dot, and a band from low to high."""
    low, here, high = (scale.at(x) for x in (reading.si_low, reading.si, reading.si_high))
    spread = reading.low != reading.high
    told = f"{reading.value}, from {reading.low} to {reading.high}" if spread else reading.value
    parts = [line(LEFT, 34, RIGHT, 34, "axis"), line(LEFT, 28, LEFT, 40, "axis")]
    if scale.start == 0.0:
        parts.append(label(LEFT, 62, "0", "word-scale", "middle"))
    elif scale.start < 0.0 < scale.end:
        zero = scale.at(0.0)
        parts.append(line(zero, 28, zero, 40, "axis"))
    if spread:
        parts.append(rect(low, 27, max(high - low, 3.0), 14, "band"))
        parts += [line(x, 24, x, 44, "band-end") for x in (low, high)]
        band = f"{reading.low} to {reading.high}"
        parts.append(_word((low + high) / 2, 62, band, "word-scale", LEFT + 16))
    parts.append(el("circle", cx=here, cy=34.0, r=5.0, class_="dot"))
    parts.append(_word(here, 17, reading.value, "word-value", LEFT))
    title = f"{reading.name}: {reading.value}"
    return picture(name, title, told, WIDTH, HEIGHT, *parts, kind="line")


def _word(x: float, y: float, text: str, class_: str, left: float) -> Svg:
    half = width_of(text, SIZE) / 2
    x = max(min(x, RIGHT - half), left + half)
    return label(x, y, text, class_, "middle")
