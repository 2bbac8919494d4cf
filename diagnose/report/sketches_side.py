"""Sketches of shapes seen from the side, under a straightedge or on a flat plate."""

from __future__ import annotations

from diagnose.report.svg import Svg, el, label, line, path, polygon, polyline

_FLOOR = 112


def _plate() -> Svg:
    hatch = "".join(line(x, _FLOOR + 12, x + 8, _FLOOR, "mark-thin") for x in range(16, 226, 14))
    words = label(124, 146, "flat plate", "word", "middle")
    return Svg(line(14, _FLOOR, 234, _FLOOR, "mark-heavy") + Svg(hatch) + words)


def _straightedge(y: float) -> Svg:
    return polygon("rule-edge", ((20, y - 16), (228, y - 16), (228, y), (20, y)))


def wedge() -> Svg:
    body = polygon("steel-top", ((24, 40), (224, 74), (224, _FLOOR), (24, _FLOOR)))
    level = line(24, 40, 224, 40, "ghost")
    words = label(36, 98, "thick", "word") + label(212, 98, "thin", "word", "end")
    return Svg(body + level + words + _plate())


def dish() -> Svg:
    body = path("steel-top", "M24 44Q124 108 224 44V76Q124 148 24 76Z")
    words = label(124, 64, "gap", "word", "middle")
    return Svg(_straightedge(44) + body + words + _plate())


def crown() -> Svg:
    body = path(
        "steel-top", f"M24 {_FLOOR - 18}Q124 66 224 {_FLOOR - 18}V{_FLOOR}Q124 84 24 {_FLOOR}Z"
    )
    words = label(124, 66, "high in the middle", "word", "middle")
    return Svg(body + words + _plate())


def low_ends() -> Svg:
    body = path("steel-top", f"M24 74Q32 52 62 52H186Q216 52 224 74V{_FLOOR}H24Z")
    words = label(24, 26, "low", "word") + label(224, 26, "low", "word", "end")
    drops = line(32, 32, 32, 54, "way") + line(216, 32, 216, 54, "way")
    heads = path("way-head", "M32 62l-5-10h10zM216 62l-5-10h10z")
    return Svg(line(24, 52, 224, 52, "ghost") + body + words + drops + heads + _plate())


def twist() -> Svg:
    sheet = ((24, 92), (176, 104), (226, 62), (80, 34))
    edge = ((24, 92), (176, 104), (176, 112), (24, 100))
    words = label(84, 24, "one corner up", "word")
    flat = ((24, 92), (176, 104), (226, 62), (80, 62))
    return Svg(
        polygon("ghost", flat)
        + polygon("steel-top", sheet)
        + polygon("steel-side", edge)
        + words
        + _plate()
    )


def size_wanders() -> Svg:
    wanted = line(20, 66, 228, 66, "ghost") + label(230, 60, "wanted size", "word", "end")
    places = ((34, 72), (57, 44), (80, 86), (103, 58), (126, 98), (136, 38))
    trace = polyline("mark", places)
    dots = "".join(el("circle", cx=x, cy=y, r=5, class_="mark-solid") for x, y in places)
    words = label(124, 146, "part after part", "word", "middle")
    frame = line(20, 16, 20, _FLOOR + 8, "mark-heavy") + line(
        20, _FLOOR + 8, 228, _FLOOR + 8, "mark-heavy"
    )
    return Svg(frame + wanted + trace + Svg(dots) + words)


def out_of_square() -> Svg:
    body = polygon("steel-top", ((30, 30), (150, 30), (162, _FLOOR), (30, _FLOOR)))
    square = polygon(
        "rule-edge", ((163, 18), (179, 18), (179, 96), (226, 96), (226, _FLOOR), (163, _FLOOR))
    )
    lead = line(112, 20, 154, 38, "lead") + label(108, 20, "light shows", "word", "end")
    return Svg(square + body + lead + _plate())


def rocks() -> Svg:
    body = path("steel-top", "M24 62Q124 112 224 62V84Q124 138 24 84Z")
    ways = path("way", "M36 46q-10 8 -14 20M212 46q10 8 14 20")
    heads = path("way-head", "M20 74l-3 -12 10 4zM228 74l3 -12 -10 4z")
    words = label(124, 60, "thickness even", "word", "middle")
    return Svg(body + ways + heads + words + _plate())
