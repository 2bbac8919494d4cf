"""The cases of the invented shop come out as their notes say."""

from __future__ import annotations

from functools import cache

import pytest

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder, shared_folder
from diagnose.book.model import Book
from diagnose.case.entries import Entry
from diagnose.case.files import load_case
from diagnose.reasoning.reason import Reasoned, reason
from diagnose.shop.cards import Shop, load_shop

FIRST = {
    "spacer-plate-ripples": "unbalanced-wheel",
    "broad-bands-after-winter": "belt-worn-or-set",
    "hum-since-the-converter": "motor-hum",
    "bars-with-the-compressor": "outside-vibration",
    "punch-plate-burnt-after-dressing": "dressed-too-fine",
    "brown-wheel-glazes": "wheel-grade-too-hard",
    "aluminium-fills-the-wheel": "wheel-wrong-for-the-material",
    "parallel-tapers-once": "debris-under-part",
    "shim-strip-springs-up": "thin-work-pulled-flat",
    "block-hollow-in-the-middle": "ways-worn",
}
BOTH = {
    "half-a-horse-too-much": {"cut-too-deep", "wheel-left-undressed"},
    "blasted-plate-curls-up": {"plate-ground-hot", "stress-let-out-on-one-side"},
}
STOPS = {
    "wheel-stood-in-coolant": {"wheel-soaked"},
    "spindle-too-fast-for-the-wheel": {"spindle-over-the-mark"},
    "tall-block-tipped": {"part-moved", "tall-part-not-blocked"},
    "crack-across-a-burnt-die": {"crack-in-the-part"},
}


@cache
def book() -> Book:
    return load_book(knowledge_folder())


@cache
def shop() -> Shop:
    return load_shop(shared_folder(), book())


@cache
def reasoned(name: str) -> Reasoned:
    case = load_case(shared_folder() / "cases" / f"{name}.yaml", book())
    return reason(book(), case, shop().facts_for(case))


def test_the_cards_of_the_shop_have_no_fault() -> None:
    assert shop().problems == ()
    assert len(shop().machines) >= 2
    assert len(shop().wheels) >= 3


@pytest.mark.parametrize(("name", "cause"), sorted(FIRST.items()))
def test_one_cause_stands_out(name: str, cause: str) -> None:
    top, second = reasoned(name).belief.ranked[:2]
    assert top.cause == cause
    assert top.acts > 0.5
    assert top.acts > 3.0 * second.acts
    assert reasoned(name).read.stops == ()


@pytest.mark.parametrize("name", sorted(BOTH))
def test_two_causes_act_together(name: str) -> None:
    belief = reasoned(name).belief
    assert {r.cause for r in belief.ranked[:2]} == BOTH[name]
    assert belief.several > 0.3


def test_the_wedge_has_the_chuck_first_and_the_dirt_among_the_first_three() -> None:
    ranked = [r.cause for r in reasoned("wedge-since-the-chuck-came-off").belief.ranked]
    assert ranked[0] == "chuck-not-parallel"
    assert "debris-under-part" in ranked[:3]


def test_what_the_book_does_not_list_comes_out_as_none_of_these() -> None:
    belief = reasoned("bars-nothing-explains").belief
    assert belief.none > max(r.acts for r in belief.ranked)


@pytest.mark.parametrize("name", sorted(STOPS))
def test_a_stop_stands(name: str) -> None:
    assert {h.stop.id for h in reasoned(name).read.stops} == STOPS[name]


def test_an_answer_does_not_outweigh_a_speed_worked_out_above_the_mark() -> None:
    name = "spindle-too-fast-for-the-wheel"
    case = load_case(shared_folder() / "cases" / f"{name}.yaml", book())
    claimed = case.with_entry(Entry("answer", "speed-against-mark", "not-faster"))
    read = reason(book(), claimed, shop().facts_for(case)).read
    assert {h.stop.id for h in read.stops} == STOPS[name]
    said = claimed.with_entry(Entry("cleared", "spindle-over-the-mark", "the pink wheel is on"))
    assert reason(book(), said, shop().facts_for(case)).read.stops == ()


def test_every_case_of_the_shop_is_named_here() -> None:
    named = {*FIRST, *BOTH, *STOPS, "wedge-since-the-chuck-came-off", "bars-nothing-explains"}
    assert {p.stem for p in (shared_folder() / "cases").glob("*.yaml")} == named
