"""From closed cases to adjusted numbers: shares of causes by complaint, strengths of signs.

The shop first: around the book, moved by what the shop's cases of *other* complaints say of a
cause. Then each machine with cases of its own: around the book and the shop's *other* cases. So no
case counts twice.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import TypeVar

from diagnose.book.model import Book
from diagnose.case.entries import Case
from diagnose.lessons.fit import Acts, Setting, fit
from diagnose.lessons.model import Lessons, NoLink, Share, Strength
from diagnose.lessons.rates import learned, learned_shares
from diagnose.lessons.taught import Taught
from diagnose.reasoning.network import Network
from diagnose.reasoning.reason import read_case
from diagnose.reasoning.trials import network_of

K = TypeVar("K")
Complaint = tuple[str, ...]
COMMON = 2.0  # cases: how far a cause's rate in other complaints is held to the book's
LEAST = 1e-9  # below this a share is rounding: the cause has no link to the complaint


def learn(book: Book, cases: Sequence[Taught], date: str = "") -> Lessons:
    """Everything the cases teach, nothing refused yet (`refuse.py`)."""
    shares, no_links = _all_shares(book, cases)
    return Lessons(
        date,
        len(cases),
        tuple(shares),
        tuple(_all_strengths(book, cases)),
        tuple(no_links),
    )


# shares of the causes of a complaint --------------------------------------------------------


def _all_shares(book: Book, cases: Sequence[Taught]) -> tuple[list[Share], list[NoLink]]:
    networks = _Networks(book)
    groups = _by(cases, lambda t: t.complaint)
    models = {complaint: networks.acts(mine) for complaint, mine in groups}
    expected = {f: _expected(models[f], len(mine)) for f, mine in groups}
    named = {f: _named(mine) for f, mine in groups}
    shares: list[Share] = []
    no_links: list[NoLink] = []
    for complaint, mine in groups:
        rest = [f for f, _ in groups if f != complaint]
        general = _general([expected[f] for f in rest], [named[f] for f in rest])
        shares += _shares(complaint, "", models[complaint], general, mine)[0]
        strangers = sorted(c for c, n in named[complaint].items()
                           if expected[complaint].get(c, 0.0) <= LEAST * n)  # fmt: skip
        no_links += [NoLink(complaint, c, named[complaint][c]) for c in strangers]
        for machine, own in _by(mine, lambda t: t.machine):
            others = [t for t in mine if t.machine != machine]
            if machine and others:
                model = networks.acts(others)
                there = _shares(complaint, "", model, general, others)[1]
                shares += _shares(complaint, machine, networks.acts(own), there, own)[0]
    shares += _elsewhere(list(expected.values()), list(named.values()), len(cases))
    return shares, no_links


def _expected(model: Acts, cases: int) -> dict[str, float]:
    """In how many of these cases the book expects each cause to act."""
    acts = model.of(model.start({})).tolist()
    return {c: cases * a for c, a in zip(model.causes, acts, strict=True)}


def _general(
    expected: Sequence[Mapping[str, float]], named: Sequence[Mapping[str, int]]
) -> dict[str, float]:
    """Odds factor of each cause from other complaints: named against expected, both with COMMON."""
    sums: dict[str, list[float]] = {}
    for hoped, counted in zip(expected, named, strict=True):
        for cause, number in hoped.items():
            pair = sums.setdefault(cause, [COMMON, COMMON])
            pair[0] += counted.get(cause, 0) if number > LEAST else 0
            pair[1] += number
    return {c: so / hoped for c, (so, hoped) in sums.items()}


def _elsewhere(
    expected: Sequence[Mapping[str, float]], named: Sequence[Mapping[str, int]], cases: int
) -> list[Share]:
    """What is taken for complaints that have no closed case of their own."""
    general = _general(expected, named)
    found = []
    for cause in sorted(general):
        before = sum(e.get(cause, 0.0) for e in expected) / cases
        if before > LEAST:
            acted = sum(n[cause] for n in named if cause in n)
            found.append(Share((), cause, acted, cases, before, general[cause] * before,
                               general[cause]))  # fmt: skip
    return found


def _shares(
    complaint: Complaint,
    machine: str,
    model: Acts,
    factors: Mapping[str, float],
    cases: Sequence[Taught],
) -> tuple[list[Share], dict[str, float]]:
    """Shares after these cases, around the model with these factors on its odds; new factors."""
    counts = _named(cases)
    book = model.of(model.start({}))
    means = model.of(model.start(factors))
    causes = [c for c in model.causes if book[model.at[c]] > LEAST]
    wanted = learned_shares(
        [float(means[model.at[c]]) for c in causes], [counts.get(c, 0) for c in causes], len(cases)
    )
    fitted = fit(model, dict(zip(causes, wanted, strict=True)))
    after = model.of(fitted)
    before = means if machine else book
    found = []
    for cause in causes:
        at = model.at[cause]
        found.append(Share(complaint, cause, counts.get(cause, 0), len(cases), float(before[at]),
                           float(after[at]), float(fitted[at]), machine))  # fmt: skip
    return found, dict(zip(model.causes, fitted.tolist(), strict=True))


def _named(cases: Iterable[Taught]) -> Counter[str]:
    return Counter(c for t in cases for c in t.cured_by)


class _Networks:
    """The network of a complaint with nothing but the machine's standing facts, made once."""

    def __init__(self, book: Book) -> None:
        self.book = book
        self.made: dict[tuple[Complaint, tuple[tuple[str, str], ...]], Network] = {}

    def acts(self, cases: Sequence[Taught]) -> Acts:
        """The model's acts over the settings of these cases, which share a complaint."""
        settings = _by(cases, lambda t: t.standing)
        complaint = cases[0].complaint
        return Acts([Setting(self._of(complaint, key), len(mine)) for key, mine in settings])

    def _of(self, complaint: Complaint, standing: tuple[tuple[str, str], ...]) -> Network:
        key = complaint, standing
        if key not in self.made:
            read = read_case(self.book, Case("", complaint, given=dict(standing)))
            self.made[key] = network_of(self.book, complaint, read.gathered, read.deduced)[0]
        return self.made[key]


