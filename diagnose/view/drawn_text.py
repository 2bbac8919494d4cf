"""What is drawn on the page, as lines for the terminal."""

from __future__ import annotations

from diagnose.view.drawn import GridView, LimitView, MarkingView, ShakersView


def marking_lines(view: MarkingView | None) -> list[str]:
    """A marking taken apart, a line a field."""
    if view is None:
        return []
    head = f"{view.wheel}: {view.marking}" if view.wheel else view.marking
    return [head, *(f"  {f.name} {f.written}: {f.meaning}" for f in view.fields)]


def shakers_lines(view: ShakersView | None) -> list[str]:
    """What can shake, a line each; first the marks and what they fit."""
    if view is None:
        return []
    lines = [f"the marks: {view.rate}. {view.said}"] if view.rate else []
    for s in view.shakers:
        apart = f", {s.apart}" if s.apart else ""
        lines.append(f"{s.name}: {s.rate}{apart}{', fits' if s.fits else ''}")
    return lines


def limit_lines(views: tuple[LimitView, ...]) -> list[str]:
    """Each number with its limit."""
    return [f"{v.name}: {v.value} ({v.low} to {v.high}); {v.means}" for v in views]


def grid_lines(view: GridView) -> list[str]:
    """A grid of readings: its rows, then its parts."""
    wide = max(len(v) for row in view.rows for v in row)
    head = f"{view.name}, in {view.unit}, against {view.against}; lowest to highest {view.spread}"
    rows = ["  " + " ".join((v or "-").rjust(wide) for v in row) for row in view.rows]
    return [head, *rows, *(f"  {part}: {size}" for part, size in view.split)]
