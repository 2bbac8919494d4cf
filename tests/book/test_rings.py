"""Rings of cause and effect are found and shown whole."""

from __future__ import annotations

import networkx
from hypothesis import given
from hypothesis import strategies as st

from diagnose.book.rings import rings

names = st.sampled_from("abcdefg")
graphs = st.dictionaries(names, st.lists(names, max_size=3), max_size=7)


def test_a_ring_is_shown_from_its_first_name() -> None:
    assert rings({"b": ["c"], "c": ["a"], "a": ["b", "d"], "d": []}) == [("a", "b", "c")]


def test_a_thing_that_leads_to_itself_is_a_ring() -> None:
    assert rings({"a": ["a"]}) == [("a",)]


@given(graphs)
def test_there_is_a_ring_exactly_when_the_graph_has_a_cycle(graph: dict[str, list[str]]) -> None:
    # judged by networkx
    known = networkx.DiGraph([(a, b) for a, some in graph.items() for b in some if b in graph])
    assert bool(rings(graph)) != networkx.is_directed_acyclic_graph(known)


@given(graphs)
def test_every_ring_can_be_walked(graph: dict[str, list[str]]) -> None:
    for ring in rings(graph):
        assert all(b in graph[a] for a, b in zip(ring, (*ring[1:], ring[0]), strict=True))
