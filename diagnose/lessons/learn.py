"""From closed cases to adjusted numbers: shares of causes by complaint, strengths of signs.

The shop first: around the book. Then each machine with cases of its own: around what the book
and the shop's *other* cases say, so that no case counts twice.
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
from diagnose.reasoning.assembly import Floats
from diagnose.reasoning.network import Network
from diagnose.reasoning.reason import read_case
from diagnose.reasoning.trials import network_of

K = TypeVar("K")
Complaint = tuple[str, ...]
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
    shares: list[Share] = []
    no_links: list[NoLink] = []
    for complaint, mine in _by(cases, lambda t: t.complaint):
        acts = networks.acts(mine)
        before = _now(acts)
        counts = _named(mine)
        shares += _shares(complaint, "", acts, before, counts, len(mine))[0]
        strangers = sorted(c for c in counts if before.get(c, 0.0) <= LEAST)
        no_links += [NoLink(complaint, c, counts[c]) for c in strangers]
        for machine, own in _by(mine, lambda t: t.machine):
            others = [t for t in mine if t.machine != machine]
            if machine and others:
                shares += _of_machine(networks, complaint, machine, own, others)
    return shares, no_links


def _of_machine(
    networks: _Networks,
    complaint: Complaint,
    machine: str,
    own: Sequence[Taught],
    others: Sequence[Taught],
) -> list[Share]:
    """The machine's shares around what the shop's other cases say of its settings."""
    elsewhere = networks.acts(others)
    counts = _named(others)
    _, factors = _shares(complaint, "", elsewhere, _now(elsewhere), counts, len(others))
    acts = networks.acts(own)
    by_cause = dict(zip(elsewhere.causes, factors, strict=True))
    start = acts.of(acts.start(by_cause))
    before = dict(zip(acts.causes, start, strict=True))
    return _shares(complaint, machine, acts, before, _named(own), len(own))[0]


def _shares(
    complaint: Complaint,
    machine: str,
    acts: Acts,
    before: Mapping[str, float],
    counts: Mapping[str, int],
    cases: int,
) -> tuple[list[Share], Floats]:
    """The shares after these cases, as far as the links allow, and the factors of all causes."""
    causes = [c for c in acts.causes if before[c] > LEAST]
    means = [before[c] for c in causes]
    wanted = learned_shares(means, [counts.get(c, 0) for c in causes], cases)
    factors = fit(acts, dict(zip(causes, wanted, strict=True)))
    after = acts.of(factors)
    found = [
        Share(
            complaint,
            c,
            counts.get(c, 0),
            cases,
            before[c],
            float(after[acts.at[c]]),
            float(factors[acts.at[c]]),
            machine,
        )
        for c in causes
    ]
    return found, factors


def _now(acts: Acts) -> dict[str, float]:
    return dict(zip(acts.causes, acts.of(acts.start({})).tolist(), strict=True))


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
