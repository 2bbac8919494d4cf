"""What was tried, folded into the network: each outcome is evidence on the cause it would cure."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from diagnose.book.model import Book
from diagnose.reasoning.facts import Gathered
from diagnose.reasoning.forward import Deduced
from diagnose.reasoning.ground import Vector
from diagnose.reasoning.network import Network, Node, RuledOut, build, hard


def network_of(
    book: Book, complaint: tuple[str, ...], gathered: Gathered, deduced: Deduced
) -> tuple[Network, tuple[RuledOut, ...]]:
    """The network of the case as it stands, and the causes that cannot be here."""
    network, out = build(book, complaint, gathered, deduced)
    for _, entry, _ in gathered.read.tried:
        cause = book.causes.get(entry.name)
        if cause is not None and network.node(entry.name) is not None:
            network = after_trial(network, cause.id, entry.outcome, cause.fix.cures)
    return network, out


def after_trial(network: Network, cause: str, outcome: str, cures: float) -> Network:
    """The network once a fix was tried; `cures` is how far the fix can be trusted.

    same: the cause's links to the complaint are weaker by `cures`. better, gone and comes back:
    the cause acted, and what is left of the complaint something else makes. gone and stays: the
    cause made the complaint alone.
    """
    if outcome == "same":
        return _with_node(network, cause, lambda n: _weaker(n, network.complaint, 1.0 - cures))
    if outcome in ("better", "gone and comes back"):
        return _with_node(network, cause, lambda n: _certain(n, network.complaint))
    return _alone(network, cause) if outcome == "gone and stays" else network


def _alone(network: Network, cause: str) -> Network:
    """Nothing but this cause made the complaint, as far as it can make any of it.

    For all else the chance of not making it is folded into what speaks for its being there, and
    its links to the complaint are taken out.
    """
    node = network.node(cause)
    made = [s for s in network.complaint if node is not None and s in node.links]
    seen = {s: v for s in made if (v := hard(network.evidence.get(s, (1.0, 1.0))))}
    if not seen:
        return network
    prior, keep = network.unlisted_prior, _quiet(network.unlisted, seen)
    unlisted = {s: _nothing(v) if s in seen else v for s, v in network.unlisted.items()}
    return replace(
        network,
        nodes=tuple(n if n.id == cause else _silent(n, seen) for n in network.nodes),
        background={s: _nothing(v) if s in seen else v for s, v in network.background.items()},
        unlisted=unlisted,
        unlisted_prior=prior * keep / (prior * keep + 1.0 - prior),
        evidence={
            s: v for s, v in network.evidence.items() if s in seen or s not in network.complaint
        },
        complaint=tuple(seen),
    )


def _nothing(vector: Vector) -> Vector:
    return (1.0, *([0.0] * (len(vector) - 1)))


def _quiet(links: Mapping[str, Vector], seen: Mapping[str, int]) -> float:
    """The chance that links make nothing as striking as what was seen."""
    result = 1.0
    for sign, value in seen.items():
        result *= sum(links[sign][:value]) if sign in links else 1.0
    return result


def _silent(node: Node, seen: Mapping[str, int]) -> Node:
    links = {s: v for s, v in node.links.items() if s not in seen}
    return replace(node, there=node.there * _quiet(node.links, seen), links=links)


def _with_node(network: Network, cause: str, change: Callable[[Node], Node]) -> Network:
    nodes = tuple(change(n) if n.id == cause else n for n in network.nodes)
    return replace(network, nodes=nodes)


def _weaker(node: Node, complaint: Sequence[str], keep: float) -> Node:
    links = dict(node.links)
    for sign in complaint:
        if sign in links:
            fired = [p * keep for p in links[sign][1:]]
            links[sign] = (1.0 - sum(fired), *fired)
    return replace(node, links=links)


def _certain(node: Node, complaint: Sequence[str]) -> Node:
    """The cause surely there, its links to the complaint taken as already accounted for."""
    links = {s: v for s, v in node.links.items() if s not in complaint}
    return replace(node, absent=0.0, links=links)
