"""Totals as authors write them and the strengths of a noisy-MAX say the same thing."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.book.strengths import NotAbove, TooMuch, net_strengths, totals_of

rates = st.floats(0.001, 0.25)


def by_counting(backgrounds: list[float], strengths: list[float]) -> list[float]:
    """P(most striking of two proposals is k), every pair of proposals counted one by one."""
    mine = [1.0 - sum(strengths), *strengths]
    theirs = [1.0 - sum(backgrounds), *backgrounds]
    found = [0.0] * len(mine)
    for (i, p), (j, q) in itertools.product(enumerate(mine), enumerate(theirs)):
        found[max(i, j)] += p * q
    return found[1:]


def test_a_yes_no_sign_follows_the_leaky_noisy_or() -> None:
    # Henrion (UAI 1987), from memory: q = (P - leak) / (1 - leak)
    assert net_strengths([0.02], [0.804]) == pytest.approx((0.8,), abs=1e-15)


def test_cold_flu_and_malaria_have_their_published_strengths_without_background() -> None:
    # Russell & Norvig, AIMA, noisy-OR table of fever: inhibitions .6, .2, .1
    for inhibition in (0.6, 0.2, 0.1):
        assert net_strengths([0.0], [1 - inhibition]) == pytest.approx((1 - inhibition,))


@given(st.lists(st.tuples(rates, rates), min_size=1, max_size=3))
def test_totals_are_what_counting_every_pair_of_proposals_gives(
    rows: list[tuple[float, float]],
) -> None:
    backgrounds, strengths = [r[0] for r in rows], [r[1] for r in rows]
    counted = by_counting(backgrounds, strengths)
    assert totals_of(backgrounds, strengths) == pytest.approx(counted, abs=1e-12)


@given(st.lists(st.tuples(rates, rates), min_size=1, max_size=3))
def test_strengths_come_back_from_their_totals(rows: list[tuple[float, float]]) -> None:
    backgrounds, strengths = [r[0] for r in rows], [r[1] for r in rows]
    totals = totals_of(backgrounds, strengths)
    assert net_strengths(backgrounds, totals) == pytest.approx(strengths, abs=1e-9)


@settings(max_examples=60)
@given(st.lists(st.tuples(rates, st.none() | st.floats(0.01, 0.6)), min_size=1, max_size=4))
def test_written_totals_are_recovered_exactly_or_refused(
    rows: list[tuple[float, float | None]],
) -> None:
    backgrounds, totals = [r[0] for r in rows], [r[1] for r in rows]
    if sum(backgrounds) >= 1:
        return
    try:
        strengths = net_strengths(backgrounds, totals)
    except (NotAbove, TooMuch):
        return
    assert all(s >= 0 for s in strengths)
    assert sum(strengths) <= 1 + 1e-12
    counted = by_counting(backgrounds, list(strengths))
    for total, strength, shown in zip(totals, strengths, counted, strict=True):
        if total is None:
            assert strength == 0
        else:
            assert shown == pytest.approx(total, abs=1e-12)


@given(rates, st.floats(0, 1))
def test_a_sign_that_shows_no_more_often_than_without_the_cause_is_refused(
    background: float, share: float
) -> None:
    with pytest.raises(NotAbove) as refused:
        net_strengths([background], [background * share])
    assert refused.value.needs == pytest.approx(background)


def test_a_striking_value_leaves_less_room_for_the_one_below() -> None:
    # With the loaded face in 60 % of cases, a shiny one needs only more than its share of the rest.
    backgrounds = [0.16, 0.07]
    needs = (1 - 0.6) / (1 - 0.07) * 0.16
    with pytest.raises(NotAbove) as refused:
        net_strengths(backgrounds, [needs * 0.99, 0.6])
    assert refused.value.needs == pytest.approx(needs, abs=0.01)
    assert refused.value.index == 0
    assert net_strengths(backgrounds, [needs * 1.3, 0.6])[0] > 0


def test_values_that_come_to_more_than_always_are_refused() -> None:
    with pytest.raises(TooMuch):
        net_strengths([0.1, 0.1], [0.66, 0.77])


@pytest.mark.parametrize(
    ("backgrounds", "totals"), [([0.1], [0.5, 0.5]), ([0.6, 0.5], [0.7, 0.7]), ([-0.1], [0.5])]
)
def test_impossible_backgrounds_are_refused(backgrounds: list[float], totals: list[float]) -> None:
    with pytest.raises(ValueError, match="background"):
        net_strengths(backgrounds, totals)
