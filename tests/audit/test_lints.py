"""Every lint has an id, a page, and examples: the good one passes, the bad one is found."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.audit import lints as folder
from diagnose.audit.lint import Lint
from diagnose.audit.linting import Alarm, lint_of, lints, look_over, named
from diagnose.book.loader import load_book
from diagnose.book.problems import BookError
from diagnose.reasoning.belief import WIDEST
from tests.audit.sound import sound

ALL = pytest.mark.parametrize("lint", lints(), ids=lambda lint: lint.id)


NARROW = {"too-wide": 4}  # the small knowledge is never wide: a small bound stands in


def alarms(base: Path, lint: str = "") -> list[Alarm]:
    """What the reading and the lints find in a folder."""
    try:
        book = load_book(base)
    except BookError as error:
        return named(error.problems)
    return look_over(book, [base], widest=NARROW.get(lint, WIDEST))


def put(lint: Lint, text: str, tmp_path: Path) -> Path:
    """A copy of the sample knowledge with `text` in place of the lint's good example."""
    base = sound(tmp_path)
    path = base / lint.file
    if not lint.good:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
        return base
    before = path.read_text(encoding="utf-8")
    assert before.count(lint.good) == 1, f"{lint.id}: its good example is not in {lint.file}"
    path.write_text(before.replace(lint.good, text), encoding="utf-8")
    return base


def test_there_are_enough_lints_and_each_lies_in_a_module_of_its_name() -> None:
    files = {p.stem for p in Path(folder.__path__[0]).glob("*.py")} - {"__init__"}
    assert {lint.id.replace("-", "_") for lint in lints()} == files
    assert sum(lint.look is not None for lint in lints()) >= 28


@ALL
def test_a_lint_is_explained(lint: Lint) -> None:
    assert lint_of(lint.id) is lint
    assert len(lint.page.split()) >= 15
    assert lint.good != lint.bad
    assert (lint.look is None) == bool(lint.known_by)


@ALL
def test_the_bad_example_is_found_where_it_stands(lint: Lint, tmp_path: Path) -> None:
    base = put(lint, lint.bad, tmp_path)
    found = [a.problem for a in alarms(base, lint.id) if a.lint == lint.id]
    assert found
    assert any(p.file == f"knowledge/{lint.found_in or lint.file}" for p in found)
    assert all(p.what and (p.mend or p.suggestion) for p in found)


@ALL
def test_the_good_example_is_let_be(lint: Lint, tmp_path: Path) -> None:
    base = sound(tmp_path)
    if lint.good:
        assert lint.good in (base / lint.file).read_text(encoding="utf-8")
    assert lint.id not in {a.lint for a in alarms(base, lint.id)}


def test_a_sound_knowledge_raises_no_alarm(tmp_path: Path) -> None:
    assert [a.render() for a in alarms(sound(tmp_path))] == []
