"""From counts to rates: the book's number stands for SIZE cases, the shop's own are added.

Dirichlet and Beta means (Heckerman, A tutorial on learning with Bayesian networks, 1995): with
equivalent sample size N around a mean m and n cases of which n_i were so, (N m_i + n_i)/(N + n).
"""

from __future__ import annotations

from collections.abc import Sequence

SIZE = 10.0  # cases of the shop's own that weigh as much as the book


def learned(mean: float, so: int, cases: int, size: float = SIZE) -> float:
    """The rate after `so` of `cases`, around `mean`."""
    return (size * mean + so) / (size + cases)


def learned_shares(
    means: Sequence[float], counts: Sequence[int], cases: int, size: float = SIZE
) -> list[float]:
    """The shares after `cases`, of which `counts` were each; together as much as the means and
    counts leave them.
    """
    return [learned(m, n, cases, size) for m, n in zip(means, counts, strict=True)]
