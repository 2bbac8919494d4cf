"""All cause and effect: complaints by family, mechanisms and causes, each with its explanation."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.book.model import Arrow, Book, Cause, Mechanism, Symptom
from diagnose.reasoning.graph import causes_showing, graph_of
from diagnose.view.explain_parts import cares, label, sourced
from diagnose.view.explain_why import experiments_for


@dataclass(frozen=True)
class Road:
    """One step of cause and effect from or to a node: the other end, and why."""

    id: str
    name: str
    because: str


@dataclass(frozen=True)
class Node:
    """One thing of the map. kind: symptom | mechanism | cause. `do`, `care`: of a cause."""

    kind: str
    id: str
    name: str
    text: tuple[str, ...]
    comes_from: tuple[Road, ...]
    leads_to: tuple[Road, ...]
    do: str = ""
    care: tuple[str, ...] = ()
    lesson: tuple[tuple[str, str], ...] = ()  # id and name of experiments
    sources: tuple[str, ...] = ()


@dataclass(frozen=True)
class Family:
    """Complaints of one family, each with the causes that show it."""

    id: str
    name: str
    symptoms: tuple[tuple[str, tuple[str, ...]], ...]


@dataclass(frozen=True)
class CauseMap:
    """The map. `arrows` are pairs of ids."""

    version: str
    families: tuple[Family, ...]
    symptoms: tuple[Node, ...]
    mechanisms: tuple[Node, ...]
    causes: tuple[Node, ...]
    arrows: tuple[tuple[str, str], ...]


def map_of(book: Book) -> CauseMap:
    """The map of a whole book."""
    arrows = sorted((str(a), str(b)) for a, b in graph_of(book).edges)
    into = _into(book)
    return CauseMap(
        book.version,
        _families(book),
        tuple(_symptom(book, s, into) for s in _by_name(book.symptoms)),
        tuple(_mechanism(book, m, into) for m in _by_name(book.mechanisms)),
        tuple(_cause(book, c) for c in _by_name(book.causes)),
        tuple(arrows),
    )


Into = dict[str, tuple[Road, ...]]


def _by_name(
    shelf: Mapping[str, Symptom] | Mapping[str, Mechanism] | Mapping[str, Cause],
) -> list[str]:
    return sorted(shelf, key=lambda name: (shelf[name].name.lower(), name))


def _into(book: Book) -> Into:
    """By what is led to: the roads to it, mechanisms before causes."""
    found: dict[str, list[Road]] = {}
    for mechanism in book.mechanisms.values():
        for arrow in mechanism.leads_to:
            road = Road(mechanism.id, mechanism.name, arrow.because)
            found.setdefault(arrow.to, []).append(road)
    for cause in book.causes.values():
        for arrow in cause.leads_through:
            found.setdefault(arrow.to, []).append(Road(cause.id, cause.name, arrow.because))
    return {end: tuple(roads) for end, roads in found.items()}


def _out(book: Book, arrows: tuple[Arrow, ...]) -> tuple[Road, ...]:
    return tuple(Road(a.to, label(book, a.to), a.because) for a in arrows)


def _families(book: Book) -> tuple[Family, ...]:
    found: dict[str, list[str]] = {}
    for symptom in book.symptoms.values():
        found.setdefault(symptom.family, []).append(symptom.id)
    return tuple(
        Family(
            family,
            family.replace("-", " ").capitalize(),
            tuple((s, causes_showing(book, s)) for s in sorted(found[family])),
        )
        for family in sorted(found)
    )


def _symptom(book: Book, name: str, into: Into) -> Node:
    symptom = book.symptoms[name]
    said = f"People say: {', '.join(symptom.in_words)}." if symptom.in_words else ""
    text = tuple(t for t in (symptom.looks_like, said) if t)
    sources = tuple(sourced(book, symptom.sources))
    return Node("symptom", name, symptom.name, text, into.get(name, ()), (), sources=sources)


def _mechanism(book: Book, name: str, into: Into) -> Node:
    mechanism = book.mechanisms[name]
    return Node(
        "mechanism",
        name,
        mechanism.name,
        (mechanism.explain,),
        into.get(name, ()),
        _out(book, mechanism.leads_to),
        lesson=tuple((c.id, c.name) for c in experiments_for(book, name)),
        sources=tuple(sourced(book, [mechanism.source])),
    )


def _cause(book: Book, name: str) -> Node:
    cause = book.causes[name]
    return Node(
        "cause",
        name,
        cause.name,
        (cause.summary,),
        (),
        _out(book, cause.leads_through),
        cause.fix.do,
        tuple(cares(book, cause.cautions, cause.fix.needs)),
        sources=tuple(sourced(book, cause.sources)),
    )
