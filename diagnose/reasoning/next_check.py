"""Which check next: every askable check valued in one batch, then the mixed policy.

A check is worth what its answers would change in who would cure the complaint. While nothing is
likely yet the gain of information a minute decides; once one cause stands at half or more the
three-way test does (ask now, fix first and ask if it fails, fix). Safety checks are asked
whatever they are worth to the ranking.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from diagnose.book.conditions import FactValue
from diagnose.book.model import Book, Check
from diagnose.reasoning.assembly import Floats, Row
from diagnose.reasoning.belief import partition
from diagnose.reasoning.explained import sum_out
from diagnose.reasoning.fixes import FixTable
from diagnose.reasoning.network import (
    Network,
    Vector,
    circumstance_facts,
    hard,
    prior_facts,
    prior_of,
)

ATTENTION = 1.0  # minutes a question costs besides its own
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
) -> Valued:
    """Value every check given; those that can tell nothing are left out.

    `prepared` are the preparations made already, `wiped` the checks whose sign a trial may have
    wiped away: to see nothing there says nothing.
    """
    batch = _Batch(book, network, facts)
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
        gain = entropy - expected_bits(outcomes)
        if gain <= WORTH:
            continue
        rows = np.stack([o.shares for o in outcomes])
        after = float(np.array([o.chance for o in outcomes]) @ fixes.expected(rows))
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


# --- one batch of rows for all checks ---------------------------------------------------------

Answers = list[tuple[str, float, tuple[Floats, float, float]]]


@dataclass(frozen=True)
class _Handle:
    """Which rows belong to a check and how they combine into its answers."""

    labels: tuple[str, ...]
    mix: Floats  # (answers, rows): each answer as a sum of rows
    rows: tuple[int, ...]
    normalise: bool = False


class _Batch:
    """Rows gathered over all checks, summed in one go. Row 0 is the evidence as it stands."""

    def __init__(self, book: Book, network: Network, facts: Mapping[str, FactValue]) -> None:
        self.book, self.network, self.facts = book, network, facts
        self.rows: list[Row] = [Row(network.evidence)]
        self.circumstances = circumstance_facts(book)
        self.priors = {n.id: prior_of(book, book.causes[n.id], facts) for n in network.nodes}
        self.hangs = {n.id: prior_facts(book, book.causes[n.id]) for n in network.nodes}

    def solve(self) -> None:
        total = sum_out(self.network, self.rows, posteriors=False).total
        shares = partition(self.network, self.rows, np.ones(len(self.rows)))
        # unnormalised: shares with total one are the plain sums
        self.total = total
        self.alone = shares.alone
        self.none = shares.none

    def base(self) -> tuple[Floats, float, float]:
        return self._normal(self.total[0], self.alone[0], self.none[0])

    def read(self, handle: _Handle) -> Answers:
        pick = list(handle.rows)
        total = np.maximum(handle.mix @ self.total[pick], 0.0)
        alone = np.maximum(handle.mix @ self.alone[pick], 0.0)
        none = np.maximum(handle.mix @ self.none[pick], 0.0)
        whole = total.sum() if handle.normalise else self.total[0]
        return [
            (label, float(total[i] / whole), self._normal(total[i], alone[i], none[i]))
            for i, label in enumerate(handle.labels)
            if total[i] > 1e-12 * whole
        ]

    @staticmethod
    def _normal(total: float, alone: Floats, none: float) -> tuple[Floats, float, float]:
        cures = alone / total
        left = float(none / total)
        return cures, max(0.0, 1.0 - float(cures.sum()) - left), left

    # what a check would add ------------------------------------------------------------------

    def ask(self, check: Check) -> _Handle | None:
        confirms = [
            (c, f) for c in self.book.causes.values() for f in c.be_sure if f.check == check.id
        ]
        if confirms:
            cause, confirm = confirms[0]
            return self._report_of_cause(cause.id, confirm.right_when_there, confirm.right_when_not)
        if check.reports is not None:
            report = check.reports
            return self._report_of_sign(
                report.finding, report.right_when_there, report.right_when_not
            )
        signs = [s for s in self._settles(check) if self._open_sign(s)]
        if signs:
            return self._sign(signs[0])
        return self._circumstance(check)

    def _settles(self, check: Check) -> list[str]:
        named = list(check.settles) + [f for o in check.options for f in o.means]
        return [f for f in dict.fromkeys(named) if f in self.book.findings]

    def _open_sign(self, sign: str) -> bool:
        finding = self.book.findings[sign]
        if finding.kind != "sign" or sign in self.network.complaint:
            return False
        return hard(self.network.evidence.get(sign, (1.0, 1.0))) is None

    def _add(self, row: Row) -> int:
        self.rows.append(row)
        return len(self.rows) - 1

    def _sign(self, sign: str) -> _Handle | None:
        """Rows "at most this striking"; each answer is a difference of neighbours."""
        if all(sign not in n.links for n in self.network.nodes):
            return None
        size = len(self.network.background[sign])
        labels = tuple(v.name for v in self.book.findings[sign].values)
        rows = [self._add(self._at_most(sign, k)) for k in range(size - 1)] + [0]
        mix = np.eye(size) - np.eye(size, k=-1)
        return _Handle(labels, mix, tuple(rows))

    def _at_most(self, sign: str, top: int) -> Row:
        old = self.network.evidence.get(sign, (1.0,) * len(self.network.background[sign]))
        vector: Vector = tuple(w if k <= top else 0.0 for k, w in enumerate(old))
        return Row({**self.network.evidence, sign: vector})

    def _report_of_sign(self, sign: str, there: float, absent: float) -> _Handle | None:
        if not self._open_sign(sign) or len(self.network.background[sign]) != 2:
            return None
        row = self._add(self._at_most(sign, 0))
        says_no = np.array([absent - (1 - there), 1 - there])
        says_yes = np.array([(1 - absent) - there, there])
        return _Handle(("no", "yes"), np.stack([says_no, says_yes]), (row, 0))

    def _report_of_cause(self, cause: str, there: float, absent: float) -> _Handle | None:
        if self.network.node(cause) is None:
            return None
        yes = self._add(Row(self.network.evidence, {}, {cause: (there, 1 - absent)}))
        no = self._add(Row(self.network.evidence, {}, {cause: (1 - there, absent)}))
        return _Handle(("no", "yes"), np.eye(2), (no, yes))

    def _circumstance(self, check: Check) -> _Handle | None:
        """A row an answer with the odds it would give; the answers alike likely before."""
        options = self._hypotheses(check)
        if not options:
            return None
        rows, labels = [], []
        for label, facts in options:
            rows.append(self._add(Row(self.network.evidence, self._priors(facts))))
            labels.append(label)
        mix = np.eye(len(rows)) / len(rows)
        return _Handle(tuple(labels), mix, tuple(rows), normalise=True)

    def _priors(self, facts: Mapping[str, FactValue]) -> dict[str, float]:
        """Priors with these facts; only the causes that hang on a changed fact are worked anew."""
        new = {f for f, value in facts.items() if self.facts.get(f) != value}
        moved = {
            cause: prior_of(self.book, self.book.causes[cause], facts)
            for cause, hangs in self.hangs.items()
            if hangs & new
        }
        return self.priors | moved

    def _hypotheses(self, check: Check) -> list[tuple[str, dict[str, FactValue]]]:
        found: list[tuple[str, dict[str, FactValue]]] = []
        for option in check.options:
            if check.kind != "one":
                break
            extra: dict[str, FactValue] = {check.id: option.id, **option.means}
            if self.circumstances & set(extra):
                found.append((option.say, {**self.facts, **extra}))
        if check.kind in ("number", "file"):
            for name in check.settles:
                finding = self.book.findings.get(name)
                if finding is not None and finding.kind == "circumstance":
                    if name not in self.circumstances and not self._sets(name):
                        continue
                    found += [(v.name, {**self.facts, name: v.id}) for v in finding.values]
        return found

    def _sets(self, finding: str) -> bool:
        rules = {c.set_by for c in self.book.causes.values() if c.set_by}
        return any(t.finding == finding for r in rules for t in self.book.rules[r].then)
