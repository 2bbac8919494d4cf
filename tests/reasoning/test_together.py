"""A list of looks: each is there for what it adds to those above it."""

from itertools import product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.reasoning.next_check import Candidate, Outcome, bits, expected_bits
from diagnose.reasoning.together import most_together

LEAST = 1e-6
ANY = -1.0  # no look adds too little


def look(name: str, now: list[float], table: list[list[float]]) -> Candidate:
    """A look with the chance of each answer (rows) for each fix (columns)."""
    joint = np.array(table) * np.array(now)
    outcomes = tuple(Outcome(str(i), row.sum(), row / row.sum()) for i, row in enumerate(joint))
    gain = bits(np.array(now)) - expected_bits(outcomes)
    return Candidate(name, 0.0, outcomes, gain, 0.0)


def told_by(looks: list[Candidate], now: list[float]) -> float:
    """Bits that the answers to all of them tell, every set of answers worked out."""
    tables = [np.stack([o.chance * o.shares for o in c.outcomes]) / np.array(now) for c in looks]
    after = 0.0
    for answers in product(*(range(len(t)) for t in tables)):
        joint = np.array(now)
        for table, answer in zip(tables, answers, strict=True):
            joint = joint * table[answer]
        if joint.sum() > 0.0:
            after += joint.sum() * bits(joint / joint.sum())
    return bits(np.array(now)) - after


EVEN = [0.25] * 4
FIRST_BIT = [[0.95, 0.95, 0.05, 0.05], [0.05, 0.05, 0.95, 0.95]]
SECOND_BIT = [[0.8, 0.2, 0.8, 0.2], [0.2, 0.8, 0.2, 0.8]]


def test_a_look_that_repeats_another_comes_after_a_weaker_one_that_tells_something_else() -> None:
    candidates = [
        look("bars-counted", EVEN, FIRST_BIT),
        look("bars-counted-again", EVEN, FIRST_BIT),
        look("another-wheel", EVEN, SECOND_BIT),
    ]
    assert candidates[1].gain > candidates[2].gain
    chosen = most_together(candidates, np.array(EVEN), 3, LEAST)
    assert chosen[1] == "another-wheel"
    assert set(chosen) == {c.check for c in candidates}


def test_a_look_that_adds_too_little_is_left_out() -> None:
    candidates = [
        look("bars-counted", EVEN, FIRST_BIT),
        look("colour-of-the-shirt", EVEN, [[0.5] * 4, [0.5] * 4]),
    ]
    assert most_together(candidates, np.array(EVEN), 2, 1e-3) == ("bars-counted",)


def test_no_looks_make_no_list() -> None:
    assert most_together([], np.array(EVEN), 12, LEAST) == ()


chances = st.floats(0.02, 0.98)


@st.composite
def cases(draw: st.DrawFn) -> tuple[list[float], list[Candidate]]:
    fixes, looks = draw(st.integers(2, 6)), draw(st.integers(2, 6))
    weights = np.array(draw(st.lists(st.floats(0.05, 1.0), min_size=fixes, max_size=fixes)))
    now = list(weights / weights.sum())
    rows = st.lists(chances, min_size=fixes, max_size=fixes)
    yes = [draw(rows) for _ in range(looks)]
    return now, [look(f"look-{i}", now, [row, [1.0 - p for p in row]]) for i, row in enumerate(yes)]


@given(cases(), st.integers(1, 6))
def test_a_list_is_as_long_as_asked_and_has_no_look_twice(
    case: tuple[list[float], list[Candidate]], most: int
) -> None:
    now, candidates = case
    chosen = most_together(candidates, np.array(now), most, ANY)
    assert len(chosen) == len(set(chosen)) == min(most, len(candidates))


@given(cases())
def test_the_first_look_is_the_one_that_tells_most_alone(
    case: tuple[list[float], list[Candidate]],
) -> None:
    now, candidates = case
    gains = {c.check: c.gain for c in candidates}
    (first,) = most_together(candidates, np.array(now), 1, ANY)
    assert gains[first] == pytest.approx(max(gains.values()), abs=1e-6)


@settings(max_examples=50)
@given(cases())
def test_the_same_case_has_the_same_list_in_whatever_order_the_looks_come(
    case: tuple[list[float], list[Candidate]],
) -> None:
    now, candidates = case
    lists = [most_together(c, np.array(now), 4, ANY) for c in (candidates, candidates[::-1])]
    assert lists[0] == lists[1]


@settings(max_examples=60, deadline=None)
@given(cases())
def test_three_looks_tell_nearly_two_thirds_of_what_the_best_three_would(
    case: tuple[list[float], list[Candidate]],
) -> None:
    """1 - 1/e of the best, the bound of a greedy choice (Krause & Guestrin 2005, abstract).

    Every set of three is worked out by enumeration.
    """
    now, candidates = case
    by_name = {c.check: c for c in candidates}
    chosen = most_together(candidates, np.array(now), 3, ANY)
    size = len(chosen)
    sets = {frozenset(t) for t in product(by_name, repeat=size) if len(set(t)) == size}
    best = max(told_by([by_name[n] for n in s], now) for s in sets)
    ours = told_by([by_name[n] for n in chosen], now)
    assert ours >= (1.0 - 1.0 / np.e) * best - 0.01