# strengths of signs ---------------------------------------------------------------------------


def _all_strengths(book: Book, cases: Sequence[Taught]) -> list[Strength]:
    """From cases with exactly one named cause; never the complaint link."""
    found: list[Strength] = []
    useful = [t for t in cases if t.alone]
    for cause, mine in _by(useful, lambda t: t.alone):
        found += _strengths(book, cause, "", mine, {})
        for machine, own in _by(mine, lambda t: t.machine):
            others = [t for t in mine if t.machine != machine]
            if machine and others:
                there = {(s.finding, s.value): s.after for s in
                         _strengths(book, cause, "", others, {})}  # fmt: skip
                found += _strengths(book, cause, machine, own, there)
    return found


def _strengths(
    book: Book,
    cause: str,
    machine: str,
    cases: Sequence[Taught],
    others: Mapping[tuple[str, str], float],
) -> list[Strength]:
    found = []
    for link in book.causes[cause].shows:
        values = [t.signs[link.finding] for t in cases if link.finding in t.signs]
        if not values:
            continue
        seen = values.count(link.value)
        before = others.get((link.finding, link.value), link.how_often)
        after = learned(before, seen, len(values))
        found.append(
            Strength(cause, link.finding, link.value, seen, len(values), link.how_often, before,
                     after, machine)
        )  # fmt: skip
    return found


def _by(cases: Iterable[Taught], key: Callable[[Taught], K]) -> list[tuple[K, list[Taught]]]:
    found: dict[K, list[Taught]] = {}
    for taught in cases:
        found.setdefault(key(taught), []).append(taught)
    return sorted(found.items(), key=lambda pair: repr(pair[0]))
