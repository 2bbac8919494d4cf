"""The audit of a knowledge: one view, which text, JSON and page all print."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from diagnose.audit.calibration import Calibration, calibrate
from diagnose.audit.decisions import Merging, idle_checks, mergings
from diagnose.audit.separation import Pair, unseparated
from diagnose.audit.study import Study
from diagnose.audit.thin import Coverage, coverage
from diagnose.audit.walking import references, strings
from diagnose.book.counts import by_kind, by_standing
from diagnose.book.model import Book
from diagnose.case.entries import Case


@dataclass(frozen=True)
class NeverFirst:
    """A cause that is not first even where everything speaks for it."""

    cause: str
    rank: int
    acts: float
    above: str


@dataclass(frozen=True)
class Cited:
    """A source, its standing, and how many claims stand on it."""

    source: str
    standing: str
    claims: int


@dataclass(frozen=True)
class Edge:
    """One arrow of cause and effect."""

    from_: str
    to: str


@dataclass(frozen=True)
class Graph:
    """Causes, mechanisms and symptoms by id, the arrows between them, the name of each."""

    causes: tuple[str, ...]
    mechanisms: tuple[str, ...]
    symptoms: tuple[str, ...]
    edges: tuple[Edge, ...]
    names: Mapping[str, str]
    shown_by: Mapping[str, tuple[str, ...]]  # symptom -> causes that show it, or a sharper sign


@dataclass(frozen=True)
class Audit:
    """Everything that an audit finds."""

    version: str
    counts: Mapping[str, int]
    standings: Mapping[str, Mapping[str, int]]
    sources: tuple[Cited, ...]
    unseparated: tuple[Pair, ...]
    idle_checks: tuple[str, ...]
    never_first: tuple[NeverFirst, ...]
    coverage: tuple[Coverage, ...]
    mergings: tuple[Merging, ...]
    calibration: Calibration
    graph: Graph


def audit(book: Book, closed: Iterable[Case] = ()) -> Audit:
    """Audit a book, and the closed cases of a shop against it. Takes a while."""
    study = Study(book)
    pairs = unseparated(study)
    best = study.best_cases.values()
    never = [NeverFirst(c.cause, c.rank, c.acts, c.above) for c in best if c.rank != 1]
    return Audit(
        version=book.version,
        counts=by_kind(book),
        standings=by_standing(book),
        sources=_cited(book),
        unseparated=tuple(pairs),
        idle_checks=tuple(idle_checks(study)),
        never_first=tuple(sorted(never, key=lambda n: (-n.rank, n.cause))),
        coverage=tuple(coverage(study, pairs)),
        mergings=tuple(mergings(study)),
        calibration=calibrate(book, closed),
        graph=graph(book),
    )


def _cited(book: Book) -> tuple[Cited, ...]:
    claims: dict[str, int] = dict.fromkeys(book.sources, 0)
    for _, _, path, word in references(strings(book)):
        if word in claims and path[-1] != "cautions":
            claims[word] += 1
    found = [Cited(s.id, s.standing, claims[s.id]) for s in book.sources.values()]
    return tuple(sorted(found, key=lambda c: (-c.claims, c.source)))


def graph(book: Book) -> Graph:
    """The graph of cause and effect."""
    from diagnose.reasoning.graph import causes_showing, graph_of

    whole = graph_of(book)
    edges = sorted((str(a), str(b)) for a, b in whole.edges)
    kinds = (book.causes, book.mechanisms, book.findings)
    return Graph(
        tuple(sorted(book.causes)),
        tuple(sorted(book.mechanisms)),
        tuple(sorted(book.symptoms)),
        tuple(Edge(a, b) for a, b in edges),
        {name: thing.name for shelf in kinds for name, thing in shelf.items()},
        {symptom: causes_showing(book, symptom) for symptom in sorted(book.symptoms)},
    )
