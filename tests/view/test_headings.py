"""Every entry of the shipped knowledge is explained under all headings of its kind."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

import pytest

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from diagnose.reasoning.graph import complaints_shown
from diagnose.view import explanation
from diagnose.view.explain_parts import ALIKE, CARE, HEADINGS_OF_A_CAUSE, LESSON, NEXT, WHERE, WHY
from diagnose.view.explanation import ALWAYS, explain, headings_of, look_up, near_names, shelves

WHOLE = ("cause", "symptom", "mechanism")


@cache
def shipped() -> Book:
    return load_book(knowledge_folder())


def missing(kind: str) -> list[str]:
    """What has no lines under a heading that its kind must have."""
    return [
        f"{name}: {heading}"
        for name in shelves(shipped())[kind]
        for told in [dict(explain(shipped(), kind, name).sections)]
        for heading in ALWAYS[kind]
        if not any(line.strip() for line in told.get(heading, ()))
    ]


@pytest.mark.parametrize("kind", ALWAYS)
def test_nothing_lacks_a_heading_of_its_kind(kind: str) -> None:
    assert len(shelves(shipped())[kind]) > 0
    assert missing(kind) == []


def test_causes_complaints_and_mechanisms_have_all_seven() -> None:
    assert len(HEADINGS_OF_A_CAUSE) == 7
    assert all(ALWAYS[kind] == HEADINGS_OF_A_CAUSE for kind in WHOLE)
    assert set(ALWAYS) == set(shelves(shipped()))


def test_a_caution_that_does_not_say_why_would_be_found(monkeypatch: pytest.MonkeyPatch) -> None:
    """The test above can fail: without its reason a caution lacks a heading."""

    def silent(book: Book, name: str) -> dict[str, list[str]]:
        return {**about(book, name), WHY: [""]}

    about: Callable[..., dict[str, list[str]]] = explanation._ABOUT["caution"]  # type: ignore[assignment]  # one of several
    monkeypatch.setitem(explanation._ABOUT, "caution", silent)
    assert len(missing("caution")) == len(shipped().cautions)


@pytest.mark.parametrize("kind", ALWAYS)
def test_headings_come_in_the_order_of_the_kind(kind: str) -> None:
    for name in list(shelves(shipped())[kind])[:20]:
        told = [heading for heading, _ in explain(shipped(), kind, name).sections]
        assert told == [h for h in headings_of(kind) if h in told]


def test_a_cause_tells_the_roads_to_the_complaints_it_shows_and_no_other() -> None:
    book = shipped()
    for cause in book.causes.values():
        own = {book.symptoms[s].name for s in complaints_shown(book, cause.id)}
        roads = [r for r in dict(explain(book, "cause", cause.id).sections)[WHY] if " -> " in r]
        ends = {s.name for s in book.symptoms.values() if any(_ends_with(r, s.name) for r in roads)}
        assert ends <= own, cause.id
        assert len(roads) <= len(own), cause.id


def _ends_with(road: str, name: str) -> bool:
    return road.rsplit(" -> ", 1)[-1].startswith(f"{name} (")


def test_most_causes_tell_at_least_one_road() -> None:
    book = shipped()
    roads = [
        any(" -> " in line for line in dict(explain(book, "cause", c).sections)[WHY])
        for c in book.causes
    ]
    assert sum(roads) == len(roads)


@pytest.mark.parametrize(
    ("words", "key"),
    [
        ("lay", "lay"),
        ("dress lead", "dress-lead"),
        ("overlap", "overlap"),
        ("spark-out", "spark-out"),
        ("crossfeed", "crossfeed-step"),
        ("grade", "grade"),
        ("structure", "structure"),
        ("truing", "truing"),
        ("glazed", "glazed"),
        ("loaded", "loaded"),
        ("silicon carbide", "abrasive-kind"),
        ("TIR", "run-out-word"),
    ],
)
def test_words_of_the_trade_are_found(words: str, key: str) -> None:
    assert ("term", key) in look_up(shipped(), words)


def test_a_word_and_a_complaint_of_one_name_are_both_told() -> None:
    assert {kind for kind, _ in look_up(shipped(), "chatter")} == {"term", "symptom"}


@pytest.mark.parametrize(
    ("words", "near"),
    [
        ("dress leed", "dress-lead"),
        ("burn margn", "burn-margin"),
        ("lok out first", "lock-out-first"),
    ],
)
def test_near_names_of_every_kind_are_offered(words: str, near: str) -> None:
    assert near in near_names(shipped(), words)


def test_a_mechanism_names_its_experiments_and_what_it_is_mistaken_for() -> None:
    told = dict(explain(shipped(), "mechanism", "magnet-flattens-the-bow").sections)
    assert any("show-the-bow-under-the-magnet" in line for line in told[LESSON])
    assert "one skin pulls more than the other" in told[ALIKE]


def test_a_caution_says_where_it_stands_and_a_word_what_to_read_next() -> None:
    caution = dict(explain(shipped(), "caution", "weights-held-captive").sections)
    assert any("Balance" in line for line in caution[WHERE])
    assert caution[CARE] == (shipped().cautions["weights-held-captive"].say,)
    term = dict(explain(shipped(), "term", "glazed").sections)
    assert any("diagnose explain wheel-glazes" in line for line in term[NEXT])
