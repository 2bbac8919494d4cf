"""Sketches of the wheel: its face under a glass, and its sparks."""

from __future__ import annotations

from diagnose.report.svg import Svg, el, label, line, path, polygon

_RADIUS = 56.0
_GRAINS = (
    (140, 38), (166, 30), (194, 36), (130, 64), (156, 58), (182, 60), (208, 62),
    (142, 86), (170, 86), (198, 88), (158, 110), (184, 110),
)  # fmt: skip


def _glass(*inside: Svg) -> Svg:
    lens = el("circle", cx=170, cy=68, r=_RADIUS, class_="lens")
    ring = el("circle", cx=170, cy=68, r=_RADIUS, class_="ring")
    handle = line(131, 109, 106, 136, "handle")
    return Svg(lens + Svg("".join(inside)) + ring + handle)


def _grain(x: float, y: float, class_: str = "grain") -> Svg:
    spots = ((-10, 3), (-5, -8), (3, -10), (10, -3), (7, 8), (-3, 9))
    return polygon(class_, ((x + a, y + b) for a, b in spots))


def loaded() -> Svg:
    grains = (_grain(x, y) for x, y in _GRAINS)
    specks = []
    for x, y in ((153, 45), (181, 46), (143, 75), (169, 72), (196, 75), (156, 98), (184, 99)):
        specks.append(
            polygon("speck", ((x - 7, y), (x - 1, y - 6), (x + 8, y - 1), (x + 1, y + 6)))
        )
    words = _words("metal", "specks") + line(66, 56, 146, 47, "lead")
    return Svg(_glass(*grains, *specks) + words)


def glazed() -> Svg:
    out = []
    for x, y in _GRAINS:
        out.append(_grain(x, y, "grain-flat"))
        out.append(line(x - 5, y + 3, x + 4, y - 5, "shine"))
    words = _words("flat, shiny", "grains") + line(66, 56, 124, 62, "lead")
    return Svg(_glass(*out) + words)


def _words(first: str, second: str) -> Svg:
    return Svg(label(4, 40, first) + label(4, 60, second))


def _wheel(x: float = 124.0) -> Svg:
    rim = el("circle", cx=x, cy=48.0, r=44.0, class_="wheel")
    hub = el("circle", cx=x, cy=48.0, r=9.0, class_="hole")
    turn = path("way", f"M{x - 24:.0f} 38a26 26 0 0 1 44 -6")
    return Svg(rim + hub + turn + path("way-head", f"M{x + 24:.0f} 38l-10 -5 8 -7z"))


def _part() -> Svg:
    words = label(124, 146, "seen from the front", "word", "middle")
    return Svg(polygon("steel-side", ((16, 93), (232, 93), (232, 122), (16, 122))) + words)


def _sparks(x: float, count: int) -> Svg:
    # Seen from the front the wheel turns clockwise, so its foot throws the sparks to the left.
    fan = (line(x - 8, 92, x - 26 - 9 * n, 60 + 7 * n, "spark") for n in range(5 - count, 5))
    return Svg("".join(fan))


def sparks_at_one_end() -> Svg:
    there = el("circle", cx=58.0, cy=48.0, r=44.0, class_="ghost")
    none = label(58, 54, "none", "word", "middle")
    return Svg(_part() + there + none + _wheel(186) + _sparks(186, 5))


def noisy() -> Svg:
    waves = (
        path(
            "mark-heavy", f"M{180 + 14 * n} {30 - 6 * n}q{10 + 4 * n} {18 + 6 * n} 0 {36 + 12 * n}"
        )
        for n in range(3)
    )
    return Svg(_part() + _wheel() + Svg("".join(waves)))


def few_sparks() -> Svg:
    return Svg(_part() + _wheel() + _sparks(124, 1))
