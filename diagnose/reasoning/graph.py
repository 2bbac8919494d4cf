"""Cause, mechanism, symptom: the graph of why, and the paths through it.

The only importer of networkx.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from diagnose.book.model import Arrow, Book


@dataclass(frozen=True)
class Chain:
    """One path from a cause to what it shows: the arrows in order, each with its because."""

    cause: str
    arrows: tuple[Arrow, ...]

    @property
    def stations(self) -> tuple[str, ...]:
        return (self.cause, *(a.to for a in self.arrows))


def graph_of(book: Book) -> Any:
    """Directed graph of causes, mechanisms and signs (networkx.DiGraph; edges carry `arrow`)."""
    import networkx

    graph = networkx.DiGraph()
    for cause in book.causes.values():
        graph.add_node(cause.id)
        for arrow in cause.leads_through:
            graph.add_edge(cause.id, arrow.to, arrow=arrow)
    for mechanism in book.mechanisms.values():
        graph.add_node(mechanism.id)
        for arrow in mechanism.leads_to:
            graph.add_edge(mechanism.id, arrow.to, arrow=arrow)
    return graph


def chain(book: Book, cause: str, targets: tuple[str, ...]) -> Chain | None:
    """The shortest path from a cause to the first reachable target; None when there is none."""
    import networkx

    graph = graph_of(book)
    for target in targets:
        if cause in graph and target in graph:
            try:
                path = networkx.shortest_path(graph, cause, target)
            except networkx.NetworkXNoPath:
                continue
            arrows = tuple(graph.edges[a, b]["arrow"] for a, b in itertools.pairwise(path))
            return Chain(cause, arrows)
    return None


def chains(book: Book, cause: str, targets: Iterable[str]) -> list[Chain]:
    """The shortest path from a cause to each target that it reaches, in the order given."""
    import networkx

    graph = graph_of(book)
    known = [t for t in targets if cause in graph and t in graph]
    found = []
    for target in known:
        if networkx.has_path(graph, cause, target):
            path = networkx.shortest_path(graph, cause, target)
            arrows = tuple(graph.edges[a, b]["arrow"] for a, b in itertools.pairwise(path))
            found.append(Chain(cause, arrows))
    return found


def causes_through(book: Book, mechanism: str) -> tuple[str, ...]:
    """Causes whose effect passes through a mechanism, those that enter it directly first."""
    import networkx

    graph = graph_of(book)
    before = networkx.ancestors(graph, mechanism) if mechanism in graph else set()
    found = sorted(before & set(book.causes))
    return tuple(sorted(found, key=lambda c: not graph.has_edge(c, mechanism)))


def causes_showing(book: Book, symptom: str) -> tuple[str, ...]:
    """Causes that show a symptom, or a sharper sign of it, by id."""
    signs = _sharper(book, symptom)
    shown = (c.id for c in book.causes.values() if any(k.finding in signs for k in c.shows))
    return tuple(sorted(shown))


def complaints_shown(book: Book, cause: str) -> tuple[str, ...]:
    """Symptoms that a cause shows, itself or by a sharper sign, by id."""
    signs = {k.finding for k in book.causes[cause].shows}
    return tuple(s for s in sorted(book.symptoms) if signs & _sharper(book, s))


def _sharper(book: Book, symptom: str) -> set[str]:
    """The symptom and every sign that makes it more exact."""
    signs, sharper = {symptom}, {f.id: f.sharpens for f in book.findings.values() if f.sharpens}
    while more := {sign for sign, blunt in sharper.items() if blunt in signs} - signs:
        signs |= more
    return signs


def rings(book: Book) -> list[list[str]]:
    """Every cycle of the mechanism graph, each as the ids round it; a sound book has none."""
    import networkx

    return sorted(sorted(c) for c in networkx.simple_cycles(graph_of(book)))
