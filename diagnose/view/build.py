"""From what was reasoned to the one view of it."""

from __future__ import annotations

import datetime
from collections.abc import Iterable

from diagnose.book.conditions import FactValue, Number
from diagnose.book.model import Aid, Arrow, Book, Check
from diagnose.case.entries import UNKNOWN
from diagnose.case.text import case_text
from diagnose.physics.units import show
from diagnose.reasoning.explain import Account, Item, account, how, sources_of
from diagnose.reasoning.gates import NOT_CLEARED, TURNING, Hazard
from diagnose.reasoning.graph import chain
from diagnose.reasoning.next_check import Candidate
from diagnose.reasoning.plan import AidStep, FixStep
from diagnose.reasoning.reason import Reasoned
from diagnose.reasoning.stability import Stability, stability
from diagnose.view.result import (
    AidView,
    AnswerOutcome,
    ArrowView,
    CauseView,
    CautionView,
    CheckView,
    EntryView,
    FindingView,
    FixView,
    NextView,
    PartView,
    PlanView,
    ReadingView,
    ReasonView,
    ResultView,
    RuledOutView,
    SourceView,
    StabilityView,
    StopView,
    chance_words,
    percent,
)

SHOWN_FROM = 0.01  # chance of acting below which a cause is not listed
MOST_CAUSES = 8
EXPLAINED = 3  # causes that get their full account
PRESENT, ACTS = 0.5, 0.15
SEVERAL, NONE = "several together", "none of these"
SAYS = 0.02  # log-odds below which an answer says nothing about a cause


def view_of(
    reasoned: Reasoned, *, full: bool = True, units: str = "metric", date: str | None = None
) -> ResultView:
    """The view of one result. `full=False` leaves out the accounts and the stability draws."""
    book, read = reasoned.read.book, reasoned.read
    shown = [r for r in reasoned.belief.ranked if r.acts >= SHOWN_FROM][:MOST_CAUSES]
    names = [r.cause for r in shown]
    accounts = {a.cause: a for a in account(reasoned, names[:EXPLAINED])} if full else {}
    firm = stability(reasoned) if full and names else None
    causes = tuple(_cause(reasoned, name, accounts.get(name)) for name in names)
    return ResultView(
        title=read.case.title,
        case=read.case.path,
        complaint=tuple((s, book.symptoms[s].name) for s in read.case.complaint),
        complaint_sketches=tuple(
            dict.fromkeys(
                book.symptoms[s].sketch for s in read.case.complaint if book.symptoms[s].sketch
            )
        ),
        machine=read.case.machine,
        wheel=read.case.wheel,
        part=read.case.part,
        date=date or datetime.date.today().isoformat(),
        version=book.version,
        stops=tuple(_stop(book, h, reasoned) for h in read.stops),
        safe=read.safe,
        open_hazards=tuple(
            h.stop.name for h in read.hazards if h.state == NOT_CLEARED and h.stop.kind == "stop"
        ),
        headline=_headline(reasoned, causes),
        first_action=_first_action(reasoned),
        causes=causes,
        several_together=reasoned.belief.several,
        none_of_these=reasoned.belief.none,
        also_present=tuple(
            (book.causes[r.cause].name, r.present)
            for r in reasoned.belief.ranked
            if r.present >= PRESENT and r.acts < ACTS
        ),
        too_close=_too_close(book, firm),
        next=_next(reasoned),
        walk=tuple(_check(book.checks[n], "") for n in reasoned.walk),
        plan=_plan(reasoned),
        findings=_findings(reasoned),
        readings=_readings(reasoned, units),
        notes=tuple(text for _, text in read.deduced.notes)
        + tuple(f"could not be worked out: {why}" for _, why in read.deduced.could_not),
        cautions=tuple(_caution(book, c) for c in read.deduced.cautions),
        entries=_entries(reasoned),
        not_asked=_not_asked(reasoned),
        unknown_answers=tuple(sorted(read.gathered.unknown)),
        ruled_out=tuple(
            RuledOutView(book.causes[r.cause].name, r.because) for r in reasoned.ruled_out
        ),
        stability=_stability(reasoned, firm),
        set_aside=tuple(book.findings[s].name for s in reasoned.belief.set_aside),
        sources=_sources(book, names),
        case_text=case_text(read.case),
    )


