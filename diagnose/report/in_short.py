"""The two sheets a worker takes along: how much of the plan they show, with which cautions."""

from __future__ import annotations

from collections.abc import Iterable

from diagnose.view.result import AidView, CautionView, FixView, ResultView

MOST_IN_SHORT = 3  # fixes, and looks, named in short; the rest stands in the full plan


def first_cautions(view: ResultView) -> tuple[CautionView, ...]:
    """What is read before the first thing to do."""
    fix = view.plan.cure[:1] if view.next.kind == "fix" and not view.stops else ()
    return _once((*view.cautions, *(c for f in fix for c in f.cautions)))


def shown_fixes(view: ResultView) -> tuple[FixView, ...]:
    """The fixes named in short: none under a stop, one while a hazard is open."""
    if any(s.kind == "stop" for s in view.stops):
        return ()
    return view.plan.cure[: MOST_IN_SHORT if view.safe else 1]


def plan_cautions(view: ResultView) -> tuple[CautionView, ...]:
    """What else is read before the plan in short: no caution stands twice on the two sheets.

    A step that is withheld, or stands behind a stop, cannot be done from here; its cautions
    stand with its steps in the full plan.
    """
    if any(s.kind == "stop" for s in view.stops):
        return ()
    steps: list[AidView | FixView] = [*view.plan.first_aid, *shown_fixes(view)]
    said = {c.id for c in first_cautions(view)}
    open_ = [s for s in steps if not s.withheld]
    return _once(c for step in open_ for c in step.cautions if c.id not in said)


def _once(cautions: Iterable[CautionView]) -> tuple[CautionView, ...]:
    return tuple({c.id: c for c in cautions}.values())
