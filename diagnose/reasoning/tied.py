"""Which checks are worth an exact valuation: those most tied to what would cure the complaint.

A first estimate, each cause taken as the only one at work: what a check's answers would then tell,
a minute. It only picks the candidates; what they are worth is worked out exactly.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

import numpy as np

from diagnose.book.conditions import FactValue
from diagnose.book.model import Book, Check
from diagnose.reasoning.assembly import Floats
from diagnose.reasoning.batch import Batch
from diagnose.reasoning.network import Network, prior_of

MOST = 24  # checks valued exactly
LEAST_SHARE = 1e-3  # a cause less likely than this picks no check


def most_tied(
    batch: Batch,
    checks: Sequence[Check],
    cures: Mapping[str, float],
    minutes: Callable[[Check], float],
) -> list[Check]:
    """The MOST checks with the highest estimate a minute, in the order they were given.

    `cures` is the chance that each cause alone would cure; `minutes` what a check costs here,
    attention included.
    """
    if len(checks) <= MOST:
        return list(checks)
    likely = {c: p for c, p in cures.items() if p >= LEAST_SHARE}
    guess = _Guess(batch, likely)
    rated = [(guess.bits(c) / minutes(c), -i) for i, c in enumerate(checks)]
    best = sorted(rated, reverse=True)[:MOST]
    return [checks[-i] for i in sorted((i for rate, i in best if rate > 0.0), reverse=True)]


class _Guess:
    def __init__(self, batch: Batch, likely: Mapping[str, float]) -> None:
        self.batch, self.likely = batch, likely
        self.rest = max(0.0, 1.0 - sum(likely.values()))
        self.seen: dict[str, float] = {}

    def bits(self, check: Check) -> float:
        """Bits the answer would tell, if one cause alone were at work."""
        confirmed = self.batch.ground.confirms.get(check.id)
        if confirmed is not None:
            there = confirmed[1].right_when_there
            return self._two(self.likely.get(confirmed[0], 0.0), there,
                             1.0 - confirmed[1].right_when_not)  # fmt: skip
        if check.reports is not None:
            report = check.reports
            if not self.batch.open_sign(report.finding):
                return 0.0
            worse = report.right_when_there + report.right_when_not - 1.0
            return self._sign(report.finding) * worse**2
        sign = self.batch.sign_of(check)
        return self._sign(sign) if sign else self._circumstance(check)

    def _two(self, share: float, yes_there: float, yes_not: float) -> float:
        yes = share * yes_there + (1.0 - share) * yes_not
        return _entropy(np.array([yes, 1.0 - yes])) - sum(
            w * _entropy(np.array([p, 1.0 - p]))
            for w, p in ((share, yes_there), (1.0 - share, yes_not))
        )

    def _sign(self, sign: str) -> float:
        if sign not in self.seen:
            self.seen[sign] = self._of_sign(self.batch.network, sign)
        return self.seen[sign]

    def _of_sign(self, network: Network, sign: str) -> float:
        upto = np.cumsum(network.background[sign])
        plain = np.diff(upto, prepend=0.0)
        mean, told, left = np.zeros(upto.size), 0.0, self.rest
        linked = network.linked.get(sign, {})
        for cause, share in self.likely.items():
            link = linked.get(network.place[cause])
            if link is None:
                left += share
                continue
            shown = np.diff(upto * np.cumsum(link), prepend=0.0)
            mean += share * shown
            told += share * _entropy(shown)
        if not told:
            return 0.0
        return _entropy(mean + left * plain) - told - left * _entropy(plain)

    def _circumstance(self, check: Check) -> float:
        options = self.batch.hypotheses(check)
        if not options:
            return 0.0
        book, network = self.batch.book, self.batch.network
        spread = []
        for _, facts in options:
            new = {f for f, value in facts.items() if self.batch.facts.get(f) != value}
            moved = {c for f in new for c in self.batch.ground.hung.get(f, ())} & set(self.likely)
            weights = {c: p * _factor(book, network, c, facts) if c in moved else p
                       for c, p in self.likely.items()}  # fmt: skip
            spread.append([*(weights[c] for c in self.likely), self.rest])
        table = np.array(spread)
        total = table.sum(axis=1)
        mean = table.sum(axis=0) / table.sum()
        after = sum(t * _entropy(row / t) for t, row in zip(total, table, strict=True) if t > 0.0)
        return max(0.0, _entropy(mean) - float(after / total.sum()))


def _factor(book: Book, network: Network, cause: str, facts: Mapping[str, FactValue]) -> float:
    now = network.nodes[network.place[cause]].prior
    then = prior_of(book, book.causes[cause], facts)
    before = now / max(1e-12, 1.0 - now)
    return float(then / max(1e-12, 1.0 - then) / max(1e-12, before))


def _entropy(shares: Floats) -> float:
    alive = shares[shares > 0.0]
    return float(-(alive * np.log2(alive)).sum())
