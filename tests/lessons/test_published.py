"""T9 and T10 through the product: cases closed in a shop folder, learned, shown and ranked by.

T9: Heckerman, A tutorial on learning with Bayesian networks (1995), thumbtack: Beta(7, 3), then 3
heads and 7 tails, gives .50. T10: Dirichlet mean with equivalent sample size 10, worked out here.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from diagnose.lessons.rates import learned, learned_shares
from tests.cli.running import Cli
from tests.lessons.drawn import BARS, BELT, BURN, COOLANT, FLOOR, WHEEL, closed_case, put_closed
from tests.small import change, copy_small

BACKGROUND, UNLISTED = 0.03, 0.10 * 0.30


@pytest.fixture
def knowledge(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, cli: Cli) -> Path:  # noqa: ARG001 - set up first
    folder = copy_small(tmp_path)
    monkeypatch.setattr("diagnose.book.locate.knowledge_folder", lambda: folder)
    return folder


def test_beta_and_dirichlet_means() -> None:
    assert learned(0.7, 3, 10) == pytest.approx(0.50)
    assert learned_shares([0.5, 0.3, 0.2], [2, 5, 3], 10) == pytest.approx([0.35, 0.40, 0.25])


def test_t9_a_sign_seen_3_times_of_10_where_the_book_says_7(
    cli: Cli, knowledge: Path, tmp_path: Path
) -> None:
    change(knowledge, "causes/coolant/coolant-misses-the-cut.yaml",
           "finding: thin-stream, how_often: almost always",
           "finding: thin-stream, how_often: 0.7")  # fmt: skip
    for number in range(10):
        seen = {"coolant-stream": "thin" if number < 3 else "full"}
        put_closed(tmp_path / "shop", closed_case((COOLANT,), (BURN,), seen), f"{number}")

    shown = json.loads(cli("lessons", "learn", "--json").out)

    rows = [r for g in shown["groups"] if g["kind"] == "signs" for r in g["rows"]]
    (row,) = [r for r in rows if r["finding"] == "thin-stream"]
    assert (row["so"], row["cases"], row["before"]) == (3, 10, 0.7)
    assert row["after"] == pytest.approx(0.50)
    assert "70 % -> 50 %, 3 of 10 cases" in cli("lessons").out


def test_t10_counts_2_5_3_around_shares_of_5_3_2(cli: Cli, knowledge: Path, tmp_path: Path) -> None:
    for name, word, prior in _priors_that_act({WHEEL: 0.5, BELT: 0.3, FLOOR: 0.2}):
        file = next(knowledge.glob(f"causes/*/{name}.yaml")).relative_to(knowledge)
        change(knowledge, file.as_posix(), f"how_common: {word}", f"how_common: {prior!r}")
    for name, number in ((WHEEL, 2), (BELT, 5), (FLOOR, 3)):
        for each in range(number):
            put_closed(tmp_path / "shop", closed_case((name,)), f"{name} {each}")
    before = _ranked(cli)

    shown = json.loads(cli("lessons", "learn", "--json").out)

    (group,) = [g for g in shown["groups"] if g["complaint"] == [BARS]]
    after = {r["cause"]: r["after"] for r in group["rows"]}
    assert before == pytest.approx({WHEEL: 0.5, BELT: 0.3, FLOOR: 0.2})
    assert {r["cause"]: r["so"] for r in group["rows"]} == {WHEEL: 2, BELT: 5, FLOOR: 3}
    assert after == pytest.approx({WHEEL: 0.35, BELT: 0.40, FLOOR: 0.25})
    assert _ranked(cli) == pytest.approx(after, abs=1e-4)

    cli("lessons", "revert")

    assert _ranked(cli) == pytest.approx(before)


def _ranked(cli: Cli) -> dict[str, float]:
    told = json.loads(cli("rank", "--complaint", BARS, "--json").out)
    return {c["id"]: c["probability"] for c in told["causes"] if c["id"] in (WHEEL, BELT, FLOOR)}


def _priors_that_act(shares: dict[str, float]) -> list[tuple[str, str, float]]:
    """Priors at which these are the chances of acting, complaint alone: bisection on P(complaint).

    P(complaint) = Z, each cause acts with s Z, and Z = 1 - (1 - b) prod(1 - s Z).
    """
    totals = {WHEEL: ("common", 0.77), BELT: ("occasional", 0.66), FLOOR: ("occasional", 0.66)}
    low, high = 1e-6, 1.0
    for _ in range(200):
        z = (low + high) / 2
        made = 1.0 - (1.0 - BACKGROUND) * (1.0 - UNLISTED)
        none = 1.0 - made
        for share in shares.values():
            none *= 1.0 - share * z
        low, high = (z, high) if 1.0 - none > z else (low, z)
    net = {name: (total - BACKGROUND) / (1.0 - BACKGROUND) for name, (_, total) in totals.items()}
    return [(name, totals[name][0], shares[name] * z / net[name]) for name in shares]
