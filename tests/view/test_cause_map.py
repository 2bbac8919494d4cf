"""The map holds everything of the book, and the wall chart is the policy's own order."""

from __future__ import annotations

import pytest

from diagnose.case.entries import Case
from diagnose.reasoning.gates import turns
from diagnose.reasoning.reason import reason
from diagnose.view.cause_map import map_of
from diagnose.view.wall_chart import ChartSheet, Look, chart_of, sheet_of
from tests.small import small_book
from tests.view.test_headings import shipped

SHEETS = ("burnt-patches", "part-tapered", "rails-along-travel", "comma-marks")


def test_the_map_has_every_complaint_mechanism_and_cause_with_a_text() -> None:
    book, view = shipped(), map_of(shipped())
    assert {n.id for n in view.symptoms} == set(book.symptoms)
    assert {n.id for n in view.mechanisms} == set(book.mechanisms)
    assert {n.id for n in view.causes} == set(book.causes)
    assert sum(len(f.symptoms) for f in view.families) == len(book.symptoms)
    for node in (*view.symptoms, *view.mechanisms, *view.causes):
        assert node.text
        assert node.text[0]
        assert node.sources


def test_every_fix_of_the_map_has_its_care() -> None:
    for node in map_of(shipped()).causes:
        assert node.do
        assert node.care, node.id


def test_what_leads_to_a_node_names_it_back() -> None:
    view = map_of(shipped())
    nodes = {n.id: n for n in (*view.symptoms, *view.mechanisms, *view.causes)}
    for node in nodes.values():
        for road in node.leads_to:
            if road.id in nodes:
                back = {(r.id, r.because) for r in nodes[road.id].comes_from}
                assert (node.id, road.because) in back


@pytest.fixture(scope="module", params=SHEETS)
def sheet(request: pytest.FixtureRequest) -> ChartSheet:
    return sheet_of(shipped(), request.param)


def test_looks_come_in_the_order_of_bits_a_minute(sheet: ChartSheet) -> None:
    for looks in (sheet.standing, sheet.turning):
        rates = [look.bits_a_minute for look in looks]
        assert rates == sorted(rates, reverse=True)
    best = max(
        reason(shipped(), Case("c", (sheet.id,), ())).valued.candidates, key=lambda c: c.rate
    )
    assert best.rate == max(look.bits_a_minute for look in (*sheet.standing, *sheet.turning))


def test_nothing_turns_before_the_safety_questions(sheet: ChartSheet) -> None:
    book = shipped()
    assert not any(turns(book.checks[look.check.id]) for look in sheet.standing)
    asked_by = {s.asked_by for s in book.stops.values() if s.kind == "stop"}
    assert asked_by & set(book.checks)


def test_a_look_carries_its_cares(sheet: ChartSheet) -> None:
    for look in (*sheet.standing, *sheet.turning):
        named = shipped().checks[look.check.id].cautions
        assert look.care == tuple(shipped().cautions[n].say for n in named)


def test_answers_speak_for_causes_of_the_complaint(sheet: ChartSheet) -> None:
    looks: tuple[Look, ...] = (*sheet.standing, *sheet.turning)
    names = {c.name for c in shipped().causes.values()}
    spoken = [a for look in looks for a in look.answers if a.cause]
    assert spoken
    assert all(a.cause in names and 0.0 < a.chance <= 1.0 for a in spoken)


def test_the_chart_of_a_book_has_a_sheet_for_every_complaint() -> None:
    chart = chart_of(small_book())
    assert [s.id for s in chart.sheets] == sorted(small_book().symptoms)
