"""Which checks are worth an exact valuation: those most tied to what would cure the complaint.

A first estimate, each cause taken as the only one at work: what a check's answers would then tell,
a minute. It only picks the candidates; what they are worth is worked out exactly.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from diagnose.book.conditions import FactValue
from diagnose.book.model import Book, Check
from diagnose.reasoning.batch import Batch
from diagnose.reasoning.ground import Vector, entropy
from diagnose.reasoning.network import Network, prior_of

MOST = 30  # checks valued exactly
LEAST_SHARE = 1e-3  # a cause less likely than this picks no check
MOVED_SHARE = 0.01  # nor one less likely than this a question of circumstances


def most_tied(
    batch: Batch,
    checks: Sequence[Check],
    at_work: Mapping[str, float],
    minutes: Callable[[Check], float],
    most: int = MOST,
) -> list[Check]:
    """The `most` checks with the highest estimate a minute, in the order they were given.

    `at_work` is the share of each cause among those at work, 1 or less in all; `minutes` what a
    check costs here, attention included.
    """
    if len(checks) <= most:
        return list(checks)
    likely = {c: p for c, p in at_work.items() if p >= LEAST_SHARE}
    guess = _Guess(batch, likely)
    rated = [(guess.bits(c) / minutes(c), -i) for i, c in enumerate(checks)]
    best = sorted(rated, reverse=True)[:most]
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
        left = share * _coin(yes_there) + (1.0 - share) * _coin(yes_not)
        return _coin(yes) - left

    def _sign(self, sign: str) -> float:
        if sign not in self.seen:
            self.seen[sign] = self._of_sign(self.batch.ground.shown[sign])
        return self.seen[sign]

    def _of_sign(self, shown: Mapping[str, tuple[Vector, float]]) -> float:
        plain, bits = shown[""]
        mean, told, left = [0.0] * len(plain), 0.0, self.rest
        for cause, share in self.likely.items():
            found = shown.get(cause)
            if found is None:
                left += share
                continue
            told += share * found[1]
            for k, p in enumerate(found[0]):
                mean[k] += share * p
        if left + 1e-12 >= 1.0:
            return 0.0
        return entropy(m + left * p for m, p in zip(mean, plain, strict=True)) - told - left * bits

    def _circumstance(self, check: Check) -> float:
        touched = self.batch.ground.touched[check.id]
        moved = [c for c in touched if self.likely.get(c, 0.0) >= MOVED_SHARE]
        if not moved:
            return 0.0
        book, network = self.batch.book, self.batch.network
        still = 1.0 - sum(self.likely[c] for c in moved)
        rows = [
            [*(self.likely[c] * _factor(book, network, c, facts) for c in moved), still]
            for _, facts in self.batch.hypotheses(check)
        ]
        if not rows:
            return 0.0
        totals = [sum(row) for row in rows]
        whole = sum(totals)
        mean = [sum(column) / whole for column in zip(*rows, strict=True)]
        after = sum(
            t * entropy(p / t for p in row) for t, row in zip(totals, rows, strict=True) if t > 0.0
        )
        return max(0.0, entropy(mean) - after / whole)


def _factor(book: Book, network: Network, cause: str, facts: Mapping[str, FactValue]) -> float:
    now = network.nodes[network.place[cause]].prior
    then = prior_of(book, book.causes[cause], facts)
    before = now / max(1e-12, 1.0 - now)
    return float(then / max(1e-12, 1.0 - then) / max(1e-12, before))


def _coin(p: float) -> float:
    return entropy((p, 1.0 - p))
