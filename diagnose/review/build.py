"""From a review to the one view of it."""

from __future__ import annotations

import datetime
from dataclasses import replace

from diagnose.book.model import Book
from diagnose.case.case_text import case_text
from diagnose.reasoning.gates import NOT_CLEARED, safety_checks
from diagnose.review.build_parts import (
    against_view,
    cut_views,
    dress_views,
    due_view,
    list_views,
    planned_marking,
    setting_views,
    unknown_view,
    wanted_views,
    wheel_views,
)
from diagnose.review.build_risks import brought_view, change_lines, risk_view
from diagnose.review.metals import fits
from diagnose.review.review import Review
from diagnose.review.wheels import Judged
from diagnose.view.drawn_parts import limit_views, shakers_view
from diagnose.view.parts import caution_view, check_view
from diagnose.view.result import CheckView, percent
from diagnose.view.review import NOTE, RISK, ComplaintView, ReviewView, RiskView
from diagnose.view.said import entries, readings
from diagnose.view.stops import stop_view
from diagnose.view.walk import sources_in

RAISED_BY = 0.1  # a complaint is listed from this much above any job
MOST_COMPLAINTS = 6
YARDSTICK = (
    "The knowledge counts how often a cause acts in jobs that somebody complained of, not in all "
    "jobs. So a chance here is for laying beside the chance in any such job: what the set-up adds "
    "counts, not the figure by itself. What is far off weighs more: each grade letter, size of "
    "grit or doubling of a setting doubles the odds, by our own reckoning."
)


def review_view(
    book: Book, review: Review, *, units: str = "metric", date: str | None = None
) -> ReviewView:
    """The view of a review."""
    read, case = review.setup.read, review.setup.read.case
    lines = change_lines(book, review, units)
    levels = review.levels
    risks = tuple(risk_view(book, review, r, RISK, lines, units) for r in levels.risks)
    risks += tuple(risk_view(book, review, r, NOTE, lines, units) for r in levels.notes)
    later = frozenset(read.gathered.read.later)
    first = safety_checks(book, read.hazards, read.gathered, later)
    stops = tuple(stop_view(h, read) for h in read.stops)
    checks = tuple(check_view(c, "nothing turns before this is known") for c in first)
    complaints = tuple(
        ComplaintView(c.symptom, book.symptoms[c.symptom].name, c.here, c.usual)
        for c in review.weighed.complaints
        if c.here - c.usual >= RAISED_BY
    )[:MOST_COMPLAINTS]
    view = ReviewView(
        title=case.title,
        case=case.path,
        machine=case.machine,
        wheel=case.wheel,
        part=case.part,
        date=date or datetime.date.today().isoformat(),
        version=book.version,
        wanted=wanted_views(review),
        stops=stops,
        safe=read.safe,
        open_hazards=tuple(
            h.stop.name for h in read.hazards if h.state == NOT_CLEARED and h.stop.kind == "stop"
        ),
        first_checks=checks,
        headline=_headline(risks, len(stops)),
        first_action=_first_action(review, risks, checks),
        yardstick=YARDSTICK if risks or complaints else "",
        risks=risks,
        brought=tuple(brought_view(book, r) for r in levels.brought),
        complaints=complaints,
        wheel_wanted=review.shelf.wanted if review.shelf else "",
        wheel_hint=review.shelf.choice.row.hint if review.shelf else _no_row(review),
        wheel_source=_wheel_source(review),
        wheels=wheel_views(review),
        marking=planned_marking(review),
        shakers=shakers_view(read, units),
        limits=limit_views(read, units),
        dresses=dress_views(review, units),
        dress_note=_dress_note(review, units),
        **cut_views(review, units),
        settings=setting_views(book, review, units),
        due=due_view(review),
        lists=list_views(book, review),
        unknown=tuple(unknown_view(book, u) for u in review.unknown),
        taken=_taken(review),
        against=against_view(book, review),
        cautions=tuple(caution_view(book, c) for c in read.deduced.cautions),
        notes=_notes(review),
        readings=readings(read, units),
        entries=entries(read),
        sources=(),
        case_text=case_text(case),
    )
    used = {s.id: s for s in sources_in(view)}
    return replace(view, sources=tuple(used[k] for k in sorted(used)))


def _headline(risks: tuple[RiskView, ...], stops: int) -> str:
    serious = [r for r in risks if r.level == "risk"]
    if stops:
        first = "A stop stands" if stops == 1 else f"{stops} stops stand"
        return f"{first}: nothing turns until it is cleared."
    if not serious:
        count = len(risks)
        notes = "nothing" if not count else f"{count} minor note" + ("s" if count > 1 else "")
        return f"No risk stands out with what is known: {notes} to mind."
    top = serious[0]
    return (
        f"First to change: {top.name} ({percent(top.here)} here, {percent(top.usual)} in any job)."
    )


def _first_action(
    review: Review, risks: tuple[RiskView, ...], checks: tuple[CheckView, ...]
) -> str:
    stops = [h.stop for h in review.setup.read.stops]
    if stops:
        return stops[0].do_first[0]
    serious = [r for r in risks if r.level == "risk"]
    if serious:
        return serious[0].change[0] if serious[0].change else serious[0].do
    if checks:
        return checks[0].ask
    return "Tick the lists and begin."


def _no_row(review: Review) -> str:
    metal = review.setup.metal
    if metal is None:
        return "Say what metal it is; without it no wheel and no cut can be named."
    return f"The tables have no row for {metal.name}: a diamond wheel made for it, by its maker."


def _wheel_source(review: Review) -> str:
    if review.shelf is None:
        return ""
    row = review.shelf.choice.row
    return f"{row.source} ({row.standing})"


def _dress_note(review: Review, units: str) -> str:
    from diagnose.physics.units import show

    dresses, finish = review.dresses, review.setup.finish
    if dresses is None:
        return ""
    if dresses.reached or finish is None:
        return "The most open dress that gives the finish; a finer one only heats."
    told, wanted = show(dresses.finest, "roughness", units), show(finish, "roughness", units)
    return f"This grit comes to about Ra {told} at its finest; {wanted} wants a finer grit."


def _taken(review: Review) -> tuple[str, ...]:
    setup = review.setup
    book = setup.read.book
    out = [
        f"{book.checks[name].name if name in book.checks else name} not known: {words} is taken"
        for name, words in setup.taken.items()
        if review.cuts is not None
    ]
    if setup.last_taken:
        words = f"the last passes are taken to be {setup.last_taken} deep"
        out.append(f"{words}; if not, write it under planned: last_depth")
    if setup.metal is not None and setup.metal.taken:
        out.append(setup.metal.taken)
    return tuple(out)


def _notes(review: Review) -> tuple[str, ...]:
    deduced = review.setup.read.deduced
    notes = [text for _, text in deduced.notes]
    notes += [f"could not be worked out: {why}" for _, why in deduced.could_not]
    if not fits(review.setup.planned, review.setup.read.facts):
        notes.append("the hardness and the answer about the material do not go together")
    best: Judged | None = review.shelf.best if review.shelf else None
    if review.shelf is not None and best is None:
        notes.append("no wheel of the shelf may be used for this: see what is wrong with each")
    return tuple(notes)
