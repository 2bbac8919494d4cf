"""The page: one sound file that says everything the view says, and nothing from outside."""

from __future__ import annotations

import dataclasses
import re
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from diagnose.report.figures_shares import chance_of, odds_words
from diagnose.report.page import render_page
from diagnose.view.result import ResultView, minutes, percent
from tests.report.reading import Fact, facts, local, parsed, said
from tests.report.views import LUMPY, NOT_ASKED, PLAN, bare_view, calm_view, rich_view

VIEWS = {"rich": rich_view, "calm": calm_view, "bare": bare_view}
LIMIT = 300_000  # bytes

# What names a thing inside the program and is not printed, or is printed in other words.
INWARD = {
    *(("ShakerView", name) for name in ("si_low", "si_high")),
    *(("ShakersView", name) for name in ("si_low", "si_high")),
    *(("LimitView", name) for name in ("si", "si_low", "si_high")),
    ("GridView", "si_rows"),
    *((kind, "id") for kind in ("StopView", "CautionView", "FixView", "CheckView")),
    *((kind, "id") for kind in ("FindingView", "ReadingView")),
    ("StopView", "kind"),
    ("NextView", "kind"),
    ("ReasonView", "checks"),
    ("ReasonView", "entries"),
    ("FindingView", "from_"),
    ("ResultView", "unknown_answers"),
    ("ResultView", "complaint_sketches"),
    ("ReadingView", "dimension"),
    ("ReadingView", "si"),
    ("ReadingView", "si_low"),
    ("ReadingView", "si_high"),
}
CHANCES = {
    "probability",
    "cures_alone",
    "present",
    "chance",
    "several_together",
    "none_of_these",
    "degree",
    "also_present",
}
MINUTES = {
    "fix_minutes_first",
    "fix_minutes_practised",
    "minutes_first",
    "minutes_practised",
    "minutes",
    "expected_minutes",
    "quick_minutes",
    "slow_minutes",
}


def shown(fact: Fact) -> str:
    """How a fact reads on the page; empty for what is not printed as such."""
    if isinstance(fact.value, bool) or (fact.of, fact.field) in INWARD:
        return ""
    if isinstance(fact.value, str):
        return " ".join(fact.value.split())
    if fact.field in CHANCES:
        return "" if fact.field == "degree" and fact.value == 1 else percent(fact.value)
    if fact.field in MINUTES:
        return minutes(fact.value)
    if fact.field == "share":
        return odds_words(fact.value)
    if fact.field in ("log_odds_before", "log_odds_after"):
        return percent(chance_of(fact.value))
    if fact.field in ("first_in", "of"):
        return str(fact.value)
    if (fact.of, fact.field) == ("EntryView", "round"):
        return f"round {fact.value}" if fact.value > 1 else ""
    if (fact.of, fact.field) == ("EntryView", "number"):
        return str(fact.value) if fact.value else "set-up"
    raise AssertionError(f"no rule says how {fact.of}.{fact.field} is printed")


def told_by(view: ResultView) -> list[Fact]:
    """The facts the page owes its reader.

    Complaint ids are inward, and a cause without reasons has no odds to show.
    """
    listed = dataclasses.replace(
        view,
        complaint=tuple(("", name) for _, name in view.complaint),
        causes=tuple(
            c if c.reasons_for or c.reasons_against else dataclasses.replace(c, **_odds_of(view))
            for c in view.causes
        ),
    )
    return list(facts(listed))


def _odds_of(view: ResultView) -> dict[str, float]:
    first = view.causes[0]
    return {"log_odds_before": first.log_odds_before, "log_odds_after": first.log_odds_after}


@pytest.fixture(params=VIEWS, scope="module")
def view(request: pytest.FixtureRequest) -> ResultView:
    return VIEWS[request.param]()


@pytest.fixture(scope="module")
def page(view: ResultView) -> str:
    return render_page(view)


@pytest.fixture(scope="module")
def tree(page: str) -> ElementTree.Element:
    return parsed(page)


def test_every_fact_of_the_view_is_on_the_page(view: ResultView, tree: ElementTree.Element) -> None:
    """Names, percentages, minutes, sources: whatever the view holds can be read."""
    text = said(tree)
    missing = {f for f in told_by(view) if shown(f) not in text}
    if not view.plan.cure:
        missing = {f for f in missing if f.of != "PlanView"}
    if not view.causes:
        missing = {f for f in missing if f.field not in ("several_together", "none_of_these")}
    assert not missing


def test_nothing_comes_from_outside_and_nothing_runs(page: str, tree: ElementTree.Element) -> None:
    """No address, no script, no frame, no form, no picture file; links stay on the page."""
    assert not re.search(r"https?:|//|@import|url\(|data:", page)
    banned = {"script", "link", "img", "iframe", "form", "object", "embed", "base", "use", "image"}
    assert not banned & {local(e.tag) for e in tree.iter()}
    attributes = {(local(n), v) for e in tree.iter() for n, v in e.attrib.items()}
    assert all(v.startswith("#") for n, v in attributes if n == "href")
    assert not {n for n, _ in attributes if n.startswith("on") or n in ("src", "style")}