def _source(book: Book, name: str) -> SourceView:
    source = book.sources.get(name)
    if source is None:
        return SourceView("common-practice", "common practice, no source", "common practice")
    return SourceView(source.id, source.title, source.standing)


def _caution(book: Book, name: str) -> CautionView:
    caution = book.cautions[name]
    return CautionView(caution.id, caution.say, _source(book, caution.source))


def _stop(book: Book, hazard: Hazard, reasoned: Reasoned) -> StopView:
    stop = hazard.stop
    because = []
    for name in hazard.why:
        if name in book.checks:
            because.append(f"{book.checks[name].name}: {_answer_words(reasoned, name, stop.id)}")
        elif name in book.rules:
            because.append(book.rules[name].because)
        else:
            because.append(name)
    return StopView(
        stop.id,
        stop.kind,
        stop.name,
        stop.what_is_wrong,
        stop.do_first,
        stop.cleared_when,
        tuple(because),
        _source(book, stop.source),
    )


def _answer_words(reasoned: Reasoned, name: str, stop: str) -> str:
    check, told = reasoned.read.book.checks[name], reasoned.read.gathered.told[name]
    chosen = told.value if isinstance(told.value, frozenset) else {told.value}
    raising = [o.say for o in check.options if o.id in chosen and stop in o.raises]
    return "; ".join(raising) or told.text


def _cause(reasoned: Reasoned, name: str, told: Account | None) -> CauseView:
    book = reasoned.read.book
    cause = book.causes[name]
    ranked = reasoned.belief.of(name)
    assert ranked is not None
    path = chain(book, name, reasoned.network.complaint + reasoned.read.case.complaint)
    reasons = tuple(_reason(reasoned, s.item, s.weight) for s in told.shares) if told else ()
    return CauseView(
        id=name,
        name=cause.name,
        summary=cause.summary,
        status=cause.status,
        probability=ranked.acts,
        cures_alone=ranked.cures_alone,
        present=ranked.present,
        words=chance_words(ranked.acts),
        fix_minutes_first=cause.fix.minutes_first_time,
        fix_minutes_practised=cause.fix.minutes_practised,
        reasons_for=tuple(r for r in reasons if r.share > SAYS),
        reasons_against=tuple(r for r in reasons if r.share < -SAYS),
        chain=_arrows(book, name, path.arrows if path else ()),
        look_alikes=tuple(book.causes[n].name for n in cause.look_alikes if n in book.causes),
        log_odds_before=told.before if told else 0.0,
        log_odds_after=told.after if told else 0.0,
        sources=tuple(_source(book, s) for s in cause.sources),
    )


def _arrows(book: Book, cause: str, arrows: Iterable[Arrow]) -> tuple[ArrowView, ...]:
    out, here = [], cause
    for arrow in arrows:
        out.append(ArrowView(name_of(book, here), name_of(book, arrow.to), arrow.because))
        here = arrow.to
    return tuple(out)


def name_of(book: Book, name: str) -> str:
    """The plain name of anything in the book, by id; the id itself when it has none."""
    for shelf in (book.causes, book.mechanisms, book.symptoms, book.findings, book.checks):
        if name in shelf:
            return str(shelf[name].name)
    return name


def _reason(reasoned: Reasoned, item: Item, weight: float) -> ReasonView:
    told = reasoned.read.gathered.told
    entries = tuple(sorted({told[c].entry for c in item.checks if c in told}))
    label = name_of(reasoned.read.book, item.name)
    said = item.said or _number_words(reasoned, item.name)
    return ReasonView(f"{label}: {said}" if said else label, weight, item.checks, entries)


