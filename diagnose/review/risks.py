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

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from diagnose.book.conditions import FactValue, holds
from diagnose.book.model import Book, Cause, Symptom
from diagnose.reasoning.assembly import Row
from diagnose.reasoning.belief import Impossible
from diagnose.reasoning.explained import sum_out
from diagnose.reasoning.network import Network, Node
from diagnose.reasoning.reason import Read
from diagnose.reasoning.trials import network_of
from diagnose.review.reasons import raising_facts, stands_on
from diagnose.review.set_up import DEPTH, SPARK_OUT

HARM = {"scrap": 1.5, "quarantine": 1.5, "save": 1.0, "measure": 1.0, "leave": 0.5}
WORST_FIRST = ("scrap", "quarantine", "save", "measure", "leave")
RAISED = 1.25  # times likelier than in any job, from which the set-up is said to raise a cause
EVERY_DAY = 2.0  # the same where the knowledge names nothing better: every job has some of those
SERIOUS = 0.12  # added chance x harm: from here on a risk, below it a minor note
MANIFOLD = 3.5  # so many times likelier than in any job is a risk, whatever the weight
MINOR, NEUTRAL = 0.03, 0.045  # below it nothing is said; NEUTRAL: raised by what no job is without


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
    standing: bool  # nothing set for this job raises it, only what the machine or the wheel is

    @property
    def serious(self) -> bool:
        """True for a risk, False for a minor note."""
        return self.weight >= SERIOUS or self.there >= MANIFOLD * self.usual


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


def weigh(book: Book, read: Read, last: Read | None, plain: Network) -> Weighed:
    """The risks of a set-up, the heaviest first; `plain` is the network of nothing known.

    `last` is the set-up as it is in the last passes: what hangs on those is judged by it.
    Raises belief.Impossible when the entries cannot all be true.
    """
    network, _ = network_of(book, (), read.gathered, read.deduced)
    here, usual = present(network), present(plain)
    if last is not None:
        at_last = present(network_of(book, (), last.gathered, last.deduced)[0])
        here |= {c: at_last[c] for c in here if c in at_last and _of_the_end(book, read, c)}
    found = [_risk(book, node, here[node.id], usual[node.id], read) for node in network.nodes]
    risks = sorted((r for r in found if r is not None), key=_heaviest)
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


def _risk(book: Book, node: Node, there: float, usual: float, read: Read) -> Risk | None:
    facts = read.facts
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
    raising = raising_facts(book, read, book.causes[node.id])
    if there < EVERY_DAY * usual and not _better_known(book.causes[node.id], raising):
        return None
    if weight < (NEUTRAL if raising and all(_neutral(book, f) for f in raising) else MINOR):
        return None
    shows, action = node.links[complaint][1], action_for(book.symptoms[complaint], facts)
    end = _of_the_end(book, read, node.id)
    checks = [book.checks[f] for f in stands_on(read, raising) if f in read.gathered.told]
    standing = bool(checks) and all(c.standing in ("machine", "wheel") for c in checks)
    return Risk(node.id, complaint, there, usual, shows, action, weight, end, standing)


def _heaviest(risk: Risk) -> tuple[bool, bool, float, str]:
    """Risks before minor notes; of the notes those of the job before those of the machine."""
    return (not risk.serious, risk.standing and not risk.serious, -risk.weight, risk.cause)


def action_for(symptom: Symptom, facts: Mapping[str, FactValue]) -> str:
    """The worst the symptom's own advice has for a part like this one."""
    found = {a.action for a in symptom.the_part if holds(a.when, facts) == 1.0}
    return next((action for action in WORST_FIRST if action in found), "measure")


def _better_known(cause: Cause, facts: Collection[str]) -> bool:
    """True when another answer to what raises the cause would make it less likely than usual."""
    lowering = [s for s in cause.more_likely_when if s.factor < 1.0]
    return any(f in facts for s in lowering for f in s.when.facts)


def _neutral(book: Book, fact: str) -> bool:
    """True for a question each of whose answers makes some cause likelier: wet or dry.

    Every job has one of them, so that to have it is no fault of the set-up.
    """
    check = book.checks.get(fact)
    if check is None or not check.options:
        return False
    raising = {
        word
        for cause in book.causes.values()
        for shift in cause.more_likely_when
        if shift.factor > 1.0
        for test in shift.when.tests
        if test.fact == fact
        for word in test.words
    }
    return all(o.id in raising or o.raises for o in check.options)
