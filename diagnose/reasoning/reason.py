"""The pipe in one call: entries -> facts -> findings -> belief -> next check -> plan."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from diagnose.book.conditions import FactValue
from diagnose.book.model import Book
from diagnose.case.entries import UNASKED, UNKNOWN, Case
from diagnose.reasoning.belief import Belief, believe, within_width
from diagnose.reasoning.facts import Gathered, gather, spoiled_by_now
from diagnose.reasoning.fixes import FixTable, fix_table
from diagnose.reasoning.forward import Deduced, deduce
from diagnose.reasoning.gates import (
    Hazard,
    askable,
    begun,
    hazards,
    may_turn,
    raised,
    safety_checks,
    turns,
)
from diagnose.reasoning.grids import grids_of
from diagnose.reasoning.network import Network, RuledOut, all_facts, meanings, surest
from diagnose.reasoning.next_check import Valued, value_all
from diagnose.reasoning.plan import Plan, make_plan
from diagnose.reasoning.policy import Step, before_help, decide, walk_list
from diagnose.reasoning.trials import network_of


@dataclass(frozen=True)
class Read:
    """The case read: facts in force, what follows from them, hazards."""

    book: Book
    case: Case
    gathered: Gathered
    deduced: Deduced
    facts: Mapping[str, FactValue]
    hazards: tuple[Hazard, ...]

    @property
    def safe(self) -> bool:
        """True when every stop of the machine is cleared."""
        return may_turn(self.hazards)

    @property
    def stops(self) -> tuple[Hazard, ...]:
        """The stops and holds that stand."""
        return raised(self.hazards)


@dataclass(frozen=True)
class Reasoned:
    """Everything computed from one state of a case."""

    read: Read
    network: Network
    ruled_out: tuple[RuledOut, ...]
    belief: Belief
    fixes: FixTable
    valued: Valued
    step: Step
    walk: tuple[str, ...]
    plan: Plan


def read_case(book: Book, case: Case, cards: Mapping[str, str] | None = None) -> Read:
    """Facts, findings and hazards of a case. `cards`: facts of the machine and wheel cards."""
    gathered = gather(case, book, cards)
    told: dict[str, FactValue] = {n: t.value for n, t in gathered.told.items()}
    told |= surest(meanings(book, gathered))
    for symptom in case.complaint:
        told[symptom] = "yes"
    grids = grids_of(book, gathered)
    told |= grids.numbers
    deduced = deduce(book, told)
    deduced = replace(deduced, notes=(*grids.notes, *deduced.notes))
    facts = {**all_facts(gathered, deduced), **told, **gathered.owned_now()}
    return Read(book, case, gathered, deduced, facts, hazards(book, gathered, deduced, facts))


def reason(book: Book, case: Case, cards: Mapping[str, str] | None = None) -> Reasoned:
    """The whole pipe for one case with a complaint.

    Raises belief.Impossible when the answers contradict the knowledge outright, KeyError when
    the complaint names no symptom of the book.
    """
    return reason_from(read_case(book, case, cards))


def reason_from(read: Read) -> Reasoned:
    """The pipe from the facts on."""
    book, case, gathered = read.book, read.case, read.gathered
    network, out = network_of(book, case.complaint, gathered, read.deduced)
    network = within_width(network)
    belief = believe(network)
    done = {
        book.causes[e.name].fix.id: 1.0 - book.causes[e.name].fix.cures
        for _, e, _ in gathered.read.tried
        if e.name in book.causes and e.outcome != "not done"
    }
    fixes = fix_table(book, network, done, case.practised)
    checks = askable(book, gathered, read.facts, case.tools)
    wiped = frozenset(c.id for c in checks if spoiled_by_now(c, gathered))
    single = [c for c in checks if c.kind != "any"]  # a list has no single answer to value
    valued = value_all(book, network, single, read.facts, fixes, _prepared(read), wiped, belief)
    safety = safety_checks(book, read.hazards, gathered, frozenset(gathered.read.later))
    firsts = [q for s in case.complaint for q in book.symptoms[s].first_questions]
    asked = looks_made(book, case)
    step = decide(
        book, valued, fixes, safe=read.safe, safety=safety,
        opening=[c for c in checks if c.opens], first_questions=firsts, asked=asked,
        known=looks_made(book, case, known=True),
        tried=bool(gathered.read.tried),
    )  # fmt: skip
    step = before_help(step, valued, fixes, fixes.at_work(acting(network, belief)))
    wanted = begun(book, gathered)
    if wanted and (read.safe or not turns(book.checks[wanted])):
        step = Step("ask", wanted, "it completes the reading you began")
    walk = tuple(walk_list(book, valued, step, read.safe))
    first = step.name if step.kind == "fix" else ""
    plan = make_plan(book, case.complaint, belief, valued, fixes, read.facts, read.safe, first)
    return Reasoned(read, network, out, belief, fixes, valued, step, walk, plan)


def acting(network: Network, belief: Belief) -> list[float]:
    """The chance that each cause acts on the complaint, in the order of the network."""
    acts = {r.cause: r.acts for r in belief.ranked}
    return [acts.get(n.id, 0.0) for n in network.nodes]


def questions_asked(book: Book, case: Case) -> int:
    """Answers to what was asked for the cause, neither told unasked nor asked for safety."""
    return len(_asked(book, case))


def looks_made(book: Book, case: Case, known: bool = False) -> int:
    """The questions as the policy counts them: the numbers that make up one reading are one.

    With `known` those alone that were answered with more than "don't know".
    """
    asked = _asked(book, case, known)
    checks = [book.checks[n] for n in asked if n in book.checks]
    parts = {n for check in checks for n in check.together_with}
    return sum(1 for name in asked if name not in parts)


def _asked(book: Book, case: Case, known: bool = False) -> list[str]:
    safety = {s.asked_by for s in book.stops.values()}
    answers = [e for e in case.entries if e.kind == "answer" and e.name not in safety]
    asked = [e for e in answers if e.how != UNASKED]
    return [e.name for e in asked if not known or e.value != UNKNOWN]


def _prepared(read: Read) -> frozenset[str]:
    """Preparations made already in this round: the cover is off."""
    told = read.gathered.told.values()
    now = read.gathered.read.rounds - 1
    return frozenset(
        read.book.checks[t.check].shares_preparation for t in told if t.round == now and t.entry
    ) - {""}
