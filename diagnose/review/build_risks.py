"""The views of the risks: what shows each, what to change."""

from __future__ import annotations

from diagnose.book.model import Book
from diagnose.physics.units import show
from diagnose.review.dresses import for_this_face
from diagnose.review.reasons import Reason, reasons
from diagnose.review.review import PLANNED, WHEEL_CHECKS, Review
from diagnose.review.risks import Risk
from diagnose.review.set_up import DEPTH
from diagnose.review.settings import ACROSS
from diagnose.review.shaking import BALANCED, force_words
from diagnose.view.parts import source_view
from diagnose.view.review import BroughtView, RiskView, ShownView

HARM_WORDS = {
    "scrap": "the part is scrap",
    "quarantine": "the part is put aside for inspection",
    "save": "the part can be saved while stock is left",
    "measure": "the part is measured before anything else",
    "leave": "the part can often be left as it is",
}


def change_lines(book: Book, review: Review, units: str) -> dict[str, str]:
    """By check, what to change of the planned settings and of the wheel."""
    lines = {}
    for s in review.settings:
        if s.planned is not None and not s.keep:
            told = review.setup.read.gathered.told[s.check].text
            name = book.checks[s.check].name
            lines[s.check] = f"Set {name} to {s.said(units)}, not {told}."
    if {DEPTH, ACROSS} <= lines.keys():  # one pair for both
        told = review.setup.read.gathered.told[ACROSS].text
        lines[ACROSS] = lines[DEPTH] = f"{lines[DEPTH].rstrip('.')} with {told} across."
    best = review.shelf.best if review.shelf else None
    planned = review.setup.read.case.wheel or PLANNED
    if review.shelf is not None and (best is None or best.card.id != planned):
        name = f"{best.card.name} ({best.card.marking})" if best else f"wheel {review.shelf.wanted}"
        lines |= dict.fromkeys(WHEEL_CHECKS, f"Fit the {name}.")
    return lines


def risk_view(
    book: Book, review: Review, risk: Risk, level: str, lines: dict[str, str], units: str
) -> RiskView:
    """One risk with the numbers that show it."""
    cause = book.causes[risk.cause]
    found = reasons(book, review.setup.read, review.weighed.network, cause, units)
    if risk.far is not None:
        off = risk.far
        found = (Reason(off.because, (off.said,), off.source, (off.check,)), *found)
    checks = dict.fromkeys(c for r in found for c in r.facts)
    change = tuple(dict.fromkeys(line for c, line in lines.items() if c in checks))
    return RiskView(
        level=level,
        cause=risk.cause,
        name=cause.name,
        complaint=book.symptoms[risk.complaint].name,
        harm=HARM_WORDS[risk.action],
        here=risk.there,
        usual=risk.usual,
        after=review.after[risk.cause],
        shows=risk.shows,
        shown_by=tuple(_shown(book, r, risk.force, units) for r in found),
        do=_do(review, cause.fix.do, units),
        change=change,
    )


def _do(review: Review, text: str, units: str) -> str:
    """What to do, with the dress of this wheel in place of that of a 13 mm face."""
    if review.dresses is None:
        return text
    low, high = (show(s, "time", units) for s in review.dresses.ways[-1].seconds)
    depth = show(review.dresses.ways[-1].depth, "length", units)
    return for_this_face(text, depth, low if low == high else f"{low} to {high}")


def _shown(book: Book, reason: Reason, force: float, units: str) -> ShownView:
    """A reason with what shows it; the pull of the wheel beside the answer that left it so."""
    pull = (force_words(force, units),) if force and BALANCED in reason.facts else ()
    return ShownView(reason.because, reason.shown + pull, source_view(book, reason.source))


def brought_view(book: Book, risk: Risk) -> BroughtView:
    """What the part, the machine or the wheel brings along."""
    cause = book.causes[risk.cause]
    return BroughtView(cause.name, cause.fix.do)
