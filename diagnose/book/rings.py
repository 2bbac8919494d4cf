"""Rings: chains of names that come back to where they began."""

from __future__ import annotations

from collections.abc import Iterable, Mapping


def rings(leads_to: Mapping[str, Iterable[str]]) -> list[tuple[str, ...]]:
    """One ring for each knot of the graph: (a, b, c) for a -> b -> c -> a.

    Each ring starts at its first name in the order of the alphabet; names that lead nowhere
    known are passed over.
    """
    state: dict[str, int] = {}
    found: dict[frozenset[str], tuple[str, ...]] = {}
    for start in sorted(leads_to):
        if start not in state:
            _walk(start, leads_to, state, found)
    return sorted(found.values())


def _walk(
    start: str,
    leads_to: Mapping[str, Iterable[str]],
    state: dict[str, int],
    found: dict[frozenset[str], tuple[str, ...]],
) -> None:
    path, todo = [start], [iter(sorted(leads_to[start]))]
    state[start] = 1
    while todo:
        step = next(todo[-1], None)
        if step is None:
            state[path.pop()] = 2
            todo.pop()
        elif step in leads_to and state.get(step) == 1:
            ring = path[path.index(step) :]
            first = ring.index(min(ring))
            found.setdefault(frozenset(ring), (*ring[first:], *ring[:first]))
        elif step in leads_to and step not in state:
            state[step] = 1
            path.append(step)
            todo.append(iter(sorted(leads_to[step])))
