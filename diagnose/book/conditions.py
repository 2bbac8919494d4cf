"""The closed set of conditions over named facts that YAML may write.

`equals`, `one of`, `above`, `below`, `between`, `within ... of`. Nothing is ever evaluated as
code. A condition on a fact that is not known is neither true nor false: `holds` gives None.
A number with an uncertainty can hold in part: `holds` gives the share of its range for which
the test is true.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property


@dataclass(frozen=True)
class Number:
    """A measured or worked-out number: SI value with the lowest and highest it may be.

    `cannot_show` are the conclusions it does not carry, with the reason: (id, why and what would).
    """

    value: float
    low: float
    high: float
    cannot_show: tuple[tuple[str, str], ...] = ()


FactValue = str | frozenset[str] | Number
Facts = Mapping[str, FactValue]


@dataclass(frozen=True)
class Test:
    """One comparison of one fact.

    how: "is" (the text is one of `words`), "above", "below", "between" (numbers `low`, `high`),
    "within" (the share `low` of fact `other`).
    """

    fact: str
    how: str
    words: tuple[str, ...] = ()
    low: float = 0.0
    high: float = 0.0
    other: str = ""


@dataclass(frozen=True)
class Condition:
    """All tests must hold; the empty condition always does."""

    tests: tuple[Test, ...] = ()

    @cached_property
    def facts(self) -> tuple[str, ...]:
        """Names of every fact the condition looks at, in order."""
        names = [t.fact for t in self.tests] + [t.other for t in self.tests if t.other]
        return tuple(dict.fromkeys(names))


def holds(condition: Condition, facts: Facts) -> float | None:
    """Degree from 0 to 1 to which the condition holds; None while a fact it needs is unknown.

    A test that is surely false makes the whole false even if other facts are unknown.
    """
    result, known = 1.0, True
    for test in condition.tests:
        share = degree(test, facts)
        if share == 0.0:
            return 0.0
        if share is None:
            known = False
        else:
            result *= share
    return result if known else None


def degree(test: Test, facts: Facts) -> float | None:
    """Degree to which one test holds, or None when its fact is unknown."""
    value = facts.get(test.fact)
    if value is None or (test.other and test.other not in facts):
        return None
    if test.how == "is":
        if isinstance(value, frozenset):
            return 1.0 if value & set(test.words) else 0.0
        return 1.0 if value in test.words else 0.0
    if not isinstance(value, Number):
        return 0.0
    low, high = _limits(test, facts)
    return _share(value, low, high)


def _limits(test: Test, facts: Facts) -> tuple[float, float]:
    infinity = float("inf")
    if test.how == "above":
        return test.low, infinity
    if test.how == "below":
        return -infinity, test.high
    if test.how == "between":
        return test.low, test.high
    other = facts[test.other]
    if not isinstance(other, Number):
        return infinity, -infinity
    return (
        min(other.low * (1 - test.low), other.low * (1 + test.low)),
        max(other.high * (1 - test.low), other.high * (1 + test.low)),
    )


def _share(value: Number, low: float, high: float) -> float:
    width = value.high - value.low
    if width <= 0.0:
        return 1.0 if low <= value.value <= high else 0.0
    covered = min(high, value.high) - max(low, value.low)
    return min(1.0, max(0.0, covered / width))
