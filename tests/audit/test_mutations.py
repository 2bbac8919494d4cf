"""Faults seeded into copies of the shipped knowledge are found at the right line.

`python -m tests.audit.seeding 500` prints the figures of the whole run; here a part of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from random import Random

from diagnose.book.locate import knowledge_folder
from tests.audit.meaning import another_claim, meaning, same
from tests.audit.mutate import mutate, read, write
from tests.audit.seeding import Seeded, report, seeded
from tests.small import small_book

SOME = 30
FILES = sorted(p for p in knowledge_folder().rglob("*.yaml") if "schema" not in p.parts)


@cache
def some() -> Sequence[Seeded]:
    """The first changes of the whole run."""
    return tuple(seeded(SOME))


def test_seeded_faults_are_found_at_the_right_line() -> None:
    faults = [s for s in some() if s.is_fault]
    assert len(faults) >= SOME / 2
    assert sum(s.found for s in faults) >= 0.98 * len(faults) - 1, report(list(some()))


def test_other_claims_are_pointed_at_by_comparing_the_two_versions() -> None:
    claims = [s for s in some() if s.is_claim]
    assert len(claims) >= 2
    assert [s.change.what for s in claims if not s.pointed] == [], report(list(some()))


def test_the_two_looks_together_find_what_changes_the_meaning() -> None:
    changed = [s for s in some() if s.is_fault or s.is_claim]
    assert len(changed) >= SOME / 2
    found = sum(s.found or s.pointed for s in changed)
    assert found >= 0.98 * len(changed) - 1, report(list(some()))


def test_a_change_that_is_not_pointed_at_is_counted_and_listed() -> None:
    claim = next(s for s in some() if s.is_claim)
    elsewhere = replace(claim, found=False, pointed=False)
    text = report([claim, elsewhere])
    assert "other claims found by knowledge compare: 1 of 2, 50.0%" in text
    assert text.count("NOT POINTED AT") == 1


def test_the_lines_of_a_changed_node_are_known_before_and_after() -> None:
    text = "- id: one\n  do: this\n- id: two\n  do: that\n"
    drawn = [mutate(text, Random(n)) for n in range(40)]
    for change in drawn:
        rows = change.plain.splitlines()
        assert change.was_at <= set(range(1, len(rows) + 1))
        assert change.was_at
        assert (change.is_at == frozenset()) == (change.how == "drop")
    assert {c.plain for c in drawn} == {write(read(text))}


def test_every_fault_found_has_a_lint_that_explains_it() -> None:
    nameless = [a.problem.what for s in some() for a in s.alarms if not a.lint]
    assert nameless == []


def test_a_file_written_again_unchanged_says_the_same() -> None:
    for path in FILES[::7]:
        text = path.read_text(encoding="utf-8")
        assert _bare(read(write(read(text)))) == _bare(read(text))


def test_every_way_to_change_a_file_is_drawn_and_changes_it() -> None:
    text = FILES[0].read_text(encoding="utf-8")
    plain, drawn = write(read(text)), set()
    for n in range(60):
        change = mutate(text, Random(n))
        drawn.add(change.how)
        assert change.lines
        assert change.text != plain or change.how == "swap"
    assert drawn == {"drop", "swap", "retype", "rename", "duplicate"}


def test_meaning_passes_over_the_order_of_free_lists_alone() -> None:
    said = meaning(small_book())
    cause = said["causes"]["unbalanced-wheel"]
    turned = {**said, "causes": {**said["causes"], "unbalanced-wheel": {**cause, "fix": {}}}}
    assert same(said, meaning(small_book()))
    assert not same(said, turned)
    assert another_claim(said, turned)


def test_another_number_is_another_claim_and_another_shape_is_a_fault() -> None:
    assert another_claim({"a": 1.0}, {"a": 2.0}) == "another number"
    assert another_claim({"a": ("x", "y")}, {"a": ("x",)}) == "a part left out"
    assert another_claim({"a": "two words"}, {"a": "other words"}) == "other words"
    assert another_claim({"a": ("x",)}, {"a": ("x", "y")}) == ""


def _bare(node: object) -> object:
    kind, parts = getattr(node, "kind", ""), getattr(node, "parts", [])
    if kind == "text":
        return getattr(node, "text", "")
    return [(p[0], _bare(p[1])) if kind == "group" else _bare(p) for p in parts]