def _number_words(reasoned: Reasoned, name: str) -> str:
    told = reasoned.read.gathered.told.get(name)
    return told.text if told is not None else ""


def _headline(reasoned: Reasoned, causes: tuple[CauseView, ...]) -> str:
    belief = reasoned.belief
    top = causes[0].probability if causes else 0.0
    if belief.none > max(top, belief.several):
        return (
            f"None of the causes this book lists fits well ({percent(belief.none)}): "
            "look further before changing anything."
        )
    if not causes:
        return "No cause stands out yet."
    text = f"Most likely: {causes[0].name} ({causes[0].words}, {percent(top)})."
    if belief.several > 0.4 and len(causes) > 1:
        text += f" Probably not alone: look at {causes[1].name} too."
    return text


def _first_action(reasoned: Reasoned) -> str:
    read, book, step = reasoned.read, reasoned.read.book, reasoned.step
    stops = [h for h in read.stops if h.stop.kind == "stop"]
    if stops:
        return stops[0].stop.do_first[0]
    if step.kind in ("ask", "safety"):
        return book.checks[step.name].ask
    if step.kind == "fix" and reasoned.plan.cure:
        return reasoned.plan.cure[0].fix.do
    if reasoned.plan.leave:
        return reasoned.plan.part[0].say
    return "Stop here and ask someone who can look at the machine; take this page along."


def _too_close(book: Book, firm: Stability | None) -> str:
    if firm is None or firm.firm or not firm.rival:
        return ""
    return f"Too close to call: {book.causes[firm.rival].name} could as well come first."


def _stability(reasoned: Reasoned, firm: Stability | None) -> StabilityView | None:
    if firm is None:
        return None
    book = reasoned.read.book
    rival = book.causes[firm.rival].name if firm.rival else ""
    best = max(reasoned.valued.candidates, key=lambda c: (c.rate, c.check), default=None)
    check = book.checks[best.check].ask if best is not None and not firm.firm else ""
    return StabilityView(firm.first_in, firm.of, rival, firm.firm, check)


def _wheel(check: Check) -> str:
    if TURNING in check.needs:
        return "wheel turning"
    return "wheel stopped" if "wheel-stopped" in check.needs else ""


def _check(check: Check, why: str, outcomes: tuple[AnswerOutcome, ...] = ()) -> CheckView:
    return CheckView(
        check.id,
        check.ask,
        check.help,
        check.minutes,
        _wheel(check),
        why,
        outcomes,
        check.no_instrument,
        tuple(o.say for o in check.options),
    )


def outcomes_of(reasoned: Reasoned, candidate: Candidate) -> tuple[AnswerOutcome, ...]:
    """What each answer of a check would do to the top of the list."""
    book, fixes = reasoned.read.book, reasoned.fixes
    mends: dict[str, str] = {}
    for ranked in reasoned.belief.ranked:
        mends.setdefault(book.causes[ranked.cause].fix.id, ranked.cause)
    out = []
    for outcome in candidate.outcomes:
        shares = outcome.shares
        labels = [book.causes[mends[f]].name for f in fixes.ids] + [SEVERAL, NONE]
        best = max(range(len(labels)), key=lambda i: float(shares[i]))
        out.append(AnswerOutcome(outcome.label, outcome.chance, labels[best], float(shares[best])))
    return tuple(out)


def _next(reasoned: Reasoned) -> NextView:
    step, book = reasoned.step, reasoned.read.book
    if step.kind in ("ask", "safety"):
        outcomes = outcomes_of(reasoned, step.candidate) if step.candidate else ()
        return NextView(step.kind, step.why, _check(book.checks[step.name], step.why, outcomes))
    fix = reasoned.plan.cure[0].fix.do if step.kind == "fix" and reasoned.plan.cure else ""
    return NextView(step.kind, step.why, None, fix)


def _plan(reasoned: Reasoned) -> PlanView:
    book, plan = reasoned.read.book, reasoned.plan
    return PlanView(
        tuple(PartView(a.action, a.say, _source(book, a.source)) for a in plan.part),
        tuple(_aid(book, a) for a in plan.first_aid),
        tuple(_fix(book, s) for s in plan.cure),
        plan.expected_minutes,
        plan.quick_minutes,
        plan.slow_minutes,
    )


