"""The order of fixes and questions against published worked examples."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.reasoning.fixes import (
    Cures,
    FixTable,
    ask_cost,
    best_order,
    cost_of_order,
    greedy_order,
    minutes_range,
)


def test_observe_before_repairing() -> None:
    """T1. Source: Heckerman, Breese & Rommelse, CACM 38(3):49-57, 1995, Fig. 1."""
    costs = (10.0, 20.0)

    def branch(first: int, chance: float) -> float:
        """One repair with this chance of working, then the other, after which it works."""
        works = [(1.0,), (1.0,)]
        works[first] = (chance,)
        return cost_of_order((first, 1 - first), Cures(costs, tuple(works)), (1.0,), 0.0)

    seen = [5 + branch(0, 0.9), 5 + branch(1, 0.01), 5 + branch(0, 0.25), 5 + branch(1, 0.7)]
    unseen = [branch(0, 0.5), branch(1, 0.05)]
    assert seen + unseen == pytest.approx([17.0, 34.9, 30.0, 28.0, 20.0, 29.5])
    observe = ask_cost(5.0, [(0.8, min(seen[:2]) - 5.0), (0.2, min(seen[2:]) - 5.0)])
    assert observe == pytest.approx(19.2)
    assert observe < min(unseen)


def test_actions_that_cure_several_faults() -> None:
    """T2. Source: Jensen et al. (SACSO), AIEDAM 15:321-333, 2001, Fig. 1."""
    faults = (0.20, 0.25, 0.40, 0.15)
    cures = Cures((1.0, 1.0, 1.0), ((1, 1, 0, 0), (0, 1, 1, 0), (0, 0, 1, 1)))
    printed = {"123": 1.70, "132": 1.55, "213": 1.50, "231": 1.55, "312": 1.45, "321": 1.65}
    for order, cost in printed.items():
        actions = [int(d) - 1 for d in order]
        assert cost_of_order(actions, cures, faults, 0.0) == pytest.approx(cost)
    assert greedy_order(cures, faults) == (1, 0, 2)
    assert best_order(cures, faults, 100.0) == (2, 0)
    assert cost_of_order((2, 0), cures, faults, 100.0) == pytest.approx(1.45)


def test_chance_over_cost_order() -> None:
    """T3. Source: Kadane & Simon 1977; Vomlelova 2003 (p/C ordering)."""
    p, costs = (0.5, 0.3, 0.2), (4.0, 1.0, 1.0)
    one_each = Cures(costs, tuple(tuple(float(a == f) for f in range(3)) for a in range(3)))
    best = best_order(one_each, p, 100.0)
    assert best == (1, 2, 0)
    assert cost_of_order(best, one_each, p, 100.0) == pytest.approx(3.70)
    every = [cost_of_order(o, one_each, p, 100.0) for o in itertools.permutations(range(3))]
    assert min(every) == pytest.approx(3.70)
    table = FixTable(("a", "b", "c"), np.array(costs), np.ones(3), np.eye(3))
    assert table.order(np.array([*p, 0.0, 0.0])) == [1, 2, 0]
    assert table.expected_minutes(np.array([*p, 0.0, 0.0])) == pytest.approx(3.70)


@given(st.data())
def test_the_best_order_beats_every_other(data: st.DataObject) -> None:
    count, faults = data.draw(st.integers(1, 4)), data.draw(st.integers(1, 4))
    unit = st.floats(0.01, 0.99)
    p = data.draw(st.lists(unit, min_size=faults, max_size=faults))
    whole = [x / sum(p) for x in p]
    chance = [data.draw(st.lists(unit, min_size=faults, max_size=faults)) for _ in range(count)]
    costs = tuple(data.draw(st.lists(st.floats(1, 60), min_size=count, max_size=count)))
    cures = Cures(costs, tuple(map(tuple, chance)))
    best = cost_of_order(best_order(cures, whole, 180.0), cures, whole, 180.0)
    for size in range(count + 1):
        for order in itertools.permutations(range(count), size):
            assert best <= cost_of_order(order, cures, whole, 180.0) + 1e-9
    low, high = minutes_range(best_order(cures, whole, 180.0), cures, whole, 180.0)
    assert low <= high
