"""A trial can wipe a sign away: what was seen stays seen; to see nothing afterwards is nothing."""

from __future__ import annotations

import pytest

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.case.entries import Case, Entry
from diagnose.reasoning.gates import CLEARED, NOT_CLEARED, RAISED, askable
from diagnose.reasoning.reason import Reasoned, read_case, reason

BOOK = load_book(knowledge_folder())
DRESS = ("rough-re-dress", "comes-back")


def burnt(*answers: tuple[str, str]) -> Case:
    return Case("burnt", ("burnt-patches",), tuple(Entry("answer", n, v) for n, v in answers))


def ranking(result: Reasoned) -> list[tuple[str, float]]:
    return [(r.cause, r.acts) for r in result.belief.ranked]


def only(value: str) -> tuple[float, ...]:
    """Evidence that the wheel face shows this value and no other."""
    values = BOOK.findings["wheel-face"].value_ids
    return tuple(float(v == value) for v in values)


def test_a_wheel_seen_clean_after_a_dress_says_nothing() -> None:
    dressed = reason(BOOK, burnt(DRESS))
    looked = reason(BOOK, burnt(DRESS, ("wheel-glass", "open")))
    assert ranking(looked) == ranking(dressed)


def test_a_wheel_seen_clean_before_a_dress_speaks_against_glazing() -> None:
    plain = reason(BOOK, burnt(DRESS)).network.evidence
    looked = reason(BOOK, burnt(("wheel-glass", "open"), DRESS)).network.evidence
    assert "wheel-face" not in plain
    assert looked["wheel-face"] == only("open")


@pytest.mark.parametrize("after", ["open", "shiny"])
def test_a_wheel_seen_shiny_stays_seen(after: str) -> None:
    result = reason(BOOK, burnt(("wheel-glass", "shiny"), DRESS, ("wheel-glass", after)))
    assert result.network.evidence["wheel-face"] == only("shiny")


def test_what_was_looked_for_once_is_not_looked_for_again() -> None:
    def offered(case: Case) -> set[str]:
        read = read_case(BOOK, case)
        return {c.id for c in askable(BOOK, read.gathered, read.facts)}

    assert "wheel-glass" in offered(burnt())
    assert "wheel-glass" not in offered(burnt(("wheel-glass", "shiny"), DRESS))


def test_a_look_after_the_trial_is_not_valued_for_what_it_cannot_show() -> None:
    result = reason(BOOK, burnt(DRESS))
    found = [c for c in result.valued.candidates if c.check == "wheel-glass"]
    for candidate in found:
        assert list(candidate.outcomes[0].shares) == list(result.valued.now)
    before = next(c for c in reason(BOOK, burnt()).valued.candidates if c.check == "wheel-glass")
    assert list(before.outcomes[0].shares) != list(reason(BOOK, burnt()).valued.now)
    assert found, "the wheel can still be looked at"


def test_a_hazard_is_judged_afresh_each_time() -> None:
    def magnet(*answers: tuple[str, str]) -> str:
        found = read_case(BOOK, burnt(*answers)).hazards
        return next(h.state for h in found if h.stop.id == "magnet-in-doubt")

    reseat = ("wipe-stone-reseat", "same")
    assert magnet(("hold-proved", "stays")) == CLEARED
    assert magnet(("hold-proved", "stays"), reseat) == NOT_CLEARED
    assert magnet(("hold-proved", "stays"), reseat, ("hold-proved", "stays")) == CLEARED
    assert magnet(("hold-proved", "stays"), reseat, ("hold-proved", "moves")) == RAISED
    assert magnet(("hold-proved", "moves"), reseat, ("hold-proved", "stays")) == CLEARED