def test_links_arrive_and_every_place_has_one_name(tree: ElementTree.Element) -> None:
    names = [e.attrib["id"] for e in tree.iter() if "id" in e.attrib]
    assert len(names) == len(set(names))
    wanted = {e.attrib["href"][1:] for e in tree.iter("a")}
    for element in tree.iter():
        for attribute in ("aria-labelledby", "aria-describedby"):
            wanted |= set(element.attrib.get(attribute, "").split())
    assert wanted <= set(names)


def test_headings_go_down_one_step_at_a_time(tree: ElementTree.Element) -> None:
    levels = [int(local(e.tag)[1]) for e in tree.iter() if re.fullmatch("h[1-6]", local(e.tag))]
    assert levels.count(1) == 1
    assert levels[0] == 1
    assert all(b <= a + 1 for a, b in pairwise(levels))


def test_the_tables_and_drawings_can_be_heard(tree: ElementTree.Element) -> None:
    """A table has a caption and scoped headings; a drawing has a title or is left unspoken."""
    for table in tree.iter("table"):
        assert next(local(e.tag) for e in table) == "caption"
        assert all(e.attrib.get("scope") in ("row", "col") for e in table.iter("th"))
    for drawing in (e for e in tree.iter() if local(e.tag) == "svg"):
        if drawing.attrib.get("aria-hidden") != "true":
            assert [local(e.tag) for e in drawing][:2] == ["title", "desc"]
            assert drawing.attrib["role"] == "img"


def test_the_page_is_small(page: str) -> None:
    assert len(page.encode("utf-8")) < LIMIT


def test_a_long_case_still_fits() -> None:
    """Eight causes with nine reasons each, sixty answers, forty readings, six open checks."""
    view = rich_view()
    long = rich_view(
        causes=tuple(
            dataclasses.replace(c, reasons_for=c.reasons_for * 3) for c in view.causes * 2
        ),
        entries=view.entries * 7,
        readings=view.readings * 7,
        not_asked=(NOT_ASKED,) * 6,
        plan=dataclasses.replace(PLAN, cure=PLAN.cure * 2),
    )
    page = render_page(long)
    assert len(page.encode("utf-8")) < LIMIT
    names = re.findall(r' id="([^"]+)"', page)
    assert len(names) == len(set(names))


def test_a_stop_is_said_before_anything_else() -> None:
    """In words, in the title of the window too, and before the likely cause."""
    tree = parsed(render_page(rich_view()))
    text = said(tree)
    assert text.index("Stop The wheel may be cracked") < text.index("Most likely:")
    assert text.index("Put the part aside The part shows") < text.index("Most likely:")
    assert tree.findtext("head/title", "").startswith("STOP: ")


def test_a_hold_alone_does_not_say_stop() -> None:
    tree = parsed(render_page(rich_view(stops=rich_view().stops[1:])))
    assert tree.findtext("head/title", "").startswith("PUT ASIDE: ")
    assert "Stop The" not in said(tree)


def test_without_a_stop_nothing_looks_like_one() -> None:
    page = render_page(calm_view())
    assert 'class="stop' not in page
    assert "Nothing that needs the wheel turning yet" not in page


def test_cautions_stand_before_the_step_they_belong_to() -> None:
    text = said(parsed(render_page(calm_view())))
    first = text.index("First, do this")
    assert text.index("Ring-test the wheel") < first < text.index("Balance the wheel", first)
    aid = text.index("First aid, to go on tonight")
    assert text.index("Wear eye protection", aid) < text.index("Dress the wheel quickly", aid)
    cure = text.index("Step 1 Balance the wheel")
    care, need = text.index("Ring-test the wheel", cure), text.index("True the wheel first", cure)
    assert care < need < text.index("Proof: The next test block shows no bars", need)


def test_a_withheld_step_is_named_only() -> None:
    """Even when its instructions were left in the view, they are not printed."""
    held = dataclasses.replace(PLAN.cure[0], withheld=True)
    text = said(parsed(render_page(rich_view(plan=dataclasses.replace(PLAN, cure=(held,))))))
    assert "Step 1 Balance the wheel on its flange" in text
    assert "Answer the gate question first; the steps come then." in text
    assert "True the wheel first" not in text
    assert held.proof not in text


def test_a_turning_check_waits_for_the_safety_questions() -> None:
    waits = "Not before the safety questions are answered"
    assert waits in said(parsed(render_page(rich_view())))
    assert waits not in said(parsed(render_page(calm_view())))


def test_each_reason_leads_to_its_answer() -> None:
    tree = parsed(render_page(rich_view()))
    places = {e.attrib["id"]: said(e) for e in tree.iter() if "id" in e.attrib}
    why = next(e for e in tree.iter("section") if e.attrib.get("id") == "why")
    shares = next(e for e in why.iter("ul") if e.attrib.get("class") == "shares")
    ends = [places[a.attrib["href"][1:]] for a in shares.iter("a")]
    assert [e.split()[0] for e in ends] == ["3", "4", "2", "Which", "6"]


def test_a_cause_without_reasons_shows_no_odds() -> None:
    lone = dataclasses.replace(LUMPY, reasons_for=(), reasons_against=())
    assert "Before the answers" not in render_page(rich_view(causes=(lone,)))


def test_nothing_is_hidden_in_a_fold() -> None:
    """A closed fold does not print."""
    assert "<details" not in render_page(rich_view())


def test_the_same_view_gives_the_same_page() -> None:
    assert render_page(rich_view()) == render_page(rich_view())
