"""What was learned is tried on the earlier cases; a change that ranks them worse is not made.

A case is judged by the chance given to what cured it, as told before anything was tried: the one
cause alone, several together, or nothing that the book lists; these sum to one. The shares of a
complaint are one change, tried on its cases; the strengths of one cause's signs are one, tried
with the shares in force on every case they bear on; last, all strengths together on all cases.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from diagnose.book.model import Book
from diagnose.lessons.apply import with_lessons
from diagnose.lessons.model import Lessons, Refused, Strength
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
