"""Sketches of the wheel: its face under a glass, and its sparks."""

from __future__ import annotations

from diagnose.report.sketch_block import scatter
from diagnose.report.svg import Svg, el, label, line, path, polygon

_RADIUS = 56.0
_GRAINS = (
    (92, 40), (118, 32), (146, 38), (82, 66), (108, 60), (134, 62), (160, 64),
    (94, 88), (122, 88), (150, 90), (110, 112), (136, 112),
)  # fmt: skip


def _glass(*inside: Svg) -> Svg:
    lens = el("circle", cx=122, cy=70, r=_RADIUS, class_="lens")
    ring = el("circle", cx=122, cy=70, r=_RADIUS, class_="ring")
    handle = line(163, 111, 190, 138, "handle")
    return Svg(lens + Svg("".join(inside)) + ring + handle)


def _grain(x: float, y: float, class_: str = "grain") -> Svg:
    spots = ((-10, 3), (-5, -8), (3, -10), (10, -3), (7, 8), (-3, 9))
    return polygon(class_, ((x + a, y + b) for a, b in spots))


def loaded() -> Svg:
    grains = (_grain(x, y) for x, y in _GRAINS)
    specks = []
    for x, y in ((105, 47), (133, 48), (95, 77), (121, 74), (148, 77), (108, 100), (136, 101)):
        specks.append(polygon("speck", ((x - 7, y), (x - 1, y - 6), (x + 8, y - 1), (x + 1, y + 6))))
    words = label(4, 22, "metal specks", "word") + line(58, 28, 96, 46, "lead")
    return Svg(_glass(*grains, *specks) + words)


def glazed() -> Svg:
    out = []
    for x, y in _GRAINS:
        out.append(_grain(x, y, "grain-flat"))
        out.append(line(x - 5, y + 3, x + 4, y - 5, "shine"))
    words = label(4, 22, "flat shiny grains", "word") + line(62, 28, 88, 38, "lead")
    return Svg(_glass(*out) + words)


def _wheel() -> Svg:
    rim = el("circle", cx=124, cy=48, r=44, class_="wheel")
    hub = el("circle", cx=124, cy=48, r=9, class_="hole")
    turn = path("way", "M100 38a26 26 0 0 1 44 -6") + path("way-head", "M148 38l-10 -5 8 -7z")
    return Svg(rim + hub + turn)


def _part() -> Svg:
    words = label(124, 146, "seen from the front", "word", "middle")
    return Svg(polygon("steel-side", ((24, 94), (224, 94), (224, 122), (24, 122))) + words)


def sparks_at_one_end() -> Svg:
    fan = (line(132, 93, 152 + 12 * n, 60 + 6 * n, "spark") for n in range(6))
    wedge = polygon("burn", ((124, 92), (224, 84), (224, 94), (124, 94)))
    return Svg(_part() + wedge + _wheel() + Svg("".join(fan)))


def noisy() -> Svg:
    waves = (path("mark-heavy", f"M{178 + 14 * n} {30 - 6 * n}q{10 + 4 * n} {18 + 6 * n} 0 {36 + 12 * n}") for n in range(3))
    return Svg(_part() + _wheel() + Svg("".join(waves)))


def dull_sparks() -> Svg:
    few = (line(134, 92, 156 + 10 * n, 80 + 3 * n, "spark") for n in range(2))
    specks = (el("circle", cx=168 + 40 * u, cy=66 + 22 * v, r=1.5, class_="mark-solid") for u, v in scatter(5))
    return Svg(_part() + _wheel() + Svg("".join((*few, *specks))))
