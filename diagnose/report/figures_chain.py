"""The chain of cause and effect: cause, mechanisms, symptom, with the because of each arrow."""

from __future__ import annotations

from collections.abc import Sequence

from diagnose.report.svg import Svg, line, lines_of, path, picture, rect, writing
from diagnose.view.result import ArrowView

WIDTH, SIZE, STEP = 340.0, 16.0, 21.0
PAD, TRUNK = 12.0, 22.0
BOLDER = 1.15  # how much wider bold writing runs


def stations(chain: Sequence[ArrowView]) -> list[str]:
    """The names along the chain, cause first, symptom last."""
    return [chain[0].from_, *(a.to for a in chain)] if chain else []


def chain_figure(chain: Sequence[ArrowView], name: str) -> Svg:
    """The chain from top to bottom; empty for an empty chain."""
    if not chain:
        return Svg("")
    names = stations(chain)
    parts: list[Svg] = []
    y = 2.0
    for number, station in enumerate(names):
        kind = _kind(number, len(names))
        box, height = _box(station, y, kind)
        parts.append(box)
        y += height
        if number < len(chain):
            arrow, height = _because(chain[number].because, y)
            parts.append(arrow)
            y += height
    told = "; ".join(f"{a.from_} leads to {a.to}, because {a.because}" for a in chain)
    title = f"From {names[0]} to {names[-1]}"
    return picture(name, title, told, WIDTH, y + 2, *parts, kind="chain")


def _kind(number: int, count: int) -> str:
    if number == 0:
        return "cause"
    return "symptom" if number == count - 1 else "between"


def _box(text: str, y: float, kind: str) -> tuple[Svg, float]:
    size = SIZE if kind == "between" else SIZE * BOLDER
    lines = lines_of(text, size, WIDTH - 2 * PAD - 4)
    height = len(lines) * STEP + 14
    body = rect(2, y, WIDTH - 4, height, f"box-{kind}")
    words = writing(2 + PAD, y + 22, lines, STEP, f"word-{kind}")
    return Svg(body + words), height


def _because(text: str, y: float) -> tuple[Svg, float]:
    lines = lines_of(f"because {text}", SIZE, WIDTH - TRUNK - 2 * PAD - 4)
    height = max(len(lines) * STEP + 18, 40.0)
    tip = y + height
    shaft = line(TRUNK, y, TRUNK, tip - 9, "arrow")
    head = path("arrow-head", f"M{TRUNK - 6:.0f} {tip - 11:.1f}h12l-6 10.5z")
    words = writing(TRUNK + PAD + 4, y + 24, lines, STEP, "word-because")
    return Svg(shaft + head + words), height
