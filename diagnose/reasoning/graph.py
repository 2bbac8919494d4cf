"""Cause, mechanism, symptom: the graph of why, and the paths through it.

The only importer of networkx.
"""

from __future__ import annotations

import itertools
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


def rings(book: Book) -> list[list[str]]:
    """Every cycle of the mechanism graph, each as the ids round it; a sound book has none."""
    import networkx

    return sorted(sorted(c) for c in networkx.simple_cycles(graph_of(book)))


def symptoms_reached(book: Book, cause: str) -> tuple[str, ...]:
    """Symptoms a cause leads to through at least one mechanism."""
    import networkx

    graph = graph_of(book)
    if cause not in graph:
        return ()
    return tuple(sorted(networkx.descendants(graph, cause) & set(book.symptoms)))
