"""Quantiles that a stated uncertainty needs, from exact distribution functions.

Written here so that the product needs no statistics library; the tests hold them against one.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import lru_cache


@lru_cache(maxsize=256)
def student_quantile(p: float, dof: int) -> float:
    """The value a Student t of `dof` degrees of freedom stays below with probability `p`.

    Source: Abramowitz & Stegun, *Handbook of Mathematical Functions*, 26.7.3 and 26.7.4.
    Raises ValueError outside 0.5 <= p < 1 or dof < 1.
    """
    if not 0.5 <= p < 1.0 or dof < 1:
        raise ValueError(f"no Student quantile for p={p}, dof={dof}")
    return _bisect(lambda t: 0.5 + 0.5 * _student_within(t, dof), p)


@lru_cache(maxsize=256)
def chi_square_quantile(p: float, dof: int) -> float:
    """The value a chi-square of `dof` degrees of freedom stays below with probability `p`.

    Source: Abramowitz & Stegun 26.4.4, 26.4.5 (finite series for whole dof).
    Raises ValueError outside 0 < p < 1 or dof < 1.
    """
    if not 0.0 < p < 1.0 or dof < 1:
        raise ValueError(f"no chi-square quantile for p={p}, dof={dof}")
    return _bisect(lambda x: 1.0 - _chi_square_above(x, dof), p)


def _student_within(t: float, dof: int) -> float:
    """Probability that |T| < t."""
    theta = math.atan(t / math.sqrt(dof))
    cosine_squared = math.cos(theta) ** 2
    odd = dof % 2
    term = math.cos(theta) if odd else 1.0
    total = term if not odd or dof > 1 else 0.0
    for k in range(3 if odd else 2, dof - 1, 2):
        term *= (k - 1) / k * cosine_squared
        total += term
    if odd:
        return 2.0 / math.pi * (theta + math.sin(theta) * total)
    return math.sin(theta) * total


def _chi_square_above(x: float, dof: int) -> float:
    """Probability that a chi-square exceeds x."""
    half = x / 2.0
    if dof % 2:
        total = math.erfc(math.sqrt(half))
        log_term = -half + 0.5 * math.log(half) - math.lgamma(1.5) if x > 0.0 else -math.inf
        first = 3
    else:
        total, log_term, first = 0.0, -half, 2
    for k in range(first, dof + 1, 2):
        total += math.exp(log_term)
        log_term += math.log(half / (k / 2.0)) if x > 0.0 else -math.inf
    return total


def _bisect(below: Callable[[float], float], p: float) -> float:
    low, high = 0.0, 1.0
    while below(high) < p:
        low, high = high, high * 2.0
    for _ in range(80):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if below(middle) < p else (low, middle)
    return 0.5 * (low + high)
