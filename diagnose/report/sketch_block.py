"""A ground block seen from above at a slant, for marks that are on its top face."""

from __future__ import annotations

import math
from collections.abc import Iterator

from diagnose.report.svg import Svg, el, label, line, path, polygon, polyline

Point = tuple[float, float]
WIDTH, HEIGHT = 248.0, 150.0
_STEP_U, _STEP_V = 0.754878, 0.569840  # spread points evenly without a pattern that shows


def at(u: float, v: float) -> Point:
    """A place on the top face: u from 0 to 1 along the table travel, v from front to back."""
    return 14 + 166 * u + 56 * v, 82 - 68 * v


def block(*marks: Svg) -> Svg:
    """The block on its table with marks on top and the travel shown under it."""
    front = ((14, 82), (180, 82), (180, 108), (14, 108))
    side = ((180, 82), (236, 14), (236, 40), (180, 108))
    faces = (
        polygon("steel-side", front),
        polygon("steel-end", side),
        polygon("steel-top", (at(0, 0), at(1, 0), at(1, 1), at(0, 1))),
    )
    return Svg("".join((*faces, *marks, travel())))


def travel() -> Svg:
    """The two-headed arrow that says which way the table runs."""
    words = label(124, 146, "table runs this way", "word", "middle")
    return Svg(
        line(34, 125, 214, 125, "way")
        + path("way-head", "M24 125l12-5v10zM224 125l-12-5v10z")
        + words
    )


def across(u: float, class_: str = "mark", lean: float = 0.0) -> Svg:
    """One line over the face from front to back at u, leaning by `lean` of the length."""
    return line(*at(u, 0.03), *at(u + lean, 0.97), class_)


def along(v: float, class_: str = "mark") -> Svg:
    """One line along the travel at v."""
    return line(*at(0.015, v), *at(0.985, v), class_)


def scatter(count: int, start: int = 1) -> Iterator[Point]:
    """Places spread over the face, the same at each drawing."""
    for n in range(start, start + count):
        yield 0.06 + 0.88 * (n * _STEP_U % 1), 0.1 + 0.8 * (n * _STEP_V % 1)


def patch(u: float, v: float, size: float, class_: str) -> Svg:
    """An uneven round patch lying on the face; size as a part of the length."""
    ring = []
    for n, wobble in enumerate((1.0, 0.8, 1.15, 0.85, 1.05, 0.75, 1.1, 0.9)):
        turn = n * math.pi / 4
        ring.append(at(u + size * wobble * math.cos(turn), v + 2 * size * wobble * math.sin(turn)))
    return path(class_, _smooth(ring))


def _smooth(ring: list[Point]) -> str:
    middles = [
        ((a + c) / 2, (b + d) / 2) for (a, b), (c, d) in zip(ring, ring[1:] + ring[:1], strict=True)
    ]
    x, y = middles[-1]
    curves = (
        f"Q{a:.1f} {b:.1f} {c:.1f} {d:.1f}" for (a, b), (c, d) in zip(ring, middles, strict=True)
    )
    return f"M{x:.1f} {y:.1f}{''.join(curves)}Z"


def dot(u: float, v: float, radius: float, class_: str) -> Svg:
    """A small round mark."""
    x, y = at(u, v)
    return el("circle", cx=x, cy=y, r=radius, class_=class_)


def comma(u: float, v: float) -> Svg:
    """A short curved scratch with a head, like a comma."""
    x, y = at(u, v)
    tail = path("mark", f"M{x:.1f} {y:.1f}q9 -1 13 -9")
    return Svg(el("circle", cx=x, cy=y, r=2.4, class_="mark-solid") + tail)


def crack(u: float, v: float) -> Svg:
    """A jagged hair line."""
    steps = ((0.0, 0.0), (0.03, 0.16), (0.0, 0.3), (0.05, 0.46), (0.03, 0.62))
    return polyline("mark", (at(u + a, v + b) for a, b in steps))
