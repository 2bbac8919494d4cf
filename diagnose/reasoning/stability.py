"""How firm the ranking is: the words of the knowledge moved at random, the ranking done again."""

from __future__ import annotations

import random
from collections.abc import Collection
from dataclasses import dataclass, replace
from functools import lru_cache

from diagnose.book.model import Book, Cause, Link
from diagnose.book.strengths import NotAbove, TooMuch
from diagnose.reasoning.belief import Impossible, believe
from diagnose.reasoning.ground import cause_links, ground, variant
from diagnose.reasoning.reason import Reasoned
from diagnose.reasoning.trials import network_of

DRAWS = 60
FIRM = 54
SEED = 20260102


@dataclass(frozen=True)
class Stability:
    """The top cause came first in `first_in` of `of` draws; `rival` came first most often else."""

    first_in: int
    of: int
    rival: str = ""

    @property
    def firm(self) -> bool:
        return self.first_in >= FIRM * self.of / DRAWS


def stability(reasoned: Reasoned, draws: int = DRAWS) -> Stability:
    """Every word moved by -1, 0 or +1 step, at random with a fixed seed."""
    top = reasoned.belief.ranked[0].cause if reasoned.belief.ranked else ""
    read = reasoned.read
    draw = random.Random(SEED)
    base, evidence = ground(read.book), frozenset(reasoned.network.evidence)
    firsts: dict[str, int] = {}
    for _ in range(draws):
        book = moved(read.book, draw, evidence)
        variant(base, book)
        network, _out = network_of(book, read.case.complaint, read.gathered, read.deduced)
        try:
            first = believe(network).ranked[0].cause
        except Impossible:
            continue
        firsts[first] = firsts.get(first, 0) + 1
    rivals = {c: n for c, n in firsts.items() if c != top}
    rival = max(rivals, key=lambda c: (rivals[c], c), default="")
    return Stability(firsts.get(top, 0), draws, rival)


def moved(book: Book, draw: random.Random, signs: Collection[str]) -> Book:
    """The book with every word that bears on these signs moved at random by at most one step.

    What no known sign hangs on cannot change the ranking and is left as it is.
    """
    causes = dict(book.causes)
    for name in sorted(causes):
        if any(link.finding in signs for link in causes[name].shows):
            causes[name] = _moved_cause(book, causes[name], draw, signs)
    return replace(book, causes=causes)


def _moved_cause(book: Book, cause: Cause, draw: random.Random, signs: Collection[str]) -> Cause:
    scale = tuple(sorted(book.words.how_often.values()))
    prior = _step(tuple(sorted(book.words.how_common.values())), cause.prior, draw)
    shows = tuple(
        _moved_link(book, scale, link, draw) if link.finding in signs else link
        for link in cause.shows
    )
    new = replace(cause, prior=prior, shows=shows)
    try:
        cause_links(book, new)
    except (NotAbove, TooMuch):
        return replace(cause, prior=prior)
    return new


def _moved_link(book: Book, scale: tuple[float, ...], link: Link, draw: random.Random) -> Link:
    finding = book.findings[link.finding]
    background = next(v.without_cause or 0.0 for v in finding.values if v.id == link.value)
    often = _step(scale, link.how_often, draw)
    return replace(link, how_often=often) if often > background else link


def _step(scale: tuple[float, ...], value: float, draw: random.Random) -> float:
    nearest = _nearest(scale, value)
    to = min(len(scale) - 1, max(0, nearest + draw.choice((-1, 0, 1))))
    return value if to == nearest else scale[to]


@lru_cache(maxsize=256)
def _nearest(scale: tuple[float, ...], value: float) -> int:
    return min(range(len(scale)), key=lambda i: abs(scale[i] - value))
