"""What will go wrong with this set-up: each cause it makes likelier, by likelihood times harm.

What the likelihood is. The knowledge counts how often a cause acts in jobs that somebody
complained of; nobody counts the jobs that came out well. So no chance of a bad part can be given,
and none is claimed. What the same network gives honestly, with no complaint told, is how far this
set-up moves each cause: the chance that it is there with all that is known, less the chance of the
same cause in a job of which nothing is known. That part, times the chance that the cause shows its
complaint, is what the set-up adds; both chances are shown. Harm is what the symptom's own advice on
the part comes to (scrap, quarantine, save, measure, leave), weighed in `HARM` (ours, no source). A
cause that the set-up does not make likelier is no risk of the set-up and is not listed. Which of
them is a risk, which a note, and which the part or the machine brings along: `levels.py`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.book.conditions import FactValue, Number, holds
from diagnose.book.model import Book, Cause, Symptom
from diagnose.reasoning.assembly import Row
from diagnose.reasoning.belief import Impossible
from diagnose.reasoning.explained import sum_out
from diagnose.reasoning.network import Network, Node, prior_of
from diagnose.reasoning.reason import Read
from diagnose.reasoning.trials import network_of
from diagnose.review.choices import told_for
from diagnose.review.far_off import FarOff, lifted
from diagnose.review.reasons import raising_facts, stands_on
from diagnose.review.set_up import DEPTH, SPARK_OUT
from diagnose.review.shaking import BALANCED, NEVER, SHAKES, new_wheel_force

HARM = {"scrap": 1.5, "quarantine": 1.5, "save": 1.0, "measure": 1.0, "leave": 0.5}
HURTING = ("part-slipped",)  # complaints by which people get hurt
WORST_FIRST = ("scrap", "quarantine", "save", "measure", "leave")
RAISED = 1.25  # times likelier than in any job, from which the set-up is said to raise a cause
ORDER, SIX = "face-order", "six"  # the check on the order of faces; planned: sides
MINOR = 0.03  # added chance x harm below which nothing is said


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
    at_the_end: bool  # it hangs on the last passes, not on the roughing cut
    raised_by: tuple[str, ...]  # the checks whose answers make it likelier
    force: float = 0.0  # N once a turn, where the wheel was never balanced on its mounting
    far: FarOff | None = None  # what of the wheel or a setting is far off

    @property
    def hurts(self) -> bool:
        """True where the part may leave the chuck or the machine is shaken: more than bad work."""
        return self.complaint in HURTING or self.force >= SHAKES


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


def weigh(
    book: Book, read: Read, last: Read | None, plain: Network, far: tuple[FarOff, ...] = ()
) -> Weighed:
    """The risks of a set-up, the heaviest first; `plain` is the network of nothing known.

    `last` is the set-up as it is in the last passes: what hangs on those is judged by it. `far`:
    what of wheel and settings is far off.
    Raises belief.Impossible when the entries cannot all be true.
    """
    network, _ = network_of(book, (), read.gathered, read.deduced)
    here, usual = present(network), present(plain)
    if last is not None:
        at_last = present(network_of(book, (), last.gathered, last.deduced)[0])
        here |= {c: at_last[c] for c in here if c in at_last and _of_the_end(book, read, c)}
    off = {f.cause: f for f in far}
    found = [
        _risk(book, node, here[node.id], usual[node.id], read, off.get(node.id))
        for node in network.nodes
        if _in_question(book.causes[node.id], read)
    ]
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


def _of_the_end(book: Book, read: Read, cause: str) -> bool:
    """True when the cause hangs on the last passes: on the spark-out, or on the depth alone."""
    raising = raising_facts(book, read, book.causes[cause])
    return SPARK_OUT in stands_on(read, raising) or raising == (DEPTH,)


def _in_question(cause: Cause, read: Read) -> bool:
    """False for a wrong order of faces where no order was told and the job is not six-sided."""
    planned = read.case.planned
    six = planned is not None and planned.sides == SIX
    ordered = any(confirm.check == ORDER for confirm in cause.be_sure)
    return not ordered or six or ORDER in read.gathered.told


def _risk(
    book: Book, node: Node, there: float, usual: float, read: Read, far: FarOff | None
) -> Risk | None:
    cause, harmful = book.causes[node.id], harmful_of(book, node, read.facts)
    force = _force(read, cause)
    if force:
        there = max(there, _whatever_the_width(book, cause, read))
    if far is not None:
        # by the circumstances alone: no look at a fresh face clears a wheel or a dress far off
        there = lifted(max(there, usual, prior_of(book, cause, read.facts)), far.steps)
    if harmful is None or there < RAISED * usual:
        return None
    harm, complaint = harmful
    weight = (there - usual) * harm * max(1.0, force / SHAKES)
    if weight < MINOR:
        return None
    told = told_for(book, read, cause)
    if far is not None and far.check in read.gathered.told:
        told = tuple(dict.fromkeys((far.check, *told)))
    return Risk(
        node.id,
        complaint,
        there,
        usual,
        node.links[complaint][1],
        action_for(book.symptoms[complaint], read.facts),
        weight,
        _of_the_end(book, read, node.id),
        told,
        force,
        far,
    )


def harmful_of(book: Book, node: Node, facts: Mapping[str, FactValue]) -> tuple[float, str] | None:
    """The complaint by which a cause does most harm: how often it shows x harm, and its id."""
    rated = [
        (node.links[s.id][1] * HARM[action_for(s, facts)], s.id)
        for s in book.symptoms.values()
        if s.id in node.links
    ]
    return max(rated, default=None)


def _force(read: Read, cause: Cause) -> float:
    """What a wheel that was never balanced pulls with (N); 0 where it was, or is not known."""
    if read.facts.get(BALANCED) != NEVER or not any(
        BALANCED in s.when.facts for s in cause.more_likely_when if s.factor > 1.0
    ):
        return 0.0
    numbers = [read.facts.get(n) for n in ("wheel-diameter", "wheel-width", "spindle-speed")]
    if not all(isinstance(n, Number) for n in numbers):
        return 0.0
    return new_wheel_force(*(n.value for n in numbers if isinstance(n, Number)))


def _whatever_the_width(book: Book, cause: Cause, read: Read) -> float:
    """The chance by its other circumstances: the width is in the force already."""
    facts = {name: value for name, value in read.facts.items() if name != "wheel-width"}
    return prior_of(book, cause, facts)


def action_for(symptom: Symptom, facts: Mapping[str, FactValue]) -> str:
    """The worst the symptom's own advice has for a part like this one."""
    found = {a.action for a in symptom.the_part if holds(a.when, facts) == 1.0}
    return next((action for action in WORST_FIRST if action in found), "measure")
