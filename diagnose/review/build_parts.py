"""The views of the parts of a review: wheels, dresses, cuts, settings, lists, what is not known."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypedDict

from diagnose.book.advice import Tick
from diagnose.book.fields_before import LISTS
from diagnose.book.model import Book
from diagnose.physics.units import show
from diagnose.review.cuts import FINISHING
from diagnose.review.review import PLANNED, Review
from diagnose.review.unknown import Unknown
from diagnose.review.wheels import Judged
from diagnose.view.drawn import MarkingView
from diagnose.view.drawn_parts import marking_view
from diagnose.view.earlier import differs_views
from diagnose.view.parts import caution_view, check_view, source_view
from diagnose.view.result import percent
from diagnose.view.review import (
    AgainstView,
    CutView,
    DressView,
    DueView,
    ListView,
    SettingView,
    TickView,
    UnknownView,
    WantedView,
    WheelView,
)

NO_CASE = "The shop has no closed case of this machine and metal; its healthy record is taken."
NOTHING = "The shop has no closed case of this machine and metal, and no healthy record of it."


class CutPart(TypedDict):
    """The part of the view that tells the cut."""

    ceiling: str
    handbook: str
    cuts: tuple[CutView, ...]
    cut_note: str


def wanted_views(review: Review) -> tuple[WantedView, ...]:
    """What is wanted of the job, in the words it was written in."""
    planned, metal = review.setup.planned, review.setup.metal
    rows = [
        ("metal", metal.name if metal else ""),
        ("hardness", planned.hardness),
        ("size", planned.size),
        ("finish, Ra", planned.finish),
        ("tolerance", planned.tolerance),
        ("contact", planned.contact),
        ("faces ground", planned.sides),
    ]
    return tuple(WantedView(name, value) for name, value in rows if value)


def wheel_views(review: Review) -> tuple[WheelView, ...]:
    """The wheels of the shelf, the best first."""
    shelf = review.shelf
    if shelf is None:
        return ()
    planned = review.setup.read.case.wheel or PLANNED
    return tuple(_wheel(w, w is shelf.best, w.card.id == planned) for w in shelf.wheels)


def planned_marking(review: Review) -> MarkingView | None:
    """The marking of the wheel planned taken apart, or of the best when none is planned."""
    shelf = review.shelf
    planned = review.setup.read.case.wheel or PLANNED
    if shelf is not None:
        found = next((w for w in shelf.wheels if w.card.id == planned), None)
        found = found or (shelf.best if review.setup.marking is None else None)
        if found is not None:
            return marking_view(found.card.name, found.card.marking)
    text = review.setup.planned.marking
    return marking_view("", text) if text else None


def _wheel(judged: Judged, best: bool, planned: bool) -> WheelView:
    card = judged.card
    verdict = "best" if best else "does not suit" if judged.wrong else "suits"
    if judged.barred:
        verdict = "not to be run"
    wrong = (judged.barred, *judged.wrong) if judged.barred else judged.wrong
    return WheelView(card.id, card.name, card.marking or "not marked", verdict, planned, wrong)


def dress_views(review: Review, units: str) -> tuple[DressView, ...]:
    """The dress to rough and the one to finish."""
    ways = review.dresses.ways if review.dresses else ()
    return tuple(
        DressView(
            kind=d.kind,
            use=d.use,
            depth=show(d.depth, "length", units),
            passes=d.passes,
            seconds=_span(*(show(s, "time", units) for s in d.seconds)),
            overlap=_span(*(f"{u:.2g}" for u in d.overlaps)),
            finish=f"Ra about {show(d.roughness, 'roughness', units)}, half to double",
        )
        for d in ways
    )


def _span(low: str, high: str) -> str:
    return low if low == high else f"{low} to {high}"


def cut_views(review: Review, units: str) -> CutPart:
    """The ways to set the cut, and the ceilings they stay under."""
    cuts = review.cuts
    if cuts is None:
        return {"ceiling": "", "handbook": "", "cuts": (), "cut_note": ""}
    table = show(cuts.table_speed, "speed", units)
    keep = show(FINISHING * cuts.ways[-1].depth, "length", units)
    ways = [
        CutView(
            w.kind,
            show(w.depth, "length", units),
            show(w.crossfeed, "length", units),
            table,
            f"{FINISHING}" if w.kind == "finish" else f"till {keep} is left",
            percent(w.share),
        )
        for w in cuts.ways
    ]
    left = show(cuts.left, "length", units)
    ways.append(
        CutView("spark out", "no feed", ways[-1].crossfeed, table, f"{cuts.spark_out}", "under 1 %")
    )
    row = cuts.row
    handbook = (
        f"{show(row.rough, 'length', units)} rough, {show(row.finish, 'length', units)} finish, "
        f"{show(row.crossfeed * review.setup.numbers['wheel-width'], 'length', units)} across: "
        f"production values, a ceiling and no recommendation; {row.source} ({row.standing})"
    )
    return {
        "ceiling": f"{show(cuts.ceiling, 'area', units)} of depth x crossfeed at {table}; "
        f"work at {percent(cuts.work_at)} of it",
        "handbook": handbook,
        "cuts": tuple(ways),
        "cut_note": f"One way or the other, never both. About {left} is left after the spark-out.",
    }


def setting_views(book: Book, review: Review, units: str) -> tuple[SettingView, ...]:
    """Each setting as planned and as recommended."""
    told = review.setup.read.gathered.told
    return tuple(
        SettingView(
            s.check,
            book.checks[s.check].name if s.check in book.checks else s.check,
            told[s.check].text if s.check in told else "not planned",
            s.said(units),
            s.keep,
        )
        for s in review.settings
    )


def due_view(review: Review) -> DueView | None:
    """Strokes until the dress is due."""
    if review.due is None:
        return None
    strokes, known = review.due.lines
    assert strokes.value is not None
    assert strokes.highest is not None
    ends = (_round(strokes.value), _round(strokes.highest))
    return DueView(f"{ends[0]} to {ends[1]} strokes", known.text, review.due.meaning)


def _round(count: float) -> str:
    """Two figures, no more: the range is tenfold."""
    return f"{float(f'{count:.2g}'):.0f}"


def list_views(book: Book, review: Review) -> tuple[ListView, ...]:
    """The lists to tick, the steps of a guided card after the step that names it."""
    return tuple(
        ListView(name, LISTS[name], tuple(view for s in steps for view in _ticks(book, s)))
        for name, steps in review.lists
    )


def _ticks(book: Book, step: Tick) -> Iterator[TickView]:
    yield _tick(book, step.do, step.because, step.cautions, step.source)
    if step.card in book.cards:
        for s in book.cards[step.card].steps:
            yield _tick(book, s.do, s.why, s.cautions, s.source, s.check_by)


def _tick(
    book: Book, do: str, because: str, cautions: tuple[str, ...], source: str, check_by: str = ""
) -> TickView:
    cares = tuple(caution_view(book, c) for c in cautions)
    return TickView(do, because, check_by, cares, source_view(book, source))


def unknown_view(book: Book, unknown: Unknown) -> UnknownView:
    """What is not known, with how far it could move a cause."""
    return UnknownView(
        check_view(book.checks[unknown.check], ""),
        book.causes[unknown.cause].name,
        book.symptoms[unknown.complaint].name,
        unknown.least,
        unknown.most,
    )


def against_view(book: Book, review: Review) -> AgainstView | None:
    """What differs from the last good job; None when it was not asked for."""
    if not review.asked_against:
        return None
    good = review.against
    if good is None:
        return AgainstView("", "", "", (), 0, (), NOTHING)
    return AgainstView(
        good.case,
        good.title,
        good.date,
        differs_views(good.differs),
        good.same,
        tuple(WantedView(book.checks[n].name, _words(book, n, a)) for n, a in good.not_said),
        "" if good.case else NO_CASE,
    )


def _words(book: Book, name: str, answer: str) -> str:
    option = book.checks[name].by_option.get(answer)
    return option.say if option else answer
