"""The view of the plan: the part, first aid, the cure."""

from __future__ import annotations

from diagnose.book.advice import Aid
from diagnose.book.model import Book
from diagnose.reasoning.plan import AidStep, FixStep
from diagnose.reasoning.reason import Reasoned
from diagnose.view.parts import card_refs, caution_view, name_of, source_view
from diagnose.view.result import (
    AidView,
    FixView,
    PartView,
    PlanView,
)


def plan_view(reasoned: Reasoned) -> PlanView:
    book, plan = reasoned.read.book, reasoned.plan
    return PlanView(
        tuple(PartView(a.action, a.say, source_view(book, a.source)) for a in plan.part),
        tuple(_aid(book, a) for a in plan.first_aid),
        tuple(_fix(book, s) for s in plan.cure),
        plan.expected_minutes,
        plan.quick_minutes,
        plan.slow_minutes,
        card_refs(book, _of_the_complaint(reasoned)),
    )


def _of_the_complaint(reasoned: Reasoned) -> tuple[str, ...]:
    if not reasoned.read.safe:
        return ()  # a card leads to a turning wheel: the safety questions come first
    symptoms = reasoned.read.book.symptoms
    named = (symptoms[s].cards for s in reasoned.read.case.complaint if s in symptoms)
    in_fixes = {c for step in reasoned.plan.cure for c in step.fix.cards}
    return tuple(c for c in dict.fromkeys(c for cards in named for c in cards) if c not in in_fixes)


def _aid(book: Book, step: AidStep) -> AidView:
    aid: Aid = step.aid
    return AidView(
        aid.do,
        aid.because,
        name_of(book, step.origin),
        tuple(caution_view(book, c) for c in aid.cautions),
        step.withheld,
        source_view(book, aid.source),
    )


def _fix(book: Book, step: FixStep) -> FixView:
    fix = step.fix
    return FixView(
        fix.id,
        fix.do,
        tuple(book.causes[c].name for c in step.causes),
        step.cures_alone,
        fix.minutes_first_time,
        fix.minutes_practised,
        tuple(caution_view(book, c) for c in step.cautions),
        () if step.withheld else fix.steps,
        "" if step.withheld else fix.proof,
        fix.tools,
        step.withheld,
        fix.call_someone,
        () if step.withheld else card_refs(book, fix.cards),
    )
