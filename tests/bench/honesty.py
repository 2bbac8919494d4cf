"""Are the chances honest? Calibration, knowledge that is wrong, a cause the book does not know."""

from __future__ import annotations

import math
import random
import statistics
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from diagnose.book.model import Book, Cause, Link
from diagnose.book.strengths import NotAbove, TooMuch
from diagnose.reasoning.belief import Belief, Impossible
from diagnose.reasoning.ground import cause_links
from tests.bench.policies import Player
from tests.bench.states import Key, States
from tests.bench.world import Drawer, World

SEED, ANSWERS, BINS, SURE = 20260302, 10, 10, 0.9


def told(drawer: Drawer, world: World, circumstances: bool) -> Key:
    """The complaint and up to ten answers at random; `circumstances`: all of those besides."""
    always = {c.id for c, _ in drawer.circumstances} if circumstances else set()
    rest = [n for n in sorted(world.answers) if n not in always]
    names = drawer.draw.sample(rest, drawer.draw.randint(0, ANSWERS))
    answers = sorted((n, world.answers[n]) for n in [*names, *sorted(always)])
    return world.complaint, tuple(answers), ()


def calibration(book: Book, cases: int, even: bool) -> dict[str, object]:
    """Chance said for the first cause against how often it was at work."""
    drawer, states = Drawer(book, SEED, even), States(book)
    said, true = [], []
    clash = 0
    for _ in range(cases):
        world = drawer.case()
        belief = _belief(states, told(drawer, world, even))
        if belief is None:
            clash += 1
            continue
        said.append(belief.ranked[0].acts)
        true.append(float(belief.ranked[0].cause in world.makers))
        if len(states._states) > 5000:
            states = States(book)
    p, hit = np.array(said), np.array(true)
    draws = np.random.default_rng(SEED)
    floor = statistics.fmean(_error(p, (draws.random(p.size) < p) * 1.0) for _ in range(40))
    error = _error(p, hit)
    return {"cases": cases, "seed": SEED, "error": error, "floor": floor,
            "above_floor": error - floor, "top1": float(hit.mean()), "said": float(p.mean()),
            "impossible": clash, "table": _table(p, hit)}  # fmt: skip


def _belief(states: States, key: Key) -> Belief | None:
    try:
        return states.belief(key)
    except Impossible:
        return None


def _error(p: np.ndarray, hit: np.ndarray) -> float:
    bins = np.minimum((p * BINS).astype(int), BINS - 1)
    parts = [abs((p - hit)[bins == b].sum()) for b in range(BINS)]
    return float(sum(parts) / p.size)


def _table(p: np.ndarray, hit: np.ndarray) -> list[tuple[int, float, float]]:
    """For each tenth of chance: cases, mean chance said, share true."""
    bins = np.minimum((p * BINS).astype(int), BINS - 1)
    inside = [bins == b for b in range(BINS)]
    return [(int(m.sum()), float(p[m].mean()), float(hit[m].mean())) for m in inside if m.any()]


def moved(book: Book, sigma: float, seed: int) -> Book:
    """The knowledge with every prior and every strength moved at random in log-odds."""
    draw = random.Random(seed)
    return replace(book, causes={n: _moved(book, c, sigma, draw) for n, c in book.causes.items()})


def _moved(book: Book, cause: Cause, sigma: float, draw: random.Random) -> Cause:
    links = [_moved_link(book, cause, link, sigma, draw) for link in cause.shows]
    return replace(cause, shows=tuple(links), prior=_shift(cause.prior, sigma, draw))


def _moved_link(book: Book, cause: Cause, link: Link, sigma: float, draw: random.Random) -> Link:
    """The link moved; as it was when the knowledge would refuse the moved number."""
    new = replace(link, how_often=_shift(link.how_often, sigma, draw))
    others = [o for o in cause.shows if o.finding == link.finding and o is not link]
    try:
        cause_links(book, replace(cause, shows=(*others, new)))
    except (NotAbove, TooMuch):
        return link
    return new if not others else link


def _shift(p: float, sigma: float, draw: random.Random) -> float:
    return 1.0 / (1.0 + math.exp(-math.log(p / (1.0 - p)) - draw.gauss(0.0, sigma)))


def wrong_numbers(book: Book, cases: int, sigma: float = 0.5) -> dict[str, object]:
    """Cases from moved knowledge, judged with the book as it is and with the moved knowledge."""
    right, own, said = [], [], []
    per = 100
    for n in range(max(1, cases // per)):
        other = moved(book, sigma, SEED + n)
        drawer, ours, theirs = Drawer(other, SEED + n), States(book), States(other)
        for _ in range(min(per, cases)):
            world = drawer.case(listed=True)
            key = told(drawer, world, False)
            mine, best = _belief(ours, key), _belief(theirs, key)
            if mine is None or best is None:
                continue
            right.append(float(mine.ranked[0].cause in world.makers))
            own.append(float(best.ranked[0].cause in world.makers))
            said.append(mine.ranked[0].acts)
    p, hit = np.array(said), np.array(right)
    return {"cases": len(right), "seed": SEED, "sigma": sigma, "top1_book": float(hit.mean()),
            "top1_moved": statistics.fmean(own), "error": _error(p, hit),
            "loses_points": 100.0 * (statistics.fmean(own) - float(hit.mean()))}  # fmt: skip


def removed(book: Book, cases: int) -> dict[str, object]:
    """The true cause taken out of the book before asking: how often surely wrong?

    Each case has one listed cause at work. The tool asks until it would fix. Also with nothing
    unlisted allowed for, to show what that is worth.
    """
    drawer = Drawer(book, SEED)
    worlds = [drawer.case(listed=True) for _ in range(cases)]
    blind = replace(book, words=replace(book.words, unlisted_prior=1e-9))
    kept = [_ends(Player(b, States(b)), worlds) for b in (book, blind)]
    gone = [_without(b, worlds) for b in (book, blind)]
    names = ("with_unlisted", "without_unlisted")
    out: dict[str, object] = {"cases": cases, "seed": SEED}
    for name, ends, lost in zip(names, kept, gone, strict=True):
        out[name] = {
            "top1_kept": statistics.fmean(b.ranked[0].cause in w.makers for b, w in ends),
            "sure_and_wrong": statistics.fmean(b.ranked[0].acts >= SURE for b, _ in lost),
        }
    return out


def _without(book: Book, worlds: Sequence[World]) -> list[tuple[Belief, World]]:
    found = []
    for name in sorted({n for w in worlds for n in w.makers}):
        left = {c: v for c, v in book.causes.items() if c != name}
        less = replace(book, causes=left)
        mine = [w for w in worlds if name in w.makers]
        found += _ends(Player(less, States(less)), mine)
    return found


def _ends(player: Player, worlds: Sequence[World]) -> list[tuple[Belief, World]]:
    out = []
    for world in worlds:
        key = player.questions(world, "ours")
        belief = _belief(player.states, key)
        if belief is not None:
            out.append((belief, world))
    return out
