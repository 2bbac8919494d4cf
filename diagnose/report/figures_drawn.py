"""Drawings of what a machinist would rather look at: a marking, what shakes, a limit, a grid."""

from __future__ import annotations

from diagnose.report.svg import Svg, el, label, line, lines_of, picture, rect, width_of, writing
from diagnose.view.drawn import GridView, LimitView, MarkingView, ShakersView

WIDTH, SIZE, STEP = 320.0, 16.0, 19.0
BOLD = 17.5  # the type size that bold writing is reckoned with
LEFT, RIGHT = 8.0, 312.0
TOP = 1.08  # the scale goes on this far beyond the greatest


def marking_figure(view: MarkingView, name: str) -> Svg:
    """A marking taken apart: each field in a box, what it means beside it."""
    beside = 84.0
    parts: list[Svg] = []
    y = 4.0
    for each in view.fields:
        named = lines_of(each.name, BOLD, WIDTH - beside)
        meant = lines_of(each.meaning, SIZE, WIDTH - beside)
        boxed = lines_of(each.written, BOLD, beside - 32)
        height = STEP * max(len(boxed), 1) + 10
        parts += [
            rect(1, y, beside - 16, height, "box-cause"),
            writing(9, y + 20, boxed, STEP, "word-value"),
            writing(beside, y + 16, named, STEP, "word-cause"),
            writing(beside, y + 16 + STEP * len(named), meant, STEP, "word"),
        ]
        y += max(height, STEP * (len(named) + len(meant)) + 4) + 10
    told = "; ".join(f"{f.name} {f.written}: {f.meaning}" for f in view.fields)
    title = f"{view.wheel}: {view.marking}" if view.wheel else view.marking
    return picture(name, title, told, WIDTH, y, *parts, kind="line")


def shakers_figure(view: ShakersView, name: str) -> Svg:
    """What can shake, each on its line of frequency; the marks as a band across them all."""
    end = TOP * max([view.si_high, *(s.si_high for s in view.shakers)])
    parts: list[Svg] = []
    y = 4.0
    if view.rate:
        lines = lines_of(f"the marks: {view.rate}", BOLD, RIGHT - LEFT)
        parts.append(writing(LEFT, y + STEP, lines, STEP, "word-value"))
        y += STEP * len(lines) + 6
    top = y
    for shaker in view.shakers:
        told = f"{shaker.name}: {shaker.rate}{', ' + shaker.apart if shaker.apart else ''}"
        if shaker.fits:
            told += " - fits"
        lines = lines_of(told, BOLD, RIGHT - LEFT)
        class_ = "word-cause" if shaker.fits else "word"
        parts.append(writing(LEFT, y + STEP, lines, STEP, class_))
        y += STEP * len(lines) + 16
        low, high = (_at(hertz, end) for hertz in (shaker.si_low, shaker.si_high))
        parts += [
            line(LEFT, y, RIGHT, y, "axis"),
            rect(low, y - 6, max(high - low, 3.0), 12, "bar-acts" if shaker.fits else "bar-there"),
        ]
        y += 12
    if view.rate:
        low, high = _at(view.si_low, end), _at(view.si_high, end)
        parts.insert(0, rect(low, top, max(high - low, 2.0), y - top, "band"))
    title = "What can shake on this machine, and how often"
    told = "; ".join(
        f"{s.name} {s.rate}{' ' + s.apart if s.apart else ''}{', fits' if s.fits else ''}"
        for s in view.shakers
    )
    if view.rate:
        told = f"The marks: {view.rate}. {told}"
    return picture(name, title, told, WIDTH, y + 4, *parts, kind="line")


def _at(value: float, end: float) -> float:
    return LEFT + (RIGHT - LEFT) * min(max(value / end, 0.0), 1.0)


def limit_figure(view: LimitView, name: str) -> Svg:
    """A number with its doubt against the limit at 1; the bad side is hatched by a thick line."""
    end = max(2.0, TOP * view.si_high)
    one = _at(1.0, end)
    low, here, high = (_at(v, end) for v in (view.si_low, view.si, view.si_high))
    bad = (LEFT, one) if view.good_above else (one, RIGHT)
    lines = lines_of(view.value, BOLD, RIGHT - LEFT)
    y = STEP * len(lines) + 21
    over = _word(here, 17, lines[0], "word-value")
    if len(lines) > 1:
        over = writing(LEFT, 17, lines, STEP, "word-value")
    parts = [
        line(LEFT, y, RIGHT, y, "axis"),
        rect(bad[0], y + 4, bad[1] - bad[0], 5, "bar-against"),
        rect(low, y - 7, max(high - low, 3.0), 14, "band"),
        *(line(x, y - 10, x, y + 10, "band-end") for x in (low, high)),
        line(one, y - 16, one, y + 16, "arrow"),
        el("circle", cx=here, cy=y, r=5.0, class_="dot"),
        over,
        _word(one, y + 34, "limit 1", "word-scale"),
    ]
    told = f"{view.value}, from {view.low} to {view.high}; {view.means}"
    return picture(name, f"{view.name}: {view.value}", told, WIDTH, y + 40, *parts, kind="line")


def _word(x: float, y: float, text: str, class_: str) -> Svg:
    half = width_of(text, SIZE) / 2
    return label(max(min(x, RIGHT - half), LEFT + half), y, text, class_, "middle")


def grid_figure(view: GridView, name: str) -> Svg:
    """The readings where they were taken, the higher the darker, each with its number."""
    across = max(len(row) for row in view.rows)
    wide = (RIGHT - LEFT) / across
    tall = min(max(wide, 26.0), 44.0)
    values = [v for row in view.si_rows for v in row if v is not None]
    least, spread = min(values), (max(values) - min(values)) or 1.0
    fits = all(width_of(v, SIZE) <= wide - 2 for row in view.rows for v in row)
    parts: list[Svg] = []
    for n, row in enumerate(view.rows):
        for m, (text, height) in enumerate(zip(row, view.si_rows[n], strict=True)):
            x, y = LEFT + m * wide, 4 + n * tall
            parts.append(rect(x, y, wide, tall, "cell"))
            if height is None:
                continue
            share = (height - least) / spread
            parts.append(
                el("rect", x=x, y=y, width=wide, height=tall, class_="cell-high",
                   fill_opacity=f"{0.45 * share:.2f}")
            )  # fmt: skip
            if fits:
                parts.append(label(x + wide / 2, y + tall / 2 + 6, text, "word", "middle"))
    bottom = 4 + len(view.rows) * tall
    parts.append(label(LEFT, bottom + STEP, "along the travel, left to right", "word-scale"))
    told = " / ".join(" ".join(v or "gap" for v in row) for row in view.rows)
    title = f"{view.name}, in {view.unit}, the higher the darker"
    return picture(name, title, told, WIDTH, bottom + STEP + 8, *parts, kind="line")
