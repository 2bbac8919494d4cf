"""The ranked causes with their doubt, and what each answer would tell, as bars."""

from __future__ import annotations

from diagnose.report.svg import Svg, line, picture, polygon, rect
from diagnose.view.result import AnswerOutcome, CauseView, percent

WIDTH, HEIGHT = 300.0, 20.0


def cause_bar(cause: CauseView, name: str) -> Svg:
    """How likely a cause acts (filled), is there at all (outline), cures alone (diamond).

    All three are chances from 0 to 1 on one scale; `name` makes the ids of the drawing unique.
    """
    acts, alone, present = cause.probability, cause.cures_alone, cause.present
    told = (
        f"acts on this complaint {percent(acts)}, its fix alone cures {percent(alone)}, "
        f"is there at all {percent(present)}"
    )
    return picture(
        name,
        f"{cause.name}: {percent(acts)}",
        told,
        WIDTH,
        HEIGHT,
        *_scale(),
        rect(0, 5, WIDTH * present, 10, "bar-there"),
        rect(0, 5, WIDTH * acts, 10, "bar-acts"),
        _diamond(WIDTH * alone),
        kind="bar",
    )


def chance_bar(probability: float, name: str, title: str) -> Svg:
    """One chance as a dashed bar, for the outcomes that are no single cause."""
    return picture(
        name,
        title,
        percent(probability),
        WIDTH,
        HEIGHT,
        *_scale(),
        rect(0, 5, WIDTH * probability, 10, "bar-other"),
        kind="bar",
    )


def outcome_bar(outcome: AnswerOutcome, name: str) -> Svg:
    """What one answer would do: how likely it is, and how sure the list would be then."""
    return picture(
        name,
        outcome.answer,
        f"chance {percent(outcome.chance)}; then {outcome.top} {percent(outcome.probability)}",
        WIDTH,
        HEIGHT,
        *_scale(),
        rect(0, 5, WIDTH * outcome.probability, 10, "bar-acts"),
        kind="bar",
    )


def _scale() -> list[Svg]:
    marks = [
        line(WIDTH * n / 4, 2 if n % 2 == 0 else 6, WIDTH * n / 4, 18 if n % 2 == 0 else 14, "tick")
        for n in range(5)
    ]
    return [line(0, 15, WIDTH, 15, "tick"), *marks]


def _diamond(x: float) -> Svg:
    x = min(max(x, 6.0), WIDTH - 6.0)
    return polygon("mark-alone", ((x, 2), (x + 6, 10), (x, 18), (x - 6, 10)))
