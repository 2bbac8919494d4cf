"""The course: levels that open, what comes next for a learner, who takes what for what.

Level 1 draws common causes and hazards of the gate question; level 2 adds occasional ones and all
hazards; level 3 all causes; level 4 draws from the pairs that newcomers swap and from what this
learner has swapped. A level opens when enough of the last drills on the one below were passed and
no hazard among them was missed. A case that was not passed comes back after more and more drills.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from diagnose.book.model import Book
from diagnose.drill.draw import Wish
from diagnose.drill.hazards import EVERY
from diagnose.drill.pairs import PAIRS, pair_view, pairs_of
from diagnose.drill.progress import Done, Learner
from diagnose.drill.side_by_side import side_by_side
from diagnose.view.drill import ProgressView, SideBySide, TeacherView

LEVELS: tuple[frozenset[str], ...] = (
    frozenset(("common",)),
    frozenset(("common", "occasional")),
    frozenset(),
    frozenset(),
)
HIGHEST = len(LEVELS)
LOOKED_AT, ENOUGH = 5, 4  # of the last five drills on a level, four passed
AGAIN_AFTER = (2, 4, 8, 16)  # drills after which a missed case comes back, longer each time passed
MOST_PAIRS = 3
BLOCKS = 1_000_000


@dataclass(frozen=True)
class Next:
    """The next drill of a learner: its seed, what kind, and why it was chosen."""

    seed: int
    wish: Wish
    why: str


def level_of(done: Iterable[Done]) -> int:
    """The level that is open for a learner."""
    level = 1
    here: list[Done] = []
    for drill in done:
        if drill.level >= level:
            here.append(drill)
        last = here[-LOOKED_AT:]
        good = sum(d.passed for d in last) >= ENOUGH and len(last) >= ENOUGH
        if good and not any(d.hazard and not d.caught for d in last) and level < HIGHEST:
            level, here = level + 1, []
    return level


def to_open(done: tuple[Done, ...]) -> str:
    """What opens the next level, in words."""
    level = level_of(done)
    if level == HIGHEST:
        return "Every level is open."
    return (
        f"Level {level + 1} opens with {ENOUGH} of {LOOKED_AT} drills passed on level {level}, "
        "and no hazard missed among them."
    )


def due(done: tuple[Done, ...]) -> tuple[tuple[str, str], ...]:
    """(complaint, cause) of the missed cases that come back now, the longest waiting first."""
    waits: dict[tuple[str, str], tuple[int, int]] = {}  # what -> (drill it is due, times passed)
    for number, drill in enumerate(done, 1):
        key = (drill.complaint, drill.cause)
        if not drill.passed:
            waits[key] = (number + AGAIN_AFTER[0], 0)
        elif key in waits:
            times = waits[key][1] + 1
            if times >= len(AGAIN_AFTER):
                del waits[key]
            else:
                waits[key] = (number + AGAIN_AFTER[times], times)
    ready = [(at, key) for key, (at, _) in waits.items() if at <= len(done) + 1]
    return tuple(key for _, key in sorted(ready))


def swaps(done: Iterable[Done]) -> Counter[tuple[str, str]]:
    """(what it was, what was named) and how often."""
    return Counter((d.cause, n) for d in done for n in d.named if n != d.cause)


def seed_for(learner: Learner) -> int:
    """The seed of the next drill: four in a row share one hazard, another four for each name."""
    block = random.Random(f"learner {learner.name}").randrange(BLOCKS)
    return block * EVERY + len(learner.done)


def next_drill(book: Book, learner: Learner, level: int = 0) -> Next:
    """What to drill next: what is due, then what this learner swaps, then the level."""
    seed = seed_for(learner)
    draw = random.Random(f"course {seed}")
    level = level or level_of(learner.done)
    known = [k for k in due(learner.done) if k[0] in book.symptoms and k[1] in book.causes]
    if known:
        complaint, cause = known[0]
        wish = Wish(level, frozenset((cause,)), frozenset((complaint,)))
        return Next(seed, wish, "a case you did not pass comes back")
    swapped = [(a, b) for (a, b), _ in swaps(learner.done).most_common(MOST_PAIRS)
               if a in book.causes and b in book.causes]  # fmt: skip
    if swapped and draw.random() < 0.5:
        pair = draw.choice(swapped)
        return Next(seed, Wish(level, frozenset(pair)), "one of two that you took for each other")
    if level == HIGHEST:
        pairs = pairs_of(frozenset(book.causes))
        if pairs:
            chosen = draw.choice(pairs)
            wish = Wish(level, frozenset(chosen.causes or ()))
            return Next(seed, wish, "one of two that newcomers take for each other")
    return Next(seed, wish_of(book, level), "a new case of your level")


def wish_of(book: Book, level: int) -> Wish:
    """A wish for any case of a level."""
    words = LEVELS[min(max(level, 1), HIGHEST) - 1]
    causes = frozenset(n for n, c in book.causes.items() if c.how_common in words)
    return Wish(level, causes if words else frozenset())


def progress(book: Book, learner: Learner) -> ProgressView:
    """How a learner stands."""
    done = learner.done
    mine = swaps(done)
    return ProgressView(
        learner.name,
        level_of(done),
        HIGHEST,
        len(done),
        sum(d.passed for d in done),
        sum(bool(d.hazard) for d in done),
        sum(bool(d.hazard) and d.caught for d in done),
        to_open(done),
        tuple(f"{_symptom(book, s)}" for s, _ in due(done)),
        tuple((_cause(book, a), _cause(book, b), n) for (a, b), n in mine.most_common()),
        _side_by_side(book, mine),
    )


def teacher(book: Book, learners: Iterable[Learner]) -> TeacherView:
    """All learners and the table of confusions, the most frequent first."""
    learners = tuple(learners)
    counts: Counter[tuple[str, str]] = Counter()
    who: dict[tuple[str, str], list[str]] = {}
    for learner in learners:
        for key, number in swaps(learner.done).items():
            counts[key] += number
            who.setdefault(key, []).append(learner.name)
    rows = sorted(counts.items(), key=lambda item: (-item[1], item[0]))
    table = tuple((_cause(book, a), _cause(book, b), tuple(who[a, b]), n) for (a, b), n in rows)
    return TeacherView(
        tuple(progress(book, k) for k in learners), table, _side_by_side(book, counts)
    )


def _side_by_side(book: Book, counts: Counter[tuple[str, str]]) -> tuple[SideBySide, ...]:
    """The pairs swapped most, in the trade's own words where there are some."""
    found: list[SideBySide] = []
    for (one, other), _ in counts.most_common():
        own = [p for p in PAIRS if p.causes is not None and set(p.causes) == {one, other}]
        if own:
            found.append(pair_view(own[0]))
        elif one in book.causes and other in book.causes:
            pair = side_by_side(book, one, other)
            found += [pair] if pair else []
    return tuple(dict.fromkeys(found))[:MOST_PAIRS]


def _cause(book: Book, name: str) -> str:
    return book.causes[name].name if name in book.causes else name


def _symptom(book: Book, name: str) -> str:
    return book.symptoms[name].name if name in book.symptoms else name
