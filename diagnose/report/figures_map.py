"""The graph of cause and effect that ends in one complaint or a few: causes left, ends right."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from diagnose.report.svg import Svg, el, lines_of, path, picture, rect, writing

SIZE, STEP, PAD = 14.0, 18.0, 8.0
BETWEEN = 8.0  # from box to box down a column
TARGET = 26.0  # least height of a line that is a link: a finger has to meet it

Arrows = Iterable[tuple[str, str]]


@dataclass(frozen=True)
class Style:
    """Widths of the columns, and whether causes that lead to the same stand in one box."""

    first: float = 210.0
    column: float = 210.0
    gap: float = 44.0
    bundled: bool = False
    name: str = "map"


PLAIN = Style()
SHEET = Style(first=300.0, column=176.0, gap=34.0, bundled=True, name="map-sheet")


@dataclass(frozen=True)
class Box:
    """A box of the drawing: the names in it, its kind, its place and size."""

    names: tuple[str, ...]
    kind: str  # cause | between | symptom
    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True)
class Layout:
    """Every box in its place, the number of columns, the arrows between boxes by first name."""

    boxes: tuple[Box, ...]
    columns: int
    arrows: tuple[tuple[str, str], ...]
    width: float
    height: float


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


def columns(arrows: Arrows, *ends: str) -> list[list[str]]:
    """Names by column, the ends alone in the last; every arrow runs from left to right.

    What nothing leads to, the causes, stands in the first column.
    """
    pairs = list(arrows)
    depth = dict.fromkeys(ends, 0)
    for _ in range(len(pairs) + 1):
        moved = False
        for a, b in pairs:
            if a not in ends and b in depth and depth.get(a, -1) < depth[b] + 1:
                depth[a], moved = depth[b] + 1, True
        if not moved:
            break
    last = max(depth.values())
    entered = {b for _, b in pairs}
    found: list[list[str]] = [[] for _ in range(last + 1)]
    for name in sorted(depth):
        place = 0 if name not in entered and name not in ends else last - depth[name]
        found[place].append(name)
    return [column for column in found if column]


def layout(
    pairs: Arrows, ends: Iterable[str], names: Mapping[str, str], style: Style = PLAIN
) -> Layout:
    """Every box in its place: columns from the right, each box near what it leads to."""
    ends = tuple(ends)
    groups, arrows = _bundles(list(pairs), ends) if style.bundled else ({}, sorted(set(pairs)))
    placed = columns(arrows, *ends)
    tall = [
        [_height(groups.get(n, (n,)), names, style, number == 0) for n in column]
        for number, column in enumerate(placed)
    ]
    height = max(sum(column) + BETWEEN * len(column) for column in tall)
    middle: dict[str, float] = {}
    found: list[Box] = []
    for number in range(len(placed) - 1, -1, -1):
        sizes = dict(zip(placed[number], tall[number], strict=True))
        ordered = sorted(placed[number], key=lambda n: (_aim(n, arrows, middle), names.get(n, n)))
        width = style.first if number == 0 else style.column
        x = 2 + (number and style.first + style.gap + (number - 1) * (style.column + style.gap))
        y = 2 + (height - sum(sizes.values()) - BETWEEN * len(sizes)) / 2
        for name in ordered:
            kind = "symptom" if name in ends else "cause" if number == 0 else "between"
            found.append(Box(groups.get(name, (name,)), kind, x, y, width, sizes[name]))
            middle[name] = y + sizes[name] / 2
            y += sizes[name] + BETWEEN
    wide = style.first + (len(placed) - 1) * (style.column + style.gap) + 4
    return Layout(tuple(found), len(placed), tuple(arrows), wide, height + 4)


def _aim(name: str, arrows: Arrows, middle: Mapping[str, float]) -> float:
    """How far down the things stand that a box leads to."""
    aims = [middle[b] for a, b in arrows if a == name and b in middle]
    return sum(aims) / len(aims) if aims else 0.0


def _bundles(
    pairs: list[tuple[str, str]], ends: tuple[str, ...]
) -> tuple[dict[str, tuple[str, ...]], list[tuple[str, str]]]:
    """Names by the first of each bundle, and the arrows that are left: one for each bundle."""
    entered = {b for _, b in pairs}
    goes: dict[str, list[str]] = {}
    for a, b in pairs:
        if a not in entered and a not in ends:
            goes.setdefault(a, []).append(b)
    alike: dict[tuple[str, ...], list[str]] = {}
    for name in sorted(goes):
        alike.setdefault(tuple(sorted(goes[name])), []).append(name)
    groups = {found[0]: tuple(found) for found in alike.values()}
    gone = {name for found in groups.values() for name in found[1:]}
    return groups, sorted({(a, b) for a, b in pairs if a not in gone})


def map_figure(
    pairs: Arrows,
    end: str | Iterable[str],
    names: Mapping[str, str],
    key: str,
    style: Style = PLAIN,
    links: Mapping[str, str] | None = None,
) -> Svg:
    """The drawing of arrows that all lead to `end`; empty when there are none.

    `key` makes its ids unique; a box whose name is in `links` leads there.
    """
    pairs = list(pairs)
    ends = (end,) if isinstance(end, str) else tuple(end)
    if not pairs:
        return Svg("")
    plan = layout(pairs, ends, names, style)
    boxes = [_box(box, names, links or {}, style) for box in plan.boxes]
    kind = f"map {style.name}-{min(plan.columns, 7)}"
    title = f"What leads to {' and to '.join(names.get(e, e) for e in ends)}"
    role = "group" if links else "img"
    return picture(
        key,
        title,
        _told(pairs, names),
        plan.width,
        plan.height,
        *_roads(plan),
        *boxes,
        kind=kind,
        role=role,
    )


def _lines(name: str, names: Mapping[str, str], width: float) -> list[str]:
    return lines_of(names.get(name, name), SIZE, width - 2 * PAD)


def _entry(name: str, names: Mapping[str, str], width: float) -> float:
    """Height of one name of a bundle."""
    return max(len(_lines(name, names, width)) * STEP + 6, TARGET)


def _height(group: tuple[str, ...], names: Mapping[str, str], style: Style, first: bool) -> float:
    width = style.first if first else style.column
    if style.bundled and first:
        return sum(_entry(name, names, width) for name in group) + 4
    return max(len(_lines(name, names, width)) for name in group) * STEP + 10


def _box(box: Box, names: Mapping[str, str], links: Mapping[str, str], style: Style) -> Svg:
    words = "small" if box.kind == "between" else f"small word-{box.kind}"
    body = rect(box.x, box.y, box.width, box.height, f"box-{box.kind}")
    if not (style.bundled and box.kind == "cause"):
        lines = _lines(box.names[0], names, box.width)
        text = writing(box.x + PAD, box.y + 18, lines, STEP, words)
        return _linked(links.get(box.names[0]), Svg(body + text))
    parts, y = [body], box.y + 2
    for name in box.names:
        height = _entry(name, names, box.width)
        lines = _lines(name, names, box.width)
        first = y + (height - len(lines) * STEP) / 2 + 14
        area = rect(box.x + 1, y, box.width - 2, height, "link-area")
        text = writing(box.x + PAD, first, lines, STEP, "small")
        parts.append(_linked(links.get(name), Svg(area + text)))
        y += height
    return Svg("".join(parts))


def _linked(to: str | None, drawn: Svg) -> Svg:
    return el("a", drawn, href=f"#{to}") if to else drawn


def _roads(plan: Layout) -> tuple[Svg, Svg]:
    """All arrows as two paths, shafts and heads: a hundred elements less to carry."""
    spots = {box.names[0]: box for box in plan.boxes}
    shafts, heads = [], []
    for a, b in plan.arrows:
        start, goal = spots[a], spots[b]
        x, y = start.x + start.width, start.y + start.height / 2
        to_x, to_y = goal.x, goal.y + goal.height / 2
        shafts.append(f"M{x:.0f} {y:.0f}L{to_x - 8:.0f} {to_y:.0f}")
        heads.append(f"M{to_x - 9:.0f} {to_y - 4:.0f}l8.5 4l-8.5 4z")
    return path("road", "".join(shafts)), path("arrow-head", "".join(sorted(set(heads))))


def _told(pairs: Arrows, names: Mapping[str, str]) -> str:
    """The drawing in words: what leads to each thing, once each."""
    into: dict[str, list[str]] = {}
    for a, b in pairs:
        into.setdefault(b, []).append(names.get(a, a))
    return "; ".join(f"to {names.get(b, b)}: {', '.join(found)}" for b, found in into.items())
