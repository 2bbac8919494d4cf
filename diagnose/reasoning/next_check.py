"""What each askable check is worth, all valued in one batch; `policy.py` decides.

A check is worth what its answers would change in who would cure the complaint.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from diagnose.book.conditions import FactValue
from diagnose.book.model import Book, Check
from diagnose.reasoning.ahead import ATTENTION
from diagnose.reasoning.assembly import Floats
from diagnose.reasoning.batch import Batch
from diagnose.reasoning.belief import Belief
from diagnose.reasoning.fixes import FixTable
from diagnose.reasoning.network import Network
from diagnose.reasoning.tied import MOST, most_tied

WORTH = 1e-4  # gain in bits below which an answer changes nothing


@dataclass(frozen=True)
class Outcome:
    """One answer a check could get: its chance, and who would cure the complaint then."""

    label: str
    chance: float
    shares: Floats  # fixes, then several, then none


@dataclass(frozen=True)
class Candidate:
    """A check with what it costs here and what it could tell."""

    check: str
    minutes: float
    outcomes: tuple[Outcome, ...]
    gain: float  # bits of the partition it is expected to remove
    cost_after: float  # expected minutes of fixing once it is answered
    first_ask: tuple[str, ...] = ()  # questions on which it hangs

    @property
    def rate(self) -> float:
        return self.gain / (self.minutes + ATTENTION)


@dataclass(frozen=True)
class Valued:
    """All candidates, the partition now and what fixing without asking would cost."""

    candidates: tuple[Candidate, ...]
    now: Floats
    entropy: float
    cost_now: float


def value_all(
    book: Book,
    network: Network,
    checks: Sequence[Check],
    facts: Mapping[str, FactValue],
    fixes: FixTable,
    prepared: frozenset[str] = frozenset(),
    wiped: frozenset[str] = frozenset(),
    belief: Belief | None = None,
    most: int = MOST,
) -> Valued:
    """Value every check given; those that can tell nothing are left out.

    With a `belief`, only the `most` checks most tied to its likely causes are valued (`tied.py`).

    `prepared` are the preparations made already, `wiped` the checks whose sign a trial may have
    wiped away: to see nothing there says nothing.
    """
    batch = Batch(book, network, facts)
    if belief is not None:
        # at work, not curing alone: of two complaints hardly a cause mends both
        whole = max(1.0, sum(r.acts for r in belief.ranked))
        shares = {r.cause: r.acts / whole for r in belief.ranked}
        checks = most_tied(batch, checks, shares, lambda c: c.minutes + ATTENTION, most)
    wanted = [(check, batch.ask(check)) for check in checks]
    batch.solve()
    now = fixes.group(*batch.base())
    entropy = bits(now)
    found: list[Candidate] = []
    for check, handle in wanted:
        if handle is None:
            continue
        outcomes = tuple(
            Outcome(label, chance, fixes.group(*shares))
            for label, chance, shares in batch.read(handle)
        )
        if check.id in wiped and outcomes:
            outcomes = (replace(outcomes[0], shares=now), *outcomes[1:])
        rows = np.stack([o.shares for o in outcomes]) if outcomes else now[None, :]
        chances = np.array([o.chance for o in outcomes] if outcomes else [1.0])
        # against the mix of the answers: a circumstance untold has priors of its own, so its
        # answers need not mix to what is believed now, and still tell the causes apart
        gain = bits(chances @ rows) - expected_bits(outcomes)
        if gain <= WORTH:
            continue
        after = float(chances @ fixes.expected(rows))
        first = _hangs_on(book, check, facts)
        minutes = _minutes(book, check, facts, prepared, first)
        found.append(Candidate(check.id, minutes, outcomes, gain, after, first))
    return Valued(tuple(found), now, entropy, fixes.expected_minutes(now))


def bits(shares: Floats) -> float:
    """Entropy of a partition in bits."""
    alive = shares[shares > 0.0]
    return float(-(alive * np.log2(alive)).sum())


def expected_bits(outcomes: Sequence[Outcome]) -> float:
    """Entropy expected to remain after the answer, in bits (de Kleer & Williams 1987)."""
    return sum(o.chance * bits(o.shares) for o in outcomes)


def _minutes(
    book: Book,
    check: Check,
    facts: Mapping[str, FactValue],
    prepared: frozenset[str],
    first: tuple[str, ...],
) -> float:
    minutes = check.minutes
    if check.shares_preparation and check.shares_preparation not in prepared:
        minutes += check.preparation_minutes
    with_it = [n for n in check.together_with if n in book.checks and n not in facts]
    return minutes + sum(book.checks[n].minutes for n in (*with_it, *first))


def _hangs_on(book: Book, check: Check, facts: Mapping[str, FactValue]) -> tuple[str, ...]:
    return tuple(n for n in check.asked_when.facts if n not in facts and n in book.checks)
