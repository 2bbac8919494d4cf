"""What will go wrong with this set-up: each cause it makes likelier, by likelihood times harm.

What the likelihood is. The knowledge counts how often a cause acts in jobs that somebody
complained of; nobody counts the jobs that came out well. So no chance of a bad part can be given,
and none is claimed. What the same network gives honestly, with no complaint told, is how far this
set-up moves each cause: the chance that it is there with all that is known, less the chance of the
same cause in a job of which nothing is known. That part, times the chance that the cause shows its
complaint, is what the set-up adds; both chances are shown. Harm is what the symptom's own advice on
the part comes to (scrap, quarantine, save, measure, leave), weighed in `HARM` (ours, no source). A
cause that the set-up does not make likelier is no risk of the set-up and is not listed.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.book.conditions import FactValue, holds
from diagnose.book.model import Book, Symptom
from diagnose.reasoning.assembly import Row
from diagnose.reasoning.belief import Impossible
from diagnose.reasoning.explained import sum_out
from diagnose.reasoning.network import Network, Node
from diagnose.reasoning.reason import Read
from diagnose.reasoning.trials import network_of

HARM = {"scrap": 1.5, "quarantine": 1.5, "save": 1.0, "measure": 1.0, "leave": 0.5}
WORST_FIRST = ("scrap", "quarantine", "save", "measure", "leave")
RAISED = 1.25  # times likelier than in any job, from which the set-up is said to raise a cause
SERIOUS, MINOR = 0.20, 0.03  # added chance x harm: a risk from here on, nothing worth saying below


@dataclass(frozen=True)
class Risk:
    """One cause this set-up makes likelier.

    `there` and `usual` are the chance that it is there, here and in any job; `shows` the chance
    that it then makes `complaint`; `weight` is (there - usual) x shows x harm.
    """

    cause: str
    complaint: str
    there: float
    usual: float
    shows: float
    action: str
    weight: float

    @property
    def serious(self) -> bool:
        """True for a risk, False for a minor note."""
        return self.weight >= SERIOUS


@dataclass(frozen=True)
class Chance:
    """A complaint: its chance in this set-up and in a job of which nothing is known."""

    symptom: str
    here: float
    usual: float


@dataclass(frozen=True)
class Weighed:
    """The networks with this set-up and with nothing known, and what follows from them."""

    network: Network
    plain: Network
    risks: tuple[Risk, ...]
    complaints: tuple[Chance, ...]


def weigh(book: Book, read: Read, plain: Network) -> Weighed:
    """The risks of a set-up, the heaviest first; `plain` is the network of nothing known.

    Raises belief.Impossible when the entries cannot all be true.
    """
    network, _ = network_of(book, (), read.gathered, read.deduced)
    here, usual = present(network), present(plain)
    found = [_risk(book, node, here[node.id], usual[node.id], read.facts) for node in network.nodes]
    risks = sorted((r for r in found if r is not None), key=lambda r: (-r.weight, r.cause))
    return Weighed(network, plain, tuple(risks), chances(book, network, plain))


def present(network: Network) -> dict[str, float]:
    """The chance of each cause being there, all that is known taken together."""
    summed = sum_out(network, [Row(network.evidence)])
    total = float(summed.total[0])
    if not total > 0.0:
        raise Impossible("these answers cannot all be true together as the knowledge stands")
    return {n.id: float(summed.present[0, i]) / total for i, n in enumerate(network.nodes)}


def chances(book: Book, network: Network, plain: Network) -> tuple[Chance, ...]:
    """The chance of each complaint, here and in any job, the most raised first."""
    here, usual = _of_symptoms(book, network), _of_symptoms(book, plain)
    found = [Chance(s, here[s], usual[s]) for s in book.symptoms]
    return tuple(sorted(found, key=lambda c: (c.usual - c.here, c.symptom)))


def _of_symptoms(book: Book, network: Network) -> dict[str, float]:
    """The chance of each complaint by itself. A row each: together they would open every sign."""
    if not network.evidence and all(n.there == n.absent for n in network.nodes):
        return {s: 1.0 - _quiet(network, s) for s in book.symptoms}
    base = float(sum_out(network, [Row(network.evidence)], posteriors=False).total[0])
    found = {}
    for name in book.symptoms:
        row = Row({**network.evidence, name: (0.0, 1.0)})
        total = float(sum_out(network, [row], posteriors=False).total[0])
        found[name] = min(1.0, max(0.0, total / base))
    return found


def _quiet(network: Network, symptom: str) -> float:
    """The chance that nothing makes the complaint, while nothing but circumstances is known."""
    chance = network.background[symptom][0]
    chance *= 1.0 - network.unlisted_prior * (1.0 - network.unlisted[symptom][0])
    for node in network.nodes:
        if symptom in node.links:
            chance *= 1.0 - node.prior * (1.0 - node.links[symptom][0])
    return chance


def _risk(
    book: Book, node: Node, there: float, usual: float, facts: Mapping[str, FactValue]
) -> Risk | None:
    if there < RAISED * usual:
        return None
    rated = [
        (node.links[s.id][1] * HARM[action_for(s, facts)], s.id)
        for s in book.symptoms.values()
        if s.id in node.links
    ]
    if not rated:
        return None
    harmful, complaint = max(rated)
    weight = (there - usual) * harmful
    if weight < MINOR:
        return None
    shows, action = node.links[complaint][1], action_for(book.symptoms[complaint], facts)
    return Risk(node.id, complaint, there, usual, shows, action, weight)


def action_for(symptom: Symptom, facts: Mapping[str, FactValue]) -> str:
    """The worst the symptom's own advice has for a part like this one."""
    found = {a.action for a in symptom.the_part if holds(a.when, facts) == 1.0}
    return next((action for action in WORST_FIRST if action in found), "measure")
