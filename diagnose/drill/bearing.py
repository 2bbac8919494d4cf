"""Which checks and causes a learner is shown for a complaint."""

from __future__ import annotations

from diagnose.book.model import Book, Check
from diagnose.drill.drawn import Drill
from diagnose.drill.showing import wheel_words
from diagnose.drill.signs import reports_on, signs_of
from diagnose.reasoning.ground import ground
from diagnose.view.drill import CheckLine

PLACES = ("history", "part", "wheel", "machine", "bench")


def causes_of(book: Book, complaint: str) -> tuple[str, ...]:
    """The causes that can make a complaint, by name."""
    links = ground(book).links
    able = [n for n in book.causes if complaint in links[n]]
    return tuple(sorted(able, key=lambda n: book.causes[n].name.lower()))


def checks_for(book: Book, drill: Drill) -> tuple[str, ...]:
    """The checks that bear on those causes, or guard against a hazard, in order of the place.

    The first questions of the complaint come first in each place, then the quickest.
    """
    causes = set(causes_of(book, drill.complaint))
    known = ground(book)
    signs = {s for c in causes for s in known.links[c]}
    hung = {f for c in causes for f in known.hangs[c]}
    hung |= {f for c in causes for g in book.causes[c].possible_when for f in g.when.facts}
    for rule in book.rules.values():
        if hung & {t.finding for t in rule.then if t.finding}:
            hung |= known.needed[rule.id]
    firsts = book.symptoms[drill.complaint].first_questions

    def bears(check: Check) -> bool:
        if any(stop.asked_by == check.id for stop in book.stops.values()):
            return True
        if reports_on(book, check):
            return any(c.id in causes for c, _ in reports_on(book, check))
        named = {check.id, *check.settles, *(f for o in check.options for f in o.means)}
        return bool(named & (signs | hung)) or bool(set(signs_of(book, check)) & signs)

    wanted = [book.checks[n] for n in drill.answers if n in firsts or bears(book.checks[n])]
    for check in list(wanted):
        wanted += [book.checks[n] for n in check.together_with if n in drill.answers]
    place = {p: n for n, p in enumerate(PLACES)}
    found = {c.id: c for c in wanted if c.id not in drill.given}
    return tuple(
        sorted(
            found,
            key=lambda n: (
                place.get(found[n].place, len(PLACES)), n not in firsts, found[n].minutes, n
            ),
        )
    )  # fmt: skip


def lines(book: Book, names: tuple[str, ...], asked: frozenset[str]) -> tuple[CheckLine, ...]:
    """The list of checks, numbered."""
    return tuple(
        CheckLine(
            number,
            name,
            book.checks[name].name,
            book.checks[name].minutes,
            wheel_words(book.checks[name]),
            book.checks[name].place or "elsewhere",
            name in asked,
        )
        for number, name in enumerate(names, 1)
    )
