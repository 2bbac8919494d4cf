"""What was learned is tried on the earlier cases; a change that ranks them worse is not made.

A case is judged by the chance given to what cured it, as told before anything was tried: the one
cause alone, several together, or nothing that the book lists; these sum to one. The shares of a
complaint are one change, tried on its cases, a machine's own another. The strengths of one
cause's signs are one change, tried with the shares in force on every case they bear on; last,
all strengths together on all cases.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from diagnose.book.model import Book
from diagnose.lessons.apply import with_lessons
from diagnose.lessons.model import Lessons, Refused, Share, Strength
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
    for complaint in sorted({complaint for complaint, _ in groups}):
        mine = {key: group for key, group in groups.items() if key[0] == complaint}
        lessons = _shares_judged(book, lessons, complaint, mine, plain)
    lessons, after = _strengths_judged(book, lessons, groups)
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
    book: Book,
    lessons: Lessons,
    complaint: tuple[str, ...],
    groups: Mapping[Key, Sequence[Taught]],
    plain: Mapping[Key, Sequence[float]],
) -> Lessons:
    """The lessons without the shares that rank the cases of a complaint worse.

    A machine's own must not be worse for its cases than the shop's, nor than the book; what is
    then left of the complaint's must not be worse for all its cases than the book.
    """
    mine = [s for s in lessons.shares if s.complaint == complaint]
    refused = list(lessons.refused)
    for key, cases in groups.items():
        machine = key[1]
        without = [s for s in mine if not machine or s.machine != machine]
        if len(without) < len(mine):
            base = min(_sum(book, without, cases), sum(plain[key]))
            now = _sum(book, mine, cases)
            if now > base + WORSE:
                number = len(cases)
                told = _typicals(base, now, number)
                refused.append(Refused("complaint", complaint, number, *told, machine))
                mine = without
    before = sum(sum(plain[key]) for key in groups)
    after = sum(_sum(book, mine, cases) for cases in groups.values())
    if after > before + WORSE:
        number = sum(len(cases) for cases in groups.values())
        refused.append(Refused("complaint", complaint, number, *_typicals(before, after, number)))
        mine = []
    others = [s for s in lessons.shares if s.complaint != complaint]
    return replace(lessons, shares=(*others, *mine), refused=tuple(refused))


def _sum(book: Book, shares: Sequence[Share], cases: Sequence[Taught]) -> float:
    return sum(losses(book, Lessons(shares=tuple(shares)), cases))


def _strengths_judged(
    book: Book, lessons: Lessons, groups: Mapping[Key, Sequence[Taught]]
) -> tuple[Lessons, list[float]]:
    """The lessons without the strengths that rank earlier cases worse, and the losses left."""
    bare = replace(lessons, strengths=())
    base = {key: losses(book, bare, cases) for key, cases in groups.items()}
    kept: list[Strength] = []
    refused: list[Refused] = []
    for cause in sorted({s.cause for s in lessons.strengths}):
        mine = [s for s in lessons.strengths if s.cause == cause]
        trial = replace(bare, strengths=tuple(mine))
        before, after, number = 0.0, 0.0, 0
        for key, cases in groups.items():
            moved = [i for i, t in enumerate(cases) if _bears(book, cause, mine, t)]
            if moved:
                before += sum(base[key][i] for i in moved)
                after += sum(losses(book, trial, [cases[i] for i in moved]))
                number += len(moved)
        if after > before + WORSE:
            refused.append(Refused("signs", (cause,), number, *_typicals(before, after, number)))
        else:
            kept += mine
    whole = replace(bare, strengths=tuple(kept), refused=(*lessons.refused, *refused))
    now = [x for cases in groups.values() for x in losses(book, whole, cases)]
    old = [x for group in base.values() for x in group]
    if sum(now) <= sum(old) + WORSE:
        return whole, now
    names = tuple(sorted({s.cause for s in kept}))
    told = Refused("signs", names, len(now), *_typicals(sum(old), sum(now), len(now)))
    return replace(bare, refused=(*whole.refused, told)), old


def _bears(book: Book, cause: str, strengths: Sequence[Strength], taught: Taught) -> bool:
    """True when the cause can make the complaint and a sign of new strength was looked for."""
    shows = {link.finding for link in book.causes[cause].shows}
    return bool(shows & set(taught.complaint)) and any(s.finding in taught.signs for s in strengths)


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
