"""Text, JSON and page say the same: every fact of the one view is in each of them."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace

import pytest

from diagnose.report.review_page import render_review
from diagnose.view.result import minutes, percent
from diagnose.view.review import ReviewView
from diagnose.view.review_json import review_json
from diagnose.view.review_text import review_text
from tests.report.reading import Fact, facts, parsed, said, with_every_text
from tests.review.fresh_jobs import fresh
from tests.review.jobs import SOUND, job, reviewed

LIMIT = 300_000  # bytes
CHANCES = {"here", "usual", "after", "shows", "least", "most"}
# what names a thing inside the program, or is said in other words
INWARD = {
    *(("ReadingView", name) for name in ("id", "si", "si_low", "si_high", "dimension")),
    *(("ShakerView", name) for name in ("si_low", "si_high")),
    *(("ShakersView", name) for name in ("si_low", "si_high")),
    *(("LimitView", name) for name in ("si", "si_low", "si_high")),
    *(("StopView", name) for name in ("id", "kind")),
    *(("SourceView", name) for name in ("id", "title", "standing")),  # listed once, at the end
    ("CautionView", "id"),
    ("CheckView", "id"),
    ("CheckView", "help"),
    ("CheckView", "no_instrument"),
    ("CheckView", "options"),
    ("ListView", "id"),
    ("ReviewView", "case"),
    ("ReviewView", "case_text"),
}
ON_A_PAGE_ONLY = {
    "RiskView": {"cause"},
    "ComplaintView": {"id"},
    "DiffersView": {"date", "machine"},
}
MISTAKES = {
    "sound": job("soft block"),
    "stopped": job("soft block", spindle_speed="4200 rpm", wiped_and_stoned="neither"),
    "wrong wheel": job("hard plate", wheel="brown-60-l", depth_of_cut="0.04 mm"),
    "six faces": job("iron bracket", sides="six", crossfeed="9 mm"),
    "brought along": fresh("thin plate on coarse poles"),
    "never balanced": job("soft block", balanced_since_mounting="never-balanced"),
    "thin": job("thin strip", bow_before="0.1 mm", strokes_had="120"),
    "no metal": replace(job("soft block"), given={"wet-or-dry": "wet"}, planned=None),
    "carbide": job("soft block", work_material="cemented-carbide", metal="carbide"),
}


def wanted(view: ReviewView) -> Iterator[Fact]:
    """The facts that every print must hold."""
    for fact in facts(view):
        if isinstance(fact.value, bool) or (fact.of, fact.field) in INWARD or fact.value == "":
            continue
        yield fact


def words(fact: Fact) -> str:
    """How a fact reads in print."""
    if fact.field in CHANCES:
        return percent(fact.value)
    if fact.field == "minutes":
        return minutes(fact.value)
    return " ".join(str(fact.value).split())


def missing(view: ReviewView, printed: str, spared: dict[str, set[str]]) -> list[Fact]:
    told = " ".join(printed.split()).lower()
    return [
        f
        for f in wanted(view)
        if f.field not in spared.get(f.of, set())
        and words(f).lower() not in told
        and f.field not in ("number", "round", "same")
    ]


@pytest.fixture(params=MISTAKES)
def view(request: pytest.FixtureRequest) -> ReviewView:
    return reviewed(MISTAKES[request.param])


def test_the_text_says_every_fact(view: ReviewView) -> None:
    assert missing(view, review_text(view, full=True), ON_A_PAGE_ONLY) == []


def test_the_short_text_keeps_what_matters_and_names_where_the_rest_is(view: ReviewView) -> None:
    short, full = review_text(view), review_text(view, full=True)
    told = " ".join(short.split())

    assert "--full" in short
    assert "--full" not in full
    for line in (view.headline, view.first_action, view.dress_note, view.ceiling, view.cut_note):
        assert " ".join(line.split()) in told
    for stop in view.stops:
        assert stop.name.lower() in told.lower()
        assert all(step in told for step in stop.do_first)
    for risk in view.risks:
        assert all(line in told for line in (risk.name, risk.do, *risk.change))
    for caution in view.cautions:
        assert caution.say in told
    for setting in view.settings:
        assert setting.recommended in told
    for unknown in view.unknown:
        assert unknown.check.ask in told
    assert "READINGS" not in short
    assert "WHAT WAS PLANNED" not in short
    assert len(short.splitlines()) < 0.6 * len(full.splitlines())


def test_the_page_says_every_fact(view: ReviewView) -> None:
    page = render_review(view)

    assert missing(view, said(parsed(page)), {}) == []
    assert len(page.encode()) < LIMIT
    assert "<script" not in page


def test_the_data_holds_every_fact_and_nothing_more(view: ReviewView) -> None:
    data = json.loads(json.dumps(review_json(view)))

    leaves = sorted(str(v) for v in _leaves({k: data[k] for k in data if k not in EXTRA}))
    assert leaves == sorted(str(f.value) for f in facts(view))


EXTRA = ("schema", "kind")


def _leaves(data: object) -> Iterator[object]:
    if isinstance(data, dict):
        for value in data.values():
            yield from _leaves(value)
    elif isinstance(data, list):
        for value in data:
            yield from _leaves(value)
    elif data is not None:
        yield data


def test_every_source_named_is_listed_with_its_standing(view: ReviewView) -> None:
    text = " ".join(review_text(view, full=True).split())

    for source in view.sources:
        assert f"[{source.id}] {source.title} ({source.standing})" in text
    for risk in view.risks:
        assert {each.source for each in risk.shown_by} <= set(view.sources)


def test_every_chance_lies_between_nothing_and_certainty(view: ReviewView) -> None:
    for fact in facts(view):
        if fact.field in CHANCES:
            assert 0.0 <= fact.value <= 1.0


@pytest.mark.parametrize("hostile", ["<script>alert(1)</script>", "]]><!--", "'\"`{{7*7}}{% x %}"])
def test_no_text_breaks_out_of_its_place_on_the_page(hostile: str) -> None:
    view = reviewed(MISTAKES["wrong wheel"])
    page = render_review(with_every_text(view, hostile))

    parsed(page)
    assert "<script" not in page
    assert "49" not in said(parsed(page)).replace(hostile, "")


def test_inch_and_metric_tell_the_same_cut() -> None:
    inch, metric = (reviewed(SOUND["hard plate"], units) for units in ("inch", "metric"))

    assert "tenths" in inch.cuts[-2].depth or "thou" in inch.cuts[-2].depth
    assert inch.cuts[0].share == metric.cuts[0].share


def test_the_same_job_gives_the_same_bytes_in_any_order_of_its_facts() -> None:
    case = job("hard plate")
    turned = replace(case, given=dict(reversed(list(case.given.items()))))

    assert (
        review_text(reviewed(case), full=True).split("LOOSE")[0]
        == (review_text(reviewed(turned), full=True).split("LOOSE")[0])
    )
