"""The pages of all cause and effect: whole, self-contained, every box a link."""

from __future__ import annotations

import re
from functools import cache
from html import unescape
from xml.etree import ElementTree

import pytest

from diagnose.report.chart_page import render_chart
from diagnose.report.figures_map import SHEET, layout, map_figure
from diagnose.report.map_page import TALLEST, render_map
from diagnose.view.cause_map import map_of
from diagnose.view.wall_chart import chart_of
from tests.small import small_book
from tests.view.test_headings import shipped

LIMIT = 1_500_000  # bytes of the whole map


@cache
def whole_map() -> str:
    return render_map(map_of(shipped()))


@cache
def small_chart() -> str:
    return render_chart(chart_of(small_book()))


@pytest.mark.parametrize("page", [whole_map, small_chart])
def test_a_page_needs_nothing_else(page: object) -> None:
    assert callable(page)
    text = page()
    assert "<script" not in text
    assert not re.search(r'(src|href)="(?!#)', text)
    assert len(text.encode()) < LIMIT


@pytest.mark.parametrize("page", [whole_map, small_chart])
def test_every_link_leads_to_one_place_and_every_id_is_there_once(page: object) -> None:
    assert callable(page)
    text = page()
    ids = re.findall(r'\bid="([^"]+)"', text)
    assert len(ids) == len(set(ids))
    assert set(re.findall(r'href="#([^"]+)"', text)) <= set(ids)


def test_every_cause_is_drawn_or_told_and_linked() -> None:
    text = unescape(whole_map())
    for cause in shipped().causes.values():
        assert f'id="cause-{cause.id}"' in text
        assert cause.fix.do in text
    drawn = set(re.findall(r'<a href="#cause-([^"]+)"', text))
    assert len(drawn) == len(shipped().causes)


def test_a_drawing_fits_its_sheet_or_is_split() -> None:
    heights = [float(h) for h in re.findall(r'viewBox="0 0 \S+ (\S+)"', whole_map())]
    assert max(heights) <= TALLEST


def test_causes_that_lead_to_the_same_stand_in_one_box_with_a_line_for_each() -> None:
    pairs = [("a", "m"), ("b", "m"), ("c", "n"), ("m", "end"), ("n", "end")]
    plan = layout(pairs, ("end",), {}, SHEET)
    assert sorted(box.names for box in plan.boxes) == [("a", "b"), ("c",), ("end",), ("m",), ("n",)]
    drawn = ElementTree.fromstring(
        map_figure(pairs, "end", {}, "k", SHEET, {n: n for n in ("a", "b", "c", "m", "n")})
    )
    assert drawn.get("role") == "group"
    assert sorted(a.get("href", "") for a in drawn.iter("a")) == ["#a", "#b", "#c", "#m", "#n"]


def test_a_drawing_may_end_in_several_complaints() -> None:
    plan = layout([("a", "x"), ("a", "y")], ("x", "y"), {}, SHEET)
    ends = [box for box in plan.boxes if box.kind == "symptom"]
    assert {box.names for box in ends} == {("x",), ("y",)}
    assert len({box.x for box in ends}) == 1


def test_the_chart_says_the_care_before_the_question() -> None:
    for item in re.findall(r'<ol class="looks".*?</ol>', small_chart(), re.DOTALL):
        for look in item.split("<li>\n")[1:]:
            if "Take care first" in look:
                assert look.index("Take care first") < look.index('class="ask"')
