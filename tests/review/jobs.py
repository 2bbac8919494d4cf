"""Planned jobs of an invented shop: four that are sound, and mistakes planted in them."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from diagnose.case.entries import Case
from diagnose.case.planned import Planned
from diagnose.review.build import review_view
from diagnose.review.review import review
from diagnose.shop.cards import Shop, load_shop
from diagnose.view.review import ReviewView

SHARED = Path(__file__).parents[2] / "shared"
DAY = "2026-03-14"


@cache
def book() -> Book:
    """The shipped knowledge, loaded once."""
    return load_book(knowledge_folder())


@cache
def shop() -> Shop:
    """The invented shop."""
    return load_shop(SHARED, book())


@cache
def safe() -> dict[str, str]:
    """Every safety question answered so that its hazards are cleared."""
    answers = {}
    for name in {stop.asked_by for stop in book().stops.values()}:
        check = book().checks[name]
        clearing = [o.id for o in check.options if o.clears and not o.raises]
        if clearing and name != "work-material":
            answers[name] = clearing[0]
    return answers


def job(name: str, **changes: str) -> Case:
    """A sound job with some answers changed; `wheel` and the fields of `planned` as well."""
    base = SOUND[name]
    assert base.planned is not None
    wheel = changes.pop("wheel", base.wheel)
    told = {k: changes.pop(k) for k in list(changes) if k in Planned.__dataclass_fields__}
    facts = {key.replace("_", "-"): value for key, value in changes.items()}
    given = {**safe(), **base.given, **facts}
    return replace(base, wheel=wheel, planned=replace(base.planned, **told), given=given)


def reviewed(case: Case, units: str = "metric") -> ReviewView:
    """The view of a job in the invented shop."""
    return review_view(book(), review(book(), case, shop(), units), units=units, date=DAY)


def case_of(title: str, machine: str, wheel: str, planned: Planned, given: dict[str, str]) -> Case:
    return Case(title, (), machine=machine, wheel=wheel, planned=planned, given=given)


SOUND = {
    "soft block": case_of(
        "spacer block, mild steel",
        "north-grinder",
        "pink-46-i",
        Planned(finish="0.6 um", tolerance="0.01 mm", size="30 mm"),
        {
            "work-material": "soft-steel",
            "part-length": "100 mm",
            "part-base": "50 mm",
            "part-thickness": "30 mm",
            "wet-or-dry": "wet",
            "table-speed": "12 m/min",
            "depth-of-cut": "0.01 mm",
            "crossfeed": "2 mm",
            "dress-seconds": "7 s",
            "dress-depth": "0.012 mm",
            "spark-out-strokes": "3",
            "wiped-and-stoned": "wiped-and-stoned-both",
        },
    ),
    "hard plate": case_of(
        "punch plate, hardened",
        "north-grinder",
        "white-46-h",
        Planned(finish="0.4 um", tolerance="0.005 mm", hardness="60 HRC", metal="hardened-steel"),
        {
            "part-length": "120 mm",
            "part-base": "40 mm",
            "part-thickness": "25 mm",
            "wet-or-dry": "wet",
            "table-speed": "12 m/min",
            "depth-of-cut": "0.01 mm",
            "crossfeed": "1.5 mm",
            "dress-seconds": "12 s",
            "dress-depth": "0.01 mm",
            "spark-out-strokes": "3",
        },
    ),
    "thin strip": case_of(
        "shim strip",
        "south-grinder",
        "pink-46-i",
        Planned(finish="0.8 um", tolerance="0.02 mm"),
        {
            "work-material": "soft-steel",
            "part-length": "150 mm",
            "part-base": "25 mm",
            "part-thickness": "6 mm",
            "wet-or-dry": "dry",
            "table-speed": "10 m/min",
            "depth-of-cut": "0.005 mm",
            "crossfeed": "1 mm",
            "dress-seconds": "5 s",
            "dress-depth": "0.012 mm",
            "spark-out-strokes": "2",
            "sides-ground": "both-in-turn",
        },
    ),
    "iron bracket": case_of(
        "bracket, grey iron",
        "north-grinder",
        "",
        Planned(finish="0.8 um", metal="grey-iron"),
        {
            "wheel-abrasive": "silicon-carbide",
            "wheel-grit": "coarse-36-or-less",
            "wheel-grade": "h-to-j",
            "wheel-structure": "six-to-eight",
            "wheel-diameter": "178 mm",
            "wheel-width": "13 mm",
            "marked-turning-speed": "3600 rpm",
            "wheel-mark": "can-be-read",
            "part-length": "100 mm",
            "part-base": "60 mm",
            "part-thickness": "40 mm",
            "wet-or-dry": "wet",
            "table-speed": "12 m/min",
            "depth-of-cut": "0.015 mm",
            "crossfeed": "2.5 mm",
            "dress-seconds": "6 s",
            "dress-depth": "0.02 mm",
            "spark-out-strokes": "2",
        },
    ),
}
