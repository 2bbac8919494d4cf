"""For and against: how far each answer moved the belief in a cause, in no order."""

from __future__ import annotations

import math

from diagnose.report.svg import Svg, line, picture, polygon, rect
from diagnose.view.result import CauseView, ReasonView

WIDTH, HEIGHT = 300.0, 20.0
MIDDLE = WIDTH / 2
DRAWN_FROM = 0.05  # log-odds; below it, the odds move by less than a twentieth
LEAST_REACH = 1.5  # log-odds at the end of the scale, so that weak answers look weak


def odds_words(share: float) -> str:
    """A share in words: how many times likelier, or less likely, it makes the cause."""
    times = math.exp(min(abs(share), 50.0))
    shown = f"{times:.1f}" if times < 10 else f"{times:.0f}"
    if abs(share) < DRAWN_FROM:
        return "hardly moved it"
    return f"odds × {shown}" if share > 0 else f"odds ÷ {shown}"


def chance_of(log_odds: float) -> float:
    """The chance that goes with natural log-odds."""
    if log_odds < 0:
        return 1.0 - chance_of(-log_odds)
    return 1.0 / (1.0 + math.exp(-log_odds))


def moving(cause: CauseView) -> list[ReasonView]:
    """The reasons that move a cause enough to draw, those for it first."""
    return [r for r in (*cause.reasons_for, *cause.reasons_against) if abs(r.share) >= DRAWN_FROM]


def unmoving(cause: CauseView) -> list[ReasonView]:
    """The reasons that hardly move it."""
    return [r for r in (*cause.reasons_for, *cause.reasons_against) if abs(r.share) < DRAWN_FROM]


def reach(cause: CauseView) -> float:
    """The end of the scale for one cause, in log-odds."""
    shares = [abs(r.share) for r in (*cause.reasons_for, *cause.reasons_against)]
    return max([LEAST_REACH, *shares])


def share_bar(reason: ReasonView, end: float, name: str) -> Svg:
    """One reason: a bar from the middle, to the right for the cause, to the left against it."""
    length = min(abs(reason.share) / end, 1.0) * (MIDDLE - 8)
    side = "speaks for it" if reason.share > 0 else "speaks against it"
    return picture(
        name,
        f"{side}: {odds_words(reason.share)}",
        f"{reason.text}: {side}, {reason.share:+.1f} in log-odds",
        WIDTH,
        HEIGHT,
        line(0, 10, WIDTH, 10, "tick"),
        *_arrow(length if reason.share > 0 else -length),
        line(MIDDLE, 0, MIDDLE, HEIGHT, "axis"),
        kind="bar",
    )


def _arrow(length: float) -> list[Svg]:
    class_, tip = ("bar-for", 8.0) if length > 0 else ("bar-against", -8.0)
    start, end = sorted((MIDDLE, MIDDLE + length))
    x = MIDDLE + length
    head = polygon(class_, ((x, 3), (x + tip, 10), (x, 17)))
    return [rect(start, 5, end - start, 10, class_), head]
