"""Experiments for a lesson: what they show, and that none of them is made unsafe."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from diagnose.view.experiments import experiments, experiments_text
from diagnose.view.explain_card import BEFORE, NEVER, SEEN, SHOWS
from diagnose.view.explanation import explain
from tests.small import copy_small, faults

EXPERIMENT = """\
id: show-the-shake
name: Show the shake
experiment_for: [wheel-lifts-once-a-turn]
use_when: [somebody shall see it]
not_when: [it is strong]
minutes: {first_time: 10, practised: 5}
needs: [wheel-turning]
steps:
  - {do: start it, why: it turns, check_by: a hum, cautions: [stand-aside-at-start], source: common-practice}
  - {do: look, why: it is the lesson, check_by: it was seen, source: common-practice}
see: [rings on the water]
never: [touch the wheel]
proof: The learner says why.
sources: [common-practice]
"""  # noqa: E501 - a file as people write it


@cache
def shipped() -> Book:
    return load_book(knowledge_folder())


def said(tmp_path: Path, old: str, new: str) -> str:
    folder = copy_small(tmp_path)
    (folder / "cards").mkdir()
    assert old in EXPERIMENT
    text = EXPERIMENT.replace(old, new, 1)
    (folder / "cards/show-the-shake.yaml").write_text(text, encoding="utf-8")
    return "; ".join(f"{p.what} {p.mend}" for p in faults(folder))


def test_an_experiment_is_read_whole(tmp_path: Path) -> None:
    assert said(tmp_path, "id:", "id:") == ""


@pytest.mark.parametrize(
    ("old", "new", "fault"),
    [
        ("never: [touch the wheel]\n", "", "an experiment has no 'never:'"),
        ("see: [rings on the water]\n", "", "an experiment has no 'see:'"),
        ("[wheel-turning]", "[wheel-turning, guard-open]", "with the guard open"),
        ("[stand-aside-at-start]", "[lock-out-first]", "nobody is told to stand aside"),
        ("experiment_for: [wheel-lifts-once-a-turn]\n", "", "only an experiment has 'see:'"),
        ("[wheel-lifts-once-a-turn]", "[wheel-lifts]", "there is no mechanism 'wheel-lifts'"),
    ],
)
def test_an_unsafe_or_half_experiment_is_refused(
    tmp_path: Path, old: str, new: str, fault: str
) -> None:
    assert fault in said(tmp_path, old, new)


def test_there_are_twelve_good_ones_at_least() -> None:
    found = experiments(shipped())
    assert len(found) >= 12
    assert len({m for e in found for m in e.shows}) >= 12
    assert [e.wheel for e in found].index("wheel turning") > len(found) // 2


@pytest.mark.parametrize("name", [c.id for c in shipped().cards.values() if c.is_experiment])
def test_every_experiment_is_safe_by_construction(name: str) -> None:
    """Never with the guard open; hands near the wheel only with the power locked out; what turns
    is started from aside and only after the safety questions."""
    card = shipped().cards[name]
    told = dict(explain(shipped(), "card", name).sections)
    assert "guard-open" not in card.needs
    assert told[SHOWS]
    assert told[SEEN]
    assert len(told[NEVER]) >= 2
    if "wheel-turning" in card.needs:
        assert "stand-aside-at-start" in card.cautions
        assert "coasting-wheel-is-silent" in card.cautions
        assert any("before-anything-runs" in line for line in told[BEFORE])
    elif "power-locked-out" in card.needs:
        assert {"lock-out-first", "coasting-wheel-is-silent"} <= set(card.cautions)
    else:
        assert BEFORE not in told


def test_the_care_comes_before_the_step_that_needs_it() -> None:
    card = shipped().cards["show-the-dress-thread"]
    first_start = next(s for s in card.steps if "start" in s.do)
    assert "stand-aside-at-start" in first_start.cautions
    assert "dresser-held-and-removed" in first_start.cautions


def test_the_list_names_every_experiment_and_where_to_read_it() -> None:
    text = experiments_text(experiments(shipped()))
    assert all(f"diagnose explain {e.id}" in text for e in experiments(shipped()))
    assert experiments_text(()) == "The book has no experiments."
