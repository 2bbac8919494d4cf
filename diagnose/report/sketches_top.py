"""Sketches of marks on the ground face."""

from __future__ import annotations

from diagnose.report.sketch_block import (
    across,
    along,
    at,
    block,
    comma,
    crack,
    dot,
    patch,
    scatter,
)
from diagnose.report.svg import Svg, el, line, path, polygon, polyline

_NINE = tuple(0.1 + 0.1 * n for n in range(9))


def rungs() -> Svg:
    return block(*(across(u) for u in _NINE))


def rungs_at_ends() -> Svg:
    return block(*(across(u) for u in (0.04, 0.09, 0.14, 0.86, 0.91, 0.96)))


def rails() -> Svg:
    return block(*(along(v) for v in (0.12, 0.25, 0.38, 0.5, 0.62, 0.75, 0.88)))


def slanted() -> Svg:
    return block(*(across(u, lean=0.16) for u in _NINE[:-1]))


def crossing() -> Svg:
    there = (across(u, lean=0.16) for u in (0.05, 0.2, 0.35, 0.5, 0.65, 0.8))
    back = (across(u, lean=-0.16) for u in (0.2, 0.35, 0.5, 0.65, 0.8, 0.95))
    return block(*there, *back)


def one_line() -> Svg:
    return block(across(0.63, "mark-heavy"))


def every_other_stroke() -> Svg:
    bands = []
    for n in range(0, 8, 2):
        low, high = n / 8, (n + 1) / 8
        bands.append(polygon("shade", (at(0, low), at(1, low), at(1, high), at(0, high))))
    return block(*bands, *(along(n / 8, "mark-thin") for n in range(1, 8)))


def steps() -> Svg:
    return block(*(along(v, "mark-heavy") for v in (0.25, 0.5, 0.75)))


def burn_patches() -> Svg:
    spots = ((0.2, 0.38, 0.13), (0.52, 0.66, 0.14), (0.8, 0.34, 0.13))
    return block(*(patch(u, v, s, "burn") for u, v, s in spots))


def burn_stripes() -> Svg:
    stripes = []
    for u in (0.14, 0.4, 0.66, 0.88):
        stripes.append(polygon("burn", (at(u, 0), at(u + 0.08, 0), at(u + 0.08, 1), at(u, 1))))
    return block(*stripes)


def cloudy() -> Svg:
    return block(*(patch(u, v, 0.045, "shade-line") for u, v in scatter(19)))


def rough() -> Svg:
    return block(*(dot(u, v, 1.5, "mark-solid") for u, v in scatter(75)))


def scratches() -> Svg:
    out = []
    for n, (u, v) in enumerate(scatter(11)):
        x, y = at(u, v)
        out.append(line(x, y, x + 15 - 6 * (n % 4), y - 5 + 4 * (n % 3), "mark"))
    return block(*out)


def commas() -> Svg:
    return block(*(comma(u, v) for u, v in scatter(11, 3)))


def cracks() -> Svg:
    return block(*(crack(u, v) for u, v in ((0.18, 0.15), (0.38, 0.3), (0.58, 0.1), (0.78, 0.28))))


def low_round_holes() -> Svg:
    holes = []
    for u, v in ((0.28, 0.5), (0.7, 0.5)):
        x, y = at(u, v)
        holes.append(el("ellipse", cx=x, cy=y, rx=23.0, ry=13.0, class_="shade-line"))
        holes.append(el("ellipse", cx=x, cy=y, rx=12.0, ry=7.0, class_="hole"))
    return block(*holes)


def chipped_edge() -> Svg:
    nicks = []
    for x in (52, 88, 104, 150, 172):
        nicks.append(
            polygon("hole", ((x, 82), (x + 5, 76), (x + 11, 79), (x + 16, 82), (x + 7, 89)))
        )
    return block(*nicks)


def burr() -> Svg:
    fringe = [at(1, 0)]
    for n in range(1, 13):
        x, y = at(1, n / 12)
        fringe.append((x + 10, y - 6) if n % 2 else (x + 1, y))
    return block(polygon("burn", [*fringe, at(1, 1)]), polyline("mark-heavy", fringe))


def bad_at_back() -> Svg:
    half = polygon("shade", (at(0, 0.5), at(1, 0.5), at(1, 1), at(0, 1)))
    marks = (line(*at(u, 0.52), *at(u, 0.98), "mark") for u in _NINE)
    return block(half, *marks)


def hot() -> Svg:
    waves = (path("mark-heavy", f"M{x} 24q-7 -5 0 -10t0 -10") for x in (96, 126, 156))
    return block(patch(0.5, 0.5, 0.2, "burn"), *waves)


def moved() -> Svg:
    ghost = (at(0.1, 0.15), at(0.62, 0.15), at(0.62, 0.75), at(0.1, 0.75))
    now = (at(0.38, 0.2), at(0.86, 0.42), at(0.72, 0.95), at(0.27, 0.72))
    x, y = at(0.22, 0.45)
    arrow = path("way-head", f"M{x + 34:.1f} {y - 2:.1f}l-12 -5v10z")
    shaft = line(x, y, x + 24, y - 2, "way")
    return block(polygon("ghost", ghost), polygon("shade-line", now), shaft, arrow)


def rust() -> Svg:
    spots = (patch(u, v, 0.02 + 0.018 * (n % 3), "burn") for n, (u, v) in enumerate(scatter(16, 2)))
    ring = patch(0.62, 0.45, 0.13, "ghost")
    return block(*spots, ring)


def smeared() -> Svg:
    smears = []
    for u, v, long in ((0.06, 0.2, 0.44), (0.42, 0.42, 0.5), (0.12, 0.64, 0.5), (0.55, 0.82, 0.4)):
        near, far = (
            (at(u, v - 0.08), at(u + long, v - 0.03)),
            (at(u + long, v + 0.03), at(u, v + 0.08)),
        )
        smears.append(polygon("shade", (*near, *far)))
    grooves = (line(*at(u, v), *at(u + 0.1, v), "mark-thin") for u, v in scatter(14, 5) if u < 0.86)
    return block(*smears, *grooves)


def streaks() -> Svg:
    out = []
    for u, v, long in ((0.08, 0.3, 0.4), (0.4, 0.66, 0.46), (0.58, 0.22, 0.3)):
        out.append(
            polygon(
                "shade-line",
                (
                    at(u, v),
                    at(u + long / 2, v + 0.12),
                    at(u + long, v + 0.02),
                    at(u + long / 2, v - 0.1),
                ),
            )
        )
    return block(*out, patch(0.2, 0.78, 0.05, "shade-line"), patch(0.84, 0.56, 0.045, "shade-line"))
