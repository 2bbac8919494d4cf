"""The graph of cause and effect that ends in one complaint: causes left, the complaint right."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from diagnose.report.svg import Svg, line, lines_of, path, picture, rect, writing

COLUMN, GAP, SIZE, STEP, PAD = 250.0, 60.0, 14.0, 18.0, 8.0
BETWEEN = 8.0  # from box to box down a column

Arrows = Iterable[tuple[str, str]]


def reaching(arrows: Arrows, end: str) -> list[tuple[str, str]]:
    """The arrows on some road to `end`."""
    into: dict[str, list[str]] = {}
    for a, b in arrows:
        into.setdefault(b, []).append(a)
    found: list[tuple[str, str]] = []
    todo, seen = [end], {end}
    while todo:
        now = todo.pop()
        for before in sorted(into.get(now, ())):
            found.append((before, now))
            if before not in seen:
                seen.add(before)
                todo.append(before)
    return sorted(set(found))


def columns(arrows: Arrows, end: str) -> list[list[str]]:
    """Names by column, `end` alone in the last; every arrow runs from left to right.

    What nothing leads to, the causes, stands in the first column.
    """
    pairs = list(arrows)
    depth = {end: 0}
    for _ in range(len(pairs) + 1):
        moved = False
        for a, b in pairs:
            if b in depth and depth.get(a, -1) < depth[b] + 1:
                depth[a], moved = depth[b] + 1, True
        if not moved:
            break
    last = max(depth.values())
    entered = {b for _, b in pairs}
    found: list[list[str]] = [[] for _ in range(last + 1)]
    for name in sorted(depth):
        place = 0 if name not in entered and name != end else last - depth[name]
        found[place].append(name)
    return [column for column in found if column]


def map_figure(arrows: Arrows, end: str, names: Mapping[str, str], key: str) -> Svg:
    """The drawing; empty when nothing leads to `end`. `key` makes its ids unique."""
    pairs = reaching(arrows, end)
    if not pairs:
        return Svg("")
    placed = columns(pairs, end)
    boxes: list[Svg] = []
    spots: dict[str, tuple[float, float]] = {}
    heights = [sum(_height(names.get(n, n)) + BETWEEN for n in column) for column in placed]
    tall = max(heights)
    for number, column in enumerate(placed):
        x, y = 2 + number * (COLUMN + GAP), 2 + (tall - heights[number]) / 2
        for name in column:
            kind = "symptom" if name == end else "cause" if number == 0 else "between"
            boxes.append(_box(names.get(name, name), x, y, kind))
            height = _height(names.get(name, name))
            spots[name] = (x, y + height / 2)
            y += height + BETWEEN
    roads = [_road(spots[a], spots[b]) for a, b in pairs]
    told = "; ".join(f"{names.get(a, a)} leads to {names.get(b, b)}" for a, b in pairs)
    wide = len(placed) * (COLUMN + GAP) - GAP + 4
    title = f"What leads to {names.get(end, end)}"
    return picture(key, title, told, wide, tall + 4, *roads, *boxes, kind="map")


def _height(text: str) -> float:
    return len(lines_of(text, SIZE, COLUMN - 2 * PAD)) * STEP + 10


def _box(text: str, x: float, y: float, kind: str) -> Svg:
    lines = lines_of(text, SIZE, COLUMN - 2 * PAD)
    body = rect(x, y, COLUMN, len(lines) * STEP + 10, f"box-{kind}")
    return Svg(body + writing(x + PAD, y + 18, lines, STEP, f"small word-{kind}"))


def _road(start: tuple[float, float], end: tuple[float, float]) -> Svg:
    x, y = start[0] + COLUMN, start[1]
    shaft = line(x, y, end[0] - 8, end[1], "road")
    head = path("arrow-head", f"M{end[0] - 9:.0f} {end[1] - 4:.1f}l8.5 4l-8.5 4z")
    return Svg(shaft + head)
