"""One batch of rows for all checks: what each could be answered, summed in one go.

A sign settled by a check gives a row "at most this striking" for each value, a report two rows
with its weights, a circumstance a row an answer with the odds it would give.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from diagnose.book.conditions import FactValue
from diagnose.book.model import Book, Check
from diagnose.reasoning.assembly import Floats, Row
from diagnose.reasoning.belief import partition
from diagnose.reasoning.explained import sum_out
from diagnose.reasoning.ground import Vector, ground
from diagnose.reasoning.network import Network, hard, prior_of

Answers = list[tuple[str, float, tuple[Floats, float, float]]]


@dataclass(frozen=True)
class Handle:
    """Which rows belong to a check and how they combine into its answers."""

    labels: tuple[str, ...]
    mix: Floats  # (answers, rows): each answer as a sum of rows
    rows: tuple[int, ...]
    normalise: bool = False


class Batch:
    """Rows gathered over all checks, summed in one go. Row 0 is the evidence as it stands."""

    def __init__(self, book: Book, network: Network, facts: Mapping[str, FactValue]) -> None:
        self.book, self.network, self.facts = book, network, facts
        self.rows: list[Row] = [Row(network.evidence)]
        self.ground = ground(book)

    def solve(self) -> None:
        apart = len(self.network.complaint) > 1
        summed = sum_out(self.network, self.rows, fired=apart, posteriors=apart)
        total = summed.total
        self.fired = summed.fired
        shares = partition(self.network, self.rows, np.ones(len(self.rows)))
        # unnormalised: shares with total one are the plain sums
        self.total = total
        self.alone = shares.alone
        self.none = shares.none

    def base(self) -> tuple[Floats, float, float]:
        fired = None if self.fired is None else self.fired[0]
        return self._normal(self.total[0], self.alone[0], self.none[0], fired)

    def read(self, handle: Handle) -> Answers:
        pick = list(handle.rows)
        total = np.maximum(handle.mix @ self.total[pick], 0.0)
        alone = np.maximum(handle.mix @ self.alone[pick], 0.0)
        none = np.maximum(handle.mix @ self.none[pick], 0.0)
        fired = None if self.fired is None else np.maximum(handle.mix @ self.fired[pick], 0.0)
        whole = total.sum() if handle.normalise else self.total[0]
        return [
            (
                label,
                float(total[i] / whole),
                self._normal(total[i], alone[i], none[i], None if fired is None else fired[i]),
            )
            for i, label in enumerate(handle.labels)
            if total[i] > 1e-12 * whole
        ]

    @staticmethod
    def _normal(
        total: float, alone: Floats, none: float, fired: Floats | None
    ) -> tuple[Floats, float, float]:
        cures = alone / total
        left = float(none / total)
        several = max(0.0, 1.0 - float(cures.sum()) - left)
        if fired is not None and several > 0.0 and fired.sum() > 0.0:
            # several complaints: who is at work in some of them has that share of the mending
            return cures + several * fired / fired.sum(), 0.0, left
        return cures, several, left

    # what a check would add ------------------------------------------------------------------

    def ask(self, check: Check) -> Handle | None:
        confirmed = self.ground.confirms.get(check.id)
        if confirmed is not None:
            cause, confirm = confirmed
            return self._report_of_cause(cause, confirm.right_when_there, confirm.right_when_not)
        if check.reports is not None:
            report = check.reports
            return self._report_of_sign(
                report.finding, report.right_when_there, report.right_when_not
            )
        sign = self.sign_of(check)
        return self._sign(sign) if sign else self._circumstance(check)

    def sign_of(self, check: Check) -> str | None:
        """The sign a check would settle and that is still open."""
        named = list(check.settles) + [f for o in check.options for f in o.means]
        found = [f for f in dict.fromkeys(named) if f in self.book.findings]
        return next((f for f in found if self.open_sign(f)), None)

    def open_sign(self, sign: str) -> bool:
        """True when nothing sure is known of a sign."""
        finding = self.book.findings[sign]
        if finding.kind != "sign" or sign in self.network.complaint:
            return False
        return hard(self.network.evidence.get(sign, (1.0, 1.0))) is None

    def _add(self, row: Row) -> int:
        self.rows.append(row)
        return len(self.rows) - 1

    def _sign(self, sign: str) -> Handle | None:
        """Rows "at most this striking"; each answer is a difference of neighbours."""
        if not self.network.linked(sign):
            return None
        size = len(self.network.background[sign])
        labels = tuple(v.name for v in self.book.findings[sign].values)
        rows = [self._add(self._at_most(sign, k)) for k in range(size - 1)] + [0]
        mix = np.eye(size) - np.eye(size, k=-1)
        return Handle(labels, mix, tuple(rows))

    def _at_most(self, sign: str, top: int) -> Row:
        old = self.network.evidence.get(sign, (1.0,) * len(self.network.background[sign]))
        vector: Vector = tuple(w if k <= top else 0.0 for k, w in enumerate(old))
        return Row({**self.network.evidence, sign: vector})

    def _report_of_sign(self, sign: str, there: float, absent: float) -> Handle | None:
        if not self.open_sign(sign) or len(self.network.background[sign]) != 2:
            return None
        row = self._add(self._at_most(sign, 0))
        says_no = np.array([absent - (1 - there), 1 - there])
        says_yes = np.array([(1 - absent) - there, there])
        return Handle(("no", "yes"), np.stack([says_no, says_yes]), (row, 0))

    def _report_of_cause(self, cause: str, there: float, absent: float) -> Handle | None:
        if self.network.node(cause) is None:
            return None
        yes = self._add(Row(self.network.evidence, {}, {cause: (there, 1 - absent)}))
        no = self._add(Row(self.network.evidence, {}, {cause: (1 - there, absent)}))
        return Handle(("no", "yes"), np.eye(2), (no, yes))

    def _circumstance(self, check: Check) -> Handle | None:
        """A row an answer with the odds it would give; the answers alike likely before."""
        options = self.hypotheses(check)
        if not options:
            return None
        rows, labels = [], []
        for label, facts in options:
            rows.append(self._add(Row(self.network.evidence, self.priors(facts))))
            labels.append(label)
        mix = np.eye(len(rows)) / len(rows)
        return Handle(tuple(labels), mix, tuple(rows), normalise=True)

    def priors(self, facts: Mapping[str, FactValue]) -> dict[str, float]:
        """The priors that change with these facts."""
        new = {f for f, value in facts.items() if self.facts.get(f) != value}
        moved = {c for f in new for c in self.ground.hung.get(f, ()) if c in self.network.place}
        return {c: prior_of(self.book, self.book.causes[c], facts) for c in sorted(moved)}

    def hypotheses(self, check: Check) -> list[tuple[str, dict[str, FactValue]]]:
        """The answers of a circumstance with the facts each would give."""
        found: list[tuple[str, dict[str, FactValue]]] = []
        for option in check.options:
            if check.kind != "one":
                break
            extra: dict[str, FactValue] = {check.id: option.id, **option.means}
            if self.ground.circumstances & set(extra):
                found.append((option.say, {**self.facts, **extra}))
        if check.kind in ("number", "file"):
            for name in check.settles:
                finding = self.book.findings.get(name)
                if finding is not None and finding.kind == "circumstance":
                    if name not in self.ground.circumstances | self.ground.set_findings:
                        continue
                    found += [(v.name, {**self.facts, name: v.id}) for v in finding.values]
        return found
