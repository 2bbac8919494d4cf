"""What differs from the last job that came out well on this machine and metal."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from diagnose.case.entries import Case, Closed, Entry
from diagnose.review.against import is_setting, last_good
from diagnose.review.build import review_view
from diagnose.review.review import review
from diagnose.shop.cards import Shop
from diagnose.shop.closed import Kept
from diagnose.shop.healthy import Healthy
from diagnose.view.review import AgainstView
from tests.review.jobs import book, job, shop


def kept(date: str, machine: str = "north-grinder", cured: bool = True, **facts: str) -> Kept:
    """A closed case with these facts."""
    told = {k.replace("_", "-"): v for k, v in facts.items()}
    cure = ("wheel-left-undressed",) if cured else ()
    case = Case(
        f"job of {date}",
        ("burnt-patches",),
        (Entry("answer", "dress-seconds", "9 s"),),
        machine=machine,
        given={"work-material": "soft-steel", **told},
        closed=Closed(date, cure),
    )
    return Kept(case, Path(f"closed/{date}.yaml"))


def against(*closed: Kept, here: Shop | None = None, **changes: str) -> AgainstView:
    found = review(book(), job("soft block", **changes), here or shop(), "metric", closed)
    told = review_view(book(), found, date="2026-03-14").against
    assert told is not None
    return told


def test_every_setting_that_differs_is_listed_and_no_other() -> None:
    told = against(
        kept("2026-02-01", crossfeed="0.5 mm", table_speed="12 m/min", wet_or_dry="dry"),
        dress_seconds="20 s",
    )

    assert {d.name for d in told.differs} == {
        book().checks[n].name for n in ("crossfeed", "wet-or-dry", "dress-seconds")
    }
    assert told.same > 3
    times = {d.name: d.times for d in told.differs}
    assert times[book().checks["crossfeed"].name] == "4 times"


def test_the_latest_good_one_of_this_machine_and_metal_counts() -> None:
    closed = (
        kept("2026-03-01", cured=False, crossfeed="0.1 mm"),
        kept("2026-02-20", machine="south-grinder", crossfeed="0.2 mm"),
        kept("2026-02-10", work_material="hardened-steel", crossfeed="0.3 mm"),
        kept("2026-02-01", crossfeed="0.4 mm"),
        kept("2026-01-01", crossfeed="0.5 mm"),
    )

    told = against(*closed)

    assert told.date == "2026-02-01"
    assert told.case == "2026-02-01"


def test_what_was_set_then_and_not_said_now_is_listed_apart() -> None:
    told = against(kept("2026-02-01", saddle_lock="the-same-both-times"))

    assert book().checks["saddle-lock"].name in {n.name for n in told.not_planned}


def test_without_a_case_the_healthy_record_stands_in_and_else_it_says_so() -> None:
    good = Healthy("north-grinder", "2026-01-10", answers={"crossfeed": "0.5 mm"})
    record = replace(shop(), healthy={"north-grinder": good})

    told = against(here=record)
    assert told.date == "2026-01-10"
    assert [d.good for d in told.differs] == ["0.5 mm"]
    assert "healthy record" in told.note
    nothing = against(here=replace(shop(), healthy={}))
    assert nothing.differs == ()
    assert "no closed case" in nothing.note


def test_no_sign_and_no_hazard_is_taken_for_a_setting() -> None:
    assert is_setting(book(), "crossfeed")
    assert is_setting(book(), "wet-or-dry")
    assert not is_setting(book(), "wheel-glass")
    assert not is_setting(book(), "before-anything-runs")
    assert not is_setting(book(), "half-the-cut")


def test_a_case_of_another_machine_is_never_the_last_good_one() -> None:
    told = {"work-material": "soft-steel"}

    assert last_good(book(), Shop(), "", told, [kept("2026-02-01", machine="")]) is None
