"""The drawings say what the numbers say."""

from __future__ import annotations

import dataclasses
import math
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.report.figures_chain import chain_figure, stations
from diagnose.report.figures_chances import WIDTH, cause_bar, chance_bar, outcome_bar
from diagnose.report.figures_readings import LEFT, RIGHT, Scale, number_line, scales
from diagnose.report.figures_shares import MIDDLE, chance_of, odds_words, reach, share_bar
from diagnose.report.sketches import SKETCHES, caption, sketch
from diagnose.report.svg import Svg, el, lines_of, width_of
from diagnose.view.result import ReasonView
from tests.report.views import NEXT_CHECK, UNBALANCED, rich_view

words = st.text(st.characters(codec="utf-8", exclude_categories=["C"]), max_size=80)


def read(drawing: Svg) -> ElementTree.Element:
    return ElementTree.fromstring(drawing)


def one(drawing: Svg, class_: str) -> ElementTree.Element:
    (found,) = (e for e in read(drawing).iter() if e.get("class") == class_)
    return found


@given(st.floats(0, 1), st.floats(0, 1), st.floats(0, 1))
def test_bars_are_as_long_as_their_chances(acts: float, alone: float, present: float) -> None:
    cause = dataclasses.replace(UNBALANCED, probability=acts, cures_alone=alone, present=present)
    bar = cause_bar(cause, "b")
    for class_, chance in (("bar-acts", acts), ("bar-there", present)):
        assert float(one(bar, class_).get("width", "")) == pytest.approx(WIDTH * chance, abs=0.06)
    x = float(one(bar, "mark-alone").get("points", "").split(",")[0])
    assert x == pytest.approx(WIDTH * alone, abs=6.1)


def test_several_together_and_answers_are_bars_too() -> None:
    assert one(chance_bar(0.25, "b", "Several together"), "bar-other").get("width") == "75"
    bar = outcome_bar(NEXT_CHECK.outcomes[0], "b")
    assert float(one(bar, "bar-acts").get("width", "")) == pytest.approx(0.71 * WIDTH)
    assert "chance 8 %" in (read(bar).findtext("desc") or "")


@given(st.floats(-12, 12).filter(lambda x: abs(x) > 0.02))
def test_for_points_right_and_against_points_left(share: float) -> None:
    bar = share_bar(ReasonView("x", share, (), ()), 12.0, "b")
    body = one_rect(bar, "bar-for" if share > 0 else "bar-against")
    start, length = float(body.get("x", "")), float(body.get("width", ""))
    assert length == pytest.approx(abs(share) / 12 * (MIDDLE - 8), abs=0.11)
    assert start == MIDDLE if share > 0 else start + length == pytest.approx(MIDDLE, abs=0.11)


def one_rect(drawing: Svg, class_: str) -> ElementTree.Element:
    (found,) = (e for e in read(drawing).iter("rect") if e.get("class") == class_)
    return found


def test_weak_answers_look_weak() -> None:
    """The scale never ends below log-odds of 1.5, and the strongest answer fills it."""
    assert reach(dataclasses.replace(UNBALANCED, reasons_for=(), reasons_against=())) == 1.5
    assert reach(UNBALANCED) == 1.92


def test_shares_are_said_as_odds() -> None:
    """A share is natural log-odds, so three times the odds is log 3."""
    assert odds_words(math.log(3)) == "odds × 3.0"
    assert odds_words(-math.log(25)) == "odds ÷ 25"
    assert odds_words(0.03) == "hardly moved it"


@given(st.floats(0.001, 0.999))
def test_chances_come_back_from_their_log_odds(chance: float) -> None:
    assert chance_of(math.log(chance / (1 - chance))) == pytest.approx(chance)


def test_the_chain_draws_every_station_and_every_because() -> None:
    drawing = read(chain_figure(UNBALANCED.chain, "c"))
    text = " ".join(" ".join(t.itertext()) for t in drawing.iter("tspan"))
    for arrow in UNBALANCED.chain:
        assert f"because {arrow.because}" in text
    assert all(name in text for name in stations(UNBALANCED.chain))
    assert len([e for e in drawing.iter() if e.get("class") == "arrow-head"]) == 3


def test_no_chain_is_no_drawing() -> None:
    assert chain_figure((), "c") == ""


@given(words, st.floats(40, 400))
def test_writing_is_broken_without_losing_a_sign(text: str, width: float) -> None:
    lines = lines_of(text, 16, width)
    assert "".join("".join(lines).split()) == "".join(text.split())
    assert all(width_of(row, 16) <= width for row in lines if len(row) > 1)


def test_readings_of_one_kind_share_a_scale_when_near_in_size() -> None:
    groups = [[r.id for r in s.readings] for s in scales(rich_view().readings)]
    assert ["marks-rate", "wheel-turn"] in groups
    assert sorted(name for g in groups for name in g) == sorted(r.id for r in rich_view().readings)


def test_lengths_of_different_size_and_sign_do_not_share_a_scale() -> None:
    groups = [[r.id for r in s.readings] for s in scales(rich_view().readings)]
    assert ["spacing"] in groups
    assert ["bow"] in groups


def test_a_temperature_is_not_measured_from_absolute_zero() -> None:
    (scale,) = (s for s in scales(rich_view().readings) if s.readings[0].id == "warm")
    assert 290 < scale.start < 302 < 306 < scale.end < 320


@given(st.floats(-1e6, 1e6), st.floats(0, 1e5), st.floats(0, 1e5))
def test_the_dot_stands_between_low_and_high(si: float, below: float, above: float) -> None:
    base = rich_view().readings[0]
    reading = dataclasses.replace(base, si=si, si_low=si - below, si_high=si + above)
    (scale,) = scales([reading])
    low, here, high = (scale.at(x) for x in (reading.si_low, si, reading.si_high))
    assert LEFT <= low <= here <= high <= RIGHT
    assert float(one(number_line(reading, scale, "r"), "dot").get("cx", "")) == pytest.approx(
        here, abs=0.06
    )


def test_a_reading_without_spread_draws_no_band() -> None:
    bars = next(r for r in rich_view().readings if r.id == "bars")
    drawing = number_line(bars, Scale((bars,), 0.0, 10.0), "r")
    assert "band" not in drawing


@pytest.mark.parametrize("name", SKETCHES)
def test_every_sketch_is_a_drawing_with_a_title(name: str) -> None:
    drawing = read(sketch(name))
    assert drawing.findtext("title") == f"Sketch: {caption(name)}"
    assert len(list(drawing.iter())) > 6


def test_no_two_sketches_look_the_same() -> None:
    drawn = {str(s.draw()) for s in SKETCHES.values()}
    assert len(drawn) == len(SKETCHES)


def test_a_sketch_we_do_not_have_is_left_out() -> None:
    assert sketch("no-such-thing") == ""
    assert caption("no-such-thing") == ""


@given(words)
def test_text_put_into_a_drawing_is_escaped(text: str) -> None:
    made = ElementTree.fromstring(el("g", el("text", text), note=text))
    assert made.get("note") == text
    assert (made.findtext("text") or "") == text
