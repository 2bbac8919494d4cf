"""What was learned is tried on the earlier cases; a change that ranks them worse is not made.

A case is judged by the chance given to what cured it, as told before anything was tried: the one
cause alone, several together, or nothing that the book lists; these sum to one. All changes are
tried together first. Where the cases of a complaint come out worse, its shares are refused if
they do it by themselves; then, one after the other, the strengths of the cause that costs most.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace

from diagnose.book.model import Book
from diagnose.lessons.apply import with_lessons
from diagnose.lessons.model import Lessons, Refused
from diagnose.lessons.taught import Taught
from diagnose.reasoning.belief import Impossible, believe
from diagnose.reasoning.trials import network_of

NEVER = 1e-6  # the least chance a case is charged with
WORSE = 1e-9


def judged(book: Book, lessons: Lessons, cases: Sequence[Taught]) -> Lessons:
    """The lessons without what would rank the earlier cases worse, and what was refused."""
    if not cases:
        return lessons
    groups = _groups(cases)
    plain = {key: losses(book, Lessons(), group) for key, group in groups.items()}
    for key, group in groups.items():
        lessons = _shares_judged(book, lessons, group, key, sum(plain[key]))
    lessons = _strengths_judged(book, lessons, groups, {k: sum(v) for k, v in plain.items()})
    after = [x for group in groups.values() for x in losses(book, lessons, group)]
    return replace(
        lessons,
        typical_before=_typical([x for group in plain.values() for x in group]),
        typical_after=_typical(after),
    )


Key = tuple[tuple[str, ...], str]  # complaint and machine: cases for which one book holds


def _groups(cases: Iterable[Taught]) -> dict[Key, list[Taught]]:
    found: dict[Key, list[Taught]] = {}
    for taught in sorted(cases, key=lambda t: (t.complaint, t.machine)):
        found.setdefault((taught.complaint, taught.machine), []).append(taught)
    return found


def _shares_judged(
    book: Book, lessons: Lessons, cases: Sequence[Taught], key: Key, plain: float
) -> Lessons:
    """The lessons without the shares of this group's complaint, if these rank its cases worse."""
    complaint, machine = key
    mine = [s for s in lessons.shares if s.complaint == complaint]
    place = machine if any(s.machine == machine for s in mine) else ""
    alone = Lessons(shares=tuple(s for s in mine if s.machine in (place, "")))
    changed = sum(losses(book, alone, cases))
    if changed <= plain + WORSE:
        return lessons
    kept = tuple(
        s
        for s in lessons.shares
        if not (s.complaint == complaint and s.machine in (place, machine))
    )
    told = Refused(
        "complaint", complaint, len(cases), *_typicals(plain, changed, len(cases)), place
    )
    return replace(lessons, shares=kept, refused=(*lessons.refused, told))


def _strengths_judged(
    book: Book, lessons: Lessons, groups: dict[Key, list[Taught]], plain: dict[Key, float]
) -> Lessons:
    """The lessons without the strengths that rank the cases of some complaint worse."""
    for key, cases in groups.items():
        without = _without_strengths(lessons, None)
        base = min(plain[key], sum(losses(book, without, cases)))
        while lessons.strengths:
            now = sum(losses(book, lessons, cases))
            if now <= base + WORSE:
                break
            cause, least = _dearest(book, lessons, cases)
            told = Refused("signs", (cause,), len(cases), *_typicals(least, now, len(cases)))
            lessons = replace(_without_strengths(lessons, cause), refused=(*lessons.refused, told))
    return lessons


def _dearest(book: Book, lessons: Lessons, cases: Sequence[Taught]) -> tuple[str, float]:
    """The cause whose strengths cost these cases most, and the loss without them."""
    causes = sorted({s.cause for s in lessons.strengths})
    trial = {c: sum(losses(book, _without_strengths(lessons, c), cases)) for c in causes}
    best = min(causes, key=lambda c: (trial[c], c))
    return best, trial[best]


def _without_strengths(lessons: Lessons, cause: str | None) -> Lessons:
    kept = tuple(s for s in lessons.strengths if cause is not None and s.cause != cause)
    return replace(lessons, strengths=kept)


def losses(book: Book, lessons: Lessons, cases: Sequence[Taught]) -> list[float]:
    """Of cases of one complaint and machine: minus the log of the chance of what cured each."""
    own = with_lessons(book, lessons, cases[0].complaint, cases[0].machine)
    return [loss(own, taught) for taught in cases]


def loss(book: Book, taught: Taught) -> float:
    """Minus the log of the chance this book gives what cured the case."""
    network, _ = network_of(book, taught.complaint, taught.gathered, taught.deduced)
    try:
        belief = believe(network)
    except Impossible:
        return -math.log(NEVER)
    if taught.alone:
        found = belief.of(taught.alone)
        chance = found.cures_alone if found is not None else 0.0
    else:
        chance = belief.several if taught.cured_by else belief.none
    return -math.log(max(chance, NEVER))


def _typical(losses: Sequence[float]) -> float:
    return math.exp(-sum(losses) / len(losses))


def _typicals(before: float, after: float, cases: int) -> tuple[float, float]:
    return math.exp(-before / cases), math.exp(-after / cases)
