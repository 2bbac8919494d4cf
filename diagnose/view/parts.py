"""Small views that several others are made of: sources, cautions, checks, names."""

from __future__ import annotations

from diagnose.book.grid_checks import grid_numbers
from diagnose.book.model import Book, Check
from diagnose.reasoning.gates import TURNING
from diagnose.reasoning.next_check import Candidate
from diagnose.reasoning.reason import Reasoned
from diagnose.view.result import (
    AnswerOutcome,
    CardRef,
    CautionView,
    CheckView,
    SourceView,
)

SEVERAL, NONE = "several together", "none of these"


def source_view(book: Book, name: str) -> SourceView:
    source = book.sources.get(name)
    if source is None:
        return SourceView("common-practice", "common practice, no source", "common practice")
    return SourceView(source.id, source.title, source.standing)


def caution_view(book: Book, name: str) -> CautionView:
    caution = book.cautions[name]
    return CautionView(caution.id, caution.say, source_view(book, caution.source))


def card_refs(book: Book, names: tuple[str, ...]) -> tuple[CardRef, ...]:
    """The guided cards of these ids."""
    return tuple(CardRef(n, book.cards[n].name) for n in names if n in book.cards)


def name_of(book: Book, name: str) -> str:
    """The plain name of anything in the book, by id; the id itself when it has none."""
    for shelf in (book.causes, book.mechanisms, book.symptoms, book.findings, book.checks):
        if name in shelf:
            return str(shelf[name].name)
    return _number_of_a_grid(book, name) or name


def _number_of_a_grid(book: Book, name: str) -> str:
    """The name of the check and what of the shape it is; "" for anything else."""
    from diagnose.physics.worked_grid import REST, WORDS

    check, term = grid_numbers(book).get(name, ("", ""))
    return f"{book.checks[check].name}: {WORDS.get(term, REST)}" if check else ""


def _wheel(check: Check) -> str:
    if TURNING in check.needs:
        return "wheel turning"
    return "wheel stopped" if "wheel-stopped" in check.needs else ""


def check_view(check: Check, why: str, outcomes: tuple[AnswerOutcome, ...] = ()) -> CheckView:
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