def _aid(book: Book, step: AidStep) -> AidView:
    aid: Aid = step.aid
    return AidView(
        aid.do,
        aid.because,
        name_of(book, step.origin),
        tuple(_caution(book, c) for c in aid.cautions),
        step.withheld,
        _source(book, aid.source),
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
        tuple(_caution(book, c) for c in step.cautions),
        () if step.withheld else fix.steps,
        "" if step.withheld else fix.proof,
        fix.tools,
        step.withheld,
        fix.call_someone,
    )


def _findings(reasoned: Reasoned) -> tuple[FindingView, ...]:
    read, book = reasoned.read, reasoned.read.book
    out = []
    for name in sorted(set(read.facts) & set(book.findings)):
        value = read.facts[name]
        if not isinstance(value, str) or name in read.case.complaint:
            continue
        steps = how(reasoned, name)
        degree = read.deduced.words.get(name, {}).get(value, 1.0)
        words = next((v.name for v in book.findings[name].values if v.id == value), value)
        rules = tuple(book.rules[s.rule].because for s in steps)
        out.append(
            FindingView(
                name, book.findings[name].name, words, sources_of(reasoned, name), rules, degree
            )
        )
    return tuple(out)


def _readings(reasoned: Reasoned, units: str) -> tuple[ReadingView, ...]:
    book, read = reasoned.read.book, reasoned.read
    out = []
    for name in sorted(read.facts):
        value: FactValue = read.facts[name]
        if not isinstance(value, Number):
            continue
        dimension = book.dimensions.get(name, "number")
        label = book.checks[name].name if name in book.checks else _gives(book, name)
        low, mid, high = (show(x, dimension, units) for x in (value.low, value.value, value.high))
        out.append(
            ReadingView(
                name,
                label,
                mid,
                low,
                high,
                name in book.checks,
                value.value,
                value.low,
                value.high,
                dimension,
            )
        )
    return tuple(out)


def _gives(book: Book, name: str) -> str:
    for rule in book.rules.values():
        if rule.work_out is not None and rule.work_out.gives == name:
            return rule.name
    return name


def _entries(reasoned: Reasoned) -> tuple[EntryView, ...]:
    book, out = reasoned.read.book, []
    for told in sorted(reasoned.read.gathered.told.values(), key=lambda t: (t.entry, t.check)):
        check = book.checks[told.check]
        chosen = told.value if isinstance(told.value, frozenset) else {told.value}
        says = [o.say for o in check.options if o.id in chosen]
        answer = "; ".join(says) or told.text
        out.append(
            EntryView(told.entry, check.id, check.ask, answer, told.how, told.sure, told.round)
        )
    for standing in reasoned.read.gathered.read.answers:
        if standing.value == UNKNOWN and standing.check in reasoned.read.gathered.unknown:
            check = book.checks[standing.check]
            out.append(
                EntryView(
                    standing.entry, check.id, check.ask, UNKNOWN, standing.how, True, standing.round
                )
            )
    return tuple(sorted(out, key=lambda e: (e.number, e.check)))


def _not_asked(reasoned: Reasoned) -> tuple[CheckView, ...]:
    book = reasoned.read.book
    ranked = sorted(reasoned.valued.candidates, key=lambda c: (-c.gain, c.check))[:6]
    return tuple(
        _check(book.checks[c.check], "could still tell something", outcomes_of(reasoned, c))
        for c in ranked
    )


def _sources(book: Book, names: Iterable[str]) -> tuple[SourceView, ...]:
    used: dict[str, SourceView] = {}
    for name in names:
        cause = book.causes[name]
        for source in (*cause.sources, *(link.source for link in cause.shows)):
            if source:
                view = _source(book, source)
                used[view.id] = view
    return tuple(used[k] for k in sorted(used))
