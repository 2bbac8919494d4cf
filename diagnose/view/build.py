"""From what was reasoned to the one view of it."""

from __future__ import annotations

import datetime
from collections.abc import Iterable

from diagnose.book.model import Arrow, Book
from diagnose.case.case_text import case_text
from diagnose.reasoning.contradictions import at_odds
from diagnose.reasoning.explain import Account, Item, account
from diagnose.reasoning.gates import NOT_CLEARED
from diagnose.reasoning.graph import chain
from diagnose.reasoning.policy import DEAR, FAINT
from diagnose.reasoning.reason import Reasoned
from diagnose.reasoning.stability import Stability, stability
from diagnose.view.drawn import ShakersView
from diagnose.view.drawn_parts import grid_views, limit_views, shakers_view
from diagnose.view.parts import caution_view, check_view, name_of, outcomes_of, source_view
from diagnose.view.result import (
    ArrowView,
    CauseView,
    HelpedView,
    NextView,
    ReasonView,
    ResultView,
    RuledOutView,
    StabilityView,
    chance_words,
    percent,
)
from diagnose.view.said import entries, findings, not_asked, readings, sources, unknown_answers
from diagnose.view.stops import stop_view
from diagnose.view.to_do import plan_view

SHOWN_FROM = 0.01  # chance of acting below which a cause is not listed
MOST_CAUSES = 8
EXPLAINED = 3  # causes that get their full account
PRESENT, ACTS = 0.5, 0.15
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
        stops=tuple(stop_view(h, read) for h in read.stops),
        safe=read.safe,
        open_hazards=tuple(
            h.stop.name for h in read.hazards if h.state == NOT_CLEARED and h.stop.kind == "stop"
        ),
        headline=_found_already(reasoned, _headline(reasoned, causes)),
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
        walk=tuple(check_view(book.checks[n], "") for n in reasoned.walk),
        plan=plan_view(reasoned),
        findings=findings(reasoned),
        readings=readings(read, units),
        notes=_notes(reasoned, causes),
        cautions=tuple(caution_view(book, c) for c in read.deduced.cautions),
        entries=entries(read),
        not_asked=not_asked(reasoned),
        unknown_answers=unknown_answers(read),
        ruled_out=tuple(
            RuledOutView(book.causes[r.cause].name, r.because) for r in reasoned.ruled_out
        ),
        stability=_stability(reasoned, firm),
        set_aside=tuple(book.findings[s].name for s in reasoned.belief.set_aside),
        sources=sources(book, names),
        case_text=case_text(read.case),
        helped=_helped(reasoned),
        shakers=_shakers(reasoned, units) if full else None,
        limits=limit_views(read, units) if full else (),
        grids=grid_views(read, units) if full else (),
    )


HOW_FAR = {
    "better": "its fix made it better, not good",
    "gone and comes back": "its fix took the fault away, and it came back",
    "gone and stays": "its fix took the fault away, and it stays away",
}


def _shakers(reasoned: Reasoned, units: str) -> ShakersView | None:
    """What can shake on this machine, once marks were counted to lay beside it."""
    found = shakers_view(reasoned.read, units)
    return found if found is not None and found.rate else None


def _helped(reasoned: Reasoned) -> tuple[HelpedView, ...]:
    """Causes whose fix helped, the last word on each."""
    book = reasoned.read.book
    last = {e.name: e.outcome for _, e, _ in reasoned.read.gathered.read.tried}
    return tuple(
        HelpedView(book.causes[n].name, HOW_FAR[o])
        for n, o in last.items()
        if n in book.causes and o in HOW_FAR
    )


def _notes(reasoned: Reasoned, causes: tuple[CauseView, ...]) -> tuple[str, ...]:
    """What the rules note, what could not be worked out, what to look at again."""
    deduced, book = reasoned.read.deduced, reasoned.read.book
    notes = list(dict.fromkeys(text for _, text in deduced.notes))
    notes += [f"could not be worked out: {why}" for _, why in deduced.could_not]
    for pair in at_odds(reasoned.network):
        one, other = name_of(book, pair.one), name_of(book, pair.other)
        notes.append(f"look again at two answers that hardly go together: {one}; {other}")
    dear = causes[0] if causes else None
    if dear and dear.fix_minutes_practised > DEAR and dear.reasons_for:
        notes.append(
            f"before {dear.fix_minutes_practised:.0f} minutes go into "
            f"'{book.causes[dear.id].fix.do}', look again at what carries it most: "
            f"{dear.reasons_for[0].text}"
        )
    return tuple(notes)


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
        sources=tuple(source_view(book, s) for s in cause.sources),
        origin=book.origin(name),
    )


def _arrows(book: Book, cause: str, arrows: Iterable[Arrow]) -> tuple[ArrowView, ...]:
    out, here = [], cause
    for arrow in arrows:
        out.append(ArrowView(name_of(book, here), name_of(book, arrow.to), arrow.because))
        here = arrow.to
    return tuple(out)


def _reason(reasoned: Reasoned, item: Item, weight: float) -> ReasonView:
    told = reasoned.read.gathered.told
    entries = tuple(sorted({told[c].entry for c in item.checks if c in told}))
    label = name_of(reasoned.read.book, item.name)
    said = item.said or _number_words(reasoned, item.name)
    return ReasonView(f"{label}: {said}" if said else label, weight, item.checks, entries)


def _number_words(reasoned: Reasoned, name: str) -> str:
    told = reasoned.read.gathered.told.get(name)
    return told.text if told is not None else ""


def _found_already(reasoned: Reasoned, headline: str) -> str:
    """The headline, after what the last fix that helped has shown."""
    found = [h for h in _helped(reasoned) if h.how_far != HOW_FAR["gone and stays"]]
    if not found:
        return headline
    last = found[-1]
    return f"Found: {last.name} ({last.how_far}). For the rest, {headline[0].lower()}{headline[1:]}"


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
    cure = reasoned.plan.cure
    if cure and (step.kind == "fix" or cure[0].cures_alone >= FAINT):
        return cure[0].fix.do
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


def _next(reasoned: Reasoned) -> NextView:
    step, book = reasoned.step, reasoned.read.book
    if step.kind in ("ask", "safety"):
        outcomes = outcomes_of(reasoned, step.candidate) if step.candidate else ()
        return NextView(step.kind, step.why, check_view(book.checks[step.name], step.why, outcomes))
    fix = reasoned.plan.cure[0].fix.do if step.kind == "fix" and reasoned.plan.cure else ""
    return NextView(step.kind, step.why, None, fix)
