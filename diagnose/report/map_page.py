"""The page of all cause and effect: a family a sheet, every box a link to its explanation."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from diagnose.book.writing import write_whole
from diagnose.report.extra_style import with_style
from diagnose.report.figures_map import SHEET, layout, map_figure, roads_from
from diagnose.report.page import environment
from diagnose.report.plain_text import all_plain
from diagnose.report.svg import Svg
from diagnose.view.cause_map import CauseMap, Family

TALLEST = 860.0  # units of a drawing that can still be read on a sheet laid across
Pairs = list[tuple[str, str]]


@dataclass(frozen=True)
class Drawing:
    """One drawing of a family: what it is of, and the figure."""

    title: str
    figure: Svg


def render_map(view: CauseMap) -> str:
    """The whole page as HTML text; it needs nothing else and no script."""
    view = all_plain(view)
    nodes = (*view.symptoms, *view.mechanisms, *view.causes)
    names = {node.id: node.name for node in nodes}
    places = {node.id: f"{node.kind}-{node.id}" for node in nodes}
    drawn = [(family, drawings(view, family, names, places)) for family in view.families]
    template = environment().get_template("map.html.j2")
    return template.render(view=view, drawn=drawn, places=places, **with_style("map.css"))


def write_map(view: CauseMap, path: Path) -> Path:
    """Write the page whole or not at all. Raises BookError when the place cannot be written."""
    write_whole(path, render_map(view))
    return path


def drawings(
    view: CauseMap, family: Family, names: Mapping[str, str], places: Mapping[str, str]
) -> list[Drawing]:
    """One drawing for the family where it can be read on one sheet, else one for each complaint,
    else some for one complaint."""
    roads = {s: roads_from(view.arrows, causes, s) for s, causes in family.symptoms}
    roads = {s: pairs for s, pairs in roads.items() if pairs}
    whole = sorted({pair for pairs in roads.values() for pair in pairs})
    if not whole:
        return []
    if _tall(whole, roads, names) <= TALLEST:
        parts = [(tuple(roads), whole)]
    else:
        parts = [((s,), part) for s, pairs in roads.items() for part in _split(pairs, s, names)]
    found = []
    for number, (ends, pairs) in enumerate(parts, 1):
        same = [p for p in parts if p[0] == ends]
        title = " / ".join(names.get(e, e) for e in ends)
        if len(same) > 1:
            title += f", part {same.index((ends, pairs)) + 1} of {len(same)}"
        key = f"drawing-{family.id}-{number}"
        found.append(Drawing(title, map_figure(pairs, ends, names, key, SHEET, places)))
    return found


def _tall(pairs: Pairs, ends: Mapping[str, object] | str, names: Mapping[str, str]) -> float:
    goals = (ends,) if isinstance(ends, str) else tuple(ends)
    return layout(pairs, goals, names, SHEET).height


def _split(pairs: Pairs, end: str, names: Mapping[str, str]) -> list[Pairs]:
    """The arrows in as many parts as can be read, each with whole roads from its causes."""
    entered = {b for _, b in pairs}
    causes = sorted({a for a, _ in pairs} - entered, key=lambda c: _first_step(pairs, c))
    for number in range(1, len(causes) + 1):
        size = -(-len(causes) // number)
        parts = [causes[n : n + size] for n in range(0, len(causes), size)]
        found = [roads_from(pairs, part, end) for part in parts]
        if all(_tall(part, end, names) <= TALLEST for part in found):
            return found
    return [pairs]


def _first_step(pairs: Pairs, cause: str) -> tuple[str, str]:
    """Causes that enter the same mechanism stand together."""
    return min(b for a, b in pairs if a == cause), cause
