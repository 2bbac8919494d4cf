"""Rules that share nothing run apart and are remembered; the result is that of all together."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cache

from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.book.conditions import FactValue
from diagnose.book.kept import load_kept
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from diagnose.case.entries import Case, Entry
from diagnose.reasoning.facts import gather
from diagnose.reasoning.forward import apart, deduce, deduce_in_turn, select
from diagnose.reasoning.ground import ground
from diagnose.reasoning.network import meanings, surest


@cache
def book() -> Book:
    """The shipped knowledge."""
    return load_kept(knowledge_folder())


@st.composite
def told(draw: st.DrawFn) -> Mapping[str, FactValue]:
    """What some answers say: options at random, numbers as their checks give an example."""
    names = draw(st.lists(st.sampled_from(sorted(book().checks)), max_size=30, unique=True))
    entries = []
    for name in names:
        check = book().checks[name]
        if check.kind == "number":
            entries.append(Entry("answer", name, check.example))
        elif check.options:
            option = draw(st.sampled_from([o.id for o in check.options]))
            entries.append(Entry("answer", name, option))
    gathered = gather(Case("", (), tuple(entries)), book())
    return {n: t.value for n, t in gathered.told.items()} | surest(meanings(book(), gathered))


@given(told())
@settings(max_examples=40, deadline=None)
def test_lots_apart_give_what_the_rules_give_one_by_one(facts: Mapping[str, FactValue]) -> None:
    assert deduce(book(), facts) == deduce_in_turn(book(), facts)


@given(told())
@settings(max_examples=40, deadline=None)
def test_no_lot_gives_what_another_needs_or_gives(facts: Mapping[str, FactValue]) -> None:
    made = ground(book())
    lots = apart(book(), select(book(), facts))
    assert sorted(r.id for lot in lots for r in lot) == [r.id for r in select(book(), facts)]
    gives = [{f for r in lot for f in made.gives[r.id]} for lot in lots]
    needs = [{f for r in lot for f in made.needed[r.id]} for lot in lots]
    for n, given_ in enumerate(gives):
        others = [*gives[:n], *gives[n + 1 :], *needs[:n], *needs[n + 1 :]]
        assert not any(given_ & other for other in others)


@given(told())
@settings(max_examples=20, deadline=None)
def test_what_is_remembered_is_what_a_fresh_book_gives(facts: Mapping[str, FactValue]) -> None:
    fresh = replace(book())
    assert deduce(book(), facts) == deduce(fresh, facts)
