"""Sketches of what changes with time, with the drive, or from part to part."""

from __future__ import annotations

from diagnose.report.svg import Svg, el, label, line, path, polygon, polyline, rect

_FLOOR = 112.0


def _face(x: float, width: float, bars: int, heavy: bool = False) -> Svg:
    """One ground face seen from above, with bars across it."""
    step = width / (bars + 1)
    class_ = "mark-heavy" if heavy else "mark"
    marks = (line(x + step * n, 42, x + step * n, 100, class_) for n in range(1, bars + 1))
    return Svg(rect(x, 40, width, 62, "steel-top") + Svg("".join(marks)))


def _frame(below: str) -> Svg:
    axes = polyline("mark-heavy", ((20, 14), (20, 120), (230, 120)))
    return Svg(axes + label(124, 146, below, "word", "middle"))


def late_cut() -> Svg:
    fed = polyline(
        "ghost",
        ((20, 112), (52, 112), (52, 94), (96, 94), (96, 76), (140, 76), (140, 58), (222, 58)),
    )
    taken = polyline("mark-heavy", ((20, 112), (150, 112), (150, 26), (222, 26)))
    words = label(30, 70, "fed") + label(226, 48, "cut", "word", "end")
    return Svg(_frame("stroke after stroke") + fed + taken + words)


def warm_or_cold() -> Svg:
    words = label(64, 26, "cold", "word", "middle") + label(184, 26, "warm", "word", "middle")
    below = label(124, 146, "same job, same day", "word", "middle")
    return Svg(_face(16, 96, 0) + _face(136, 96, 7, heavy=True) + words + below)


def worse_by_part() -> Svg:
    faces = (_face(10 + 59 * n, 50, bars, n == 3) for n, bars in enumerate((0, 2, 4, 6)))
    arrow = line(24, 24, 214, 24, "way") + path("way-head", "M226 24l-12 -5v10z")
    words = label(124, 146, "first part to last", "word", "middle")
    return Svg(Svg("".join(faces)) + arrow + words)


def underneath() -> Svg:
    top = ((30, 62), (182, 62), (226, 22), (74, 22))
    stripes = []
    for n in range(5):
        x = 42 + 30 * n
        stripes.append(polygon("shade", ((x, 62), (x + 12, 62), (x + 56, 22), (x + 44, 22))))
    drag = polyline("mark-heavy", ((70, 54), (150, 46))) + polyline("mark", ((96, 34), (188, 30)))
    faces = polygon("steel-side", ((30, 62), (182, 62), (182, 92), (30, 92)))
    end = polygon("steel-end", ((182, 62), (226, 22), (226, 52), (182, 92)))
    turned = path("way", "M52 112a74 15 0 0 0 136 0") + path("way-head", "M192 102l-12 7 10 8z")
    words = label(124, 146, "turned over", "word", "middle")
    return Svg(
        faces + end + polygon("steel-top", top) + Svg("".join(stripes)) + drag + turned + words
    )


def labours() -> Svg:
    pulley = el("circle", cx=50.0, cy=60.0, r=22.0, class_="wheel")
    wheel = el("circle", cx=176.0, cy=60.0, r=44.0, class_="wheel")
    hubs = "".join(el("circle", cx=x, cy=60.0, r=7.0, class_="hole") for x in (50.0, 176.0))
    belt = path("mark-heavy", "M50 38Q112 62 172 44M50 82Q112 100 172 76")
    dust = "".join(
        el("circle", cx=x, cy=y, r=2.2, class_="mark-solid")
        for x, y in ((88, 66), (98, 72), (108, 66), (104, 78), (118, 74), (92, 80))
    )
    growl = polyline("mark-heavy", ((16, 26), (24, 14), (32, 28), (40, 12), (48, 28), (56, 14)))
    words = label(124, 130, "motor", "word", "end") + label(176, 130, "slows", "word", "middle")
    return Svg(pulley + wheel + Svg(hubs) + belt + Svg(dust) + growl + words)


def size_later() -> Svg:
    now = rect(24, 34, 84, _FLOOR - 34, "steel-top")
    later = rect(140, 46, 84, _FLOOR - 46, "steel-top")
    level = line(16, 34, 232, 34, "ghost") + line(14, _FLOOR, 234, _FLOOR, "mark-heavy")
    words = label(66, 136, "at once", "word", "middle") + label(
        182, 136, "when cold", "word", "middle"
    )
    arrow = line(182, 14, 182, 28, "way") + path("way-head", "M182 44l-5 -10h10z")
    return Svg(level + now + later + arrow + words)


def unlike_heights() -> Svg:
    heights = (58, 66, 50, 62, 72)
    parts = (rect(22 + 42 * n, _FLOOR - h, 34, h, "steel-top") for n, h in enumerate(heights))
    level = line(14, _FLOOR - 50, 234, _FLOOR - 50, "ghost")
    floor = line(14, _FLOOR, 234, _FLOOR, "mark-heavy")
    words = label(124, 138, "ground together", "word", "middle")
    return Svg(Svg("".join(parts)) + level + floor + words)


def worn_corner() -> Svg:
    rim = path("wheel", "M84 10H164V66Q164 92 128 94H84Z")
    was = polyline("ghost", ((164, 66), (164, 94), (128, 94)))
    grit = "".join(
        el("circle", cx=x, cy=y, r=2.4, class_="mark-solid")
        for x, y in ((172, 102), (180, 110), (190, 106), (168, 112), (200, 113), (184, 100))
    )
    part = rect(16, 94, 134, 24, "steel-side")
    lead = line(196, 62, 164, 80, "lead") + label(198, 54, "corner", "word", "middle")
    words = label(124, 144, "seen from the front", "word", "middle")
    return Svg(part + rim + was + Svg(grit) + lead + words)
