"""The graph of cause and effect that ends in one complaint: causes left, the complaint right."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from diagnose.report.svg import Svg, lines_of, path, picture, rect, writing

COLUMN, GAP, SIZE, STEP, PAD = 210.0, 44.0, 14.0, 18.0, 8.0
BETWEEN = 8.0  # from box to box down a column

Arrows = Iterable[tuple[str, str]]


def roads_from(arrows: Arrows, starts: Iterable[str], end: str) -> list[tuple[str, str]]:
    """The arrows on some road from one of the starts to `end`."""
    back = [(b, a) for a, b in reaching(arrows, end)]
    found: set[tuple[str, str]] = set()
    for start in starts:
        found |= {(a, b) for b, a in reaching(back, start)}
    return sorted(found)


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


def map_figure(pairs: Arrows, end: str, names: Mapping[str, str], key: str) -> Svg:
    """The drawing of arrows that all lead to `end`; empty when there are none. `key` makes its
    ids unique."""
    pairs = list(pairs)
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
    told = _told(pairs, names)
    wide = len(placed) * (COLUMN + GAP) - GAP + 4
    kind = f"map map-{min(len(placed), 7)}"
    title = f"What leads to {names.get(end, end)}"
    return picture(key, title, told, wide, tall + 4, *_roads(pairs, spots), *boxes, kind=kind)


def _height(text: str) -> float:
    return len(lines_of(text, SIZE, COLUMN - 2 * PAD)) * STEP + 10


def _box(text: str, x: float, y: float, kind: str) -> Svg:
    lines = lines_of(text, SIZE, COLUMN - 2 * PAD)
    body = rect(x, y, COLUMN, len(lines) * STEP + 10, f"box-{kind}")
    words = "small" if kind == "between" else f"small word-{kind}"
    return Svg(body + writing(x + PAD, y + 18, lines, STEP, words))


def _roads(pairs: Arrows, spots: Mapping[str, tuple[float, float]]) -> tuple[Svg, Svg]:
    """All arrows as two paths, shafts and heads: a hundred elements less to carry."""
    shafts, heads = [], []
    for a, b in pairs:
        (x, y), (to_x, to_y) = spots[a], spots[b]
        shafts.append(f"M{x + COLUMN:.0f} {y:.0f}L{to_x - 8:.0f} {to_y:.0f}")
        heads.append(f"M{to_x - 9:.0f} {to_y - 4:.0f}l8.5 4l-8.5 4z")
    return path("road", "".join(shafts)), path("arrow-head", "".join(sorted(set(heads))))


def _told(pairs: Arrows, names: Mapping[str, str]) -> str:
    """The drawing in words: what leads to each thing, once each."""
    into: dict[str, list[str]] = {}
    for a, b in pairs:
        into.setdefault(b, []).append(names.get(a, a))
    return "; ".join(f"to {names.get(b, b)}: {', '.join(found)}" for b, found in into.items())
