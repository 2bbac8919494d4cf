"""The page of an audit: every finding, and the graph of cause and effect drawn by complaint."""

from __future__ import annotations

from pathlib import Path

from diagnose.audit.audit_text import sections
from diagnose.audit.overview import Audit
from diagnose.book.writing import write_whole
from diagnose.report.figures_map import map_figure, roads_from
from diagnose.report.page import environment
from diagnose.report.plain_text import all_plain, plain
from diagnose.report.svg import Svg


def render_audit(view: Audit) -> str:
    """The whole page as HTML text; it needs nothing else and no script."""
    view = all_plain(view)
    arrows = [(e.from_, e.to) for e in view.graph.edges]
    names = {key: plain(name) for key, name in view.graph.names.items()}
    maps: list[tuple[str, Svg]] = []
    for symptom in view.graph.symptoms:
        roads = roads_from(arrows, view.graph.shown_by.get(symptom, ()), symptom)
        figure = map_figure(roads, symptom, names, f"map-{symptom}")
        if figure:
            maps.append((names.get(symptom, symptom), figure))
    template = environment().get_template("audit.html.j2")
    return template.render(view=view, sections=list(sections(view)), maps=maps)


def write_audit(view: Audit, path: Path) -> Path:
    """Write the page whole or not at all. Raises BookError when the place cannot be written."""
    write_whole(path, render_audit(view))
    return path
