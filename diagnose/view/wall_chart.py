"""The wall chart: one sheet a complaint, with the looks that tell most a minute in order.

The order is the policy's own measure with nothing known but the complaint: bits of "who would
cure it" that an answer is expected to remove, for each minute. Looks with the wheel standing come
before the safety questions, what turns after them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from diagnose.book.model import Book
from diagnose.case.entries import Case
from diagnose.reasoning.gates import turns
from diagnose.reasoning.next_check import Candidate, Outcome
from diagnose.reasoning.reason import Reasoned, reason
from diagnose.view.explain_parts import cautions
from diagnose.view.parts import check_view
from diagnose.view.result import CheckView

MOST = 3  # looks of each half: more nobody makes before the first fix
FIRST = 5  # causes named at the foot


LITTLE = 0.01  # rise in the chance of a cure below which an answer speaks for nothing


@dataclass(frozen=True)
class Speaks:
    """An answer and the cause it speaks for most: the chance that its fix then cures alone."""

    answer: str
    cause: str  # "" when it speaks for none in particular
    chance: float


@dataclass(frozen=True)
class Look:
    """One check of the sheet, cares before it, with what each answer speaks for."""

    check: CheckView
    answers: tuple[Speaks, ...]
    care: tuple[str, ...]
    first: tuple[str, ...]  # questions on which it hangs
    bits_a_minute: float


@dataclass(frozen=True)
class LikelyCause:
    """A cause with the chance that it acts, before anything was asked."""

    id: str
    name: str
    acts: float


@dataclass(frozen=True)
class ChartSheet:
    """One complaint: looks with the wheel standing, the gate, looks with it turning, causes."""

    id: str
    name: str
    looks_like: str
    said: tuple[str, ...]
    sketch: str
    standing: tuple[Look, ...]
    turning: tuple[Look, ...]
    causes: tuple[LikelyCause, ...]


@dataclass(frozen=True)
class WallChart:
    """All sheets, the safety questions asked before anything turns, and the knowledge behind."""

    version: str
    gates: tuple[CheckView, ...]
    sheets: tuple[ChartSheet, ...]


def chart_of(book: Book) -> WallChart:
    """The chart of a whole book. Takes about half a second a complaint."""
    asked = [s.asked_by for s in book.stops.values() if s.kind == "stop"]
    gates = sorted({n for n in asked if asked.count(n) > 1 and n in book.checks})
    sheets = tuple(sheet_of(book, name) for name in sorted(book.symptoms))
    return WallChart(book.version, tuple(check_view(book.checks[g], "") for g in gates), sheets)


def sheet_of(book: Book, symptom: str) -> ChartSheet:
    """The sheet of one complaint."""
    thing = book.symptoms[symptom]
    reasoned = reason(book, Case(symptom, (symptom,), ()))
    ranked = sorted(reasoned.valued.candidates, key=lambda c: (-c.rate, c.check))
    standing = [c for c in ranked if not _turns(book, c)]
    turning = [c for c in ranked if _turns(book, c)]
    return ChartSheet(
        symptom,
        thing.name,
        thing.looks_like,
        thing.in_words,
        thing.sketch,
        tuple(_look(reasoned, c) for c in apart(book, standing)),
        tuple(_look(reasoned, c) for c in apart(book, turning)),
        tuple(_causes(reasoned)),
    )


def apart(book: Book, ranked: Sequence[Candidate]) -> list[Candidate]:
    """The best few, each telling something that none before it settles."""
    found: list[Candidate] = []
    told: set[str] = set()
    for candidate in ranked:
        tells = _tells(book, candidate.check)
        if tells and tells <= told:
            continue
        found.append(candidate)
        told |= tells
        if len(found) == MOST:
            break
    return found


def _tells(book: Book, check: str) -> set[str]:
    found = book.checks[check]
    named = {*found.settles, *(f for o in found.options for f in o.means)}
    return named | ({found.reports.finding} if found.reports else set())


def _turns(book: Book, candidate: Candidate) -> bool:
    return any(turns(book.checks[n]) for n in (candidate.check, *candidate.first_ask))


def _look(reasoned: Reasoned, candidate: Candidate) -> Look:
    book = reasoned.read.book
    check = book.checks[candidate.check]
    first = tuple(book.checks[n].ask for n in candidate.first_ask)
    care = tuple(cautions(book, check.cautions))
    answers = tuple(_speaks(reasoned, o) for o in candidate.outcomes)
    return Look(check_view(check, ""), answers, care, first, candidate.rate)


def _speaks(reasoned: Reasoned, outcome: Outcome) -> Speaks:
    """The fix whose chance the answer raises most, by the name of its likeliest cause."""
    book, fixes, now = reasoned.read.book, reasoned.fixes, reasoned.valued.now
    rises = [float(outcome.shares[n] - now[n]) for n in range(len(fixes.ids))]
    if not rises or max(rises) < LITTLE:
        return Speaks(outcome.label, "", 0.0)
    best = rises.index(max(rises))
    mends = (r.cause for r in reasoned.belief.ranked)
    cause = next(c for c in mends if book.causes[c].fix.id == fixes.ids[best])
    return Speaks(outcome.label, book.causes[cause].name, float(outcome.shares[best]))


def _causes(reasoned: Reasoned) -> Iterator[LikelyCause]:
    book = reasoned.read.book
    for ranked in reasoned.belief.ranked[:FIRST]:
        cause = book.causes[ranked.cause]
        yield LikelyCause(cause.id, cause.name, ranked.acts)
