"""Cases to practise on: numbers that agree, findings that speak for the cause, honest marks.

`pytest --drills 2000` runs the full count; `python -m tests.drill` prints the figures.
"""

from __future__ import annotations

import math
from functools import cache

import pytest

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from diagnose.drill import usual
from diagnose.drill.draw import Wish, draw_drill, pool
from diagnose.drill.drawn import Drill
from diagnose.drill.hazards import EVERY, has_hazard
from diagnose.drill.pairs import PAIRS
from diagnose.drill.par import best_possible
from diagnose.drill.quick import read_quickly
from diagnose.drill.scoring import passed, score
from diagnose.reasoning.gates import RAISED
from diagnose.reasoning.reason import read_case
from tests.drill.formulas import faults, numbers
from tests.drill.learners import at_random, by_the_list, play, what_tells_most


@cache
def shipped() -> Book:
    return load_book(knowledge_folder())


@pytest.fixture(scope="session")
def drills(request: pytest.FixtureRequest) -> tuple[Drill, ...]:
    count = request.config.getoption("--drills")
    return tuple(draw_drill(shipped(), seed) for seed in range(count))


def test_every_number_satisfies_the_formulas(drills: tuple[Drill, ...]) -> None:
    assert [(d.seed, f) for d in drills for f in faults(shipped(), d)] == []


def test_there_are_numbers_with_units_to_satisfy_them(drills: tuple[Drill, ...]) -> None:
    assert all(len(numbers(shipped(), d)) >= 15 for d in drills)


def test_all_findings_speak_for_the_cause_on_average(drills: tuple[Drill, ...]) -> None:
    gains = [d.after - d.before for d in drills]

    assert sum(gains) / len(gains) > 1.0


def test_few_cases_mislead_and_those_are_marked(drills: tuple[Drill, ...]) -> None:
    marked = [d for d in drills if d.untypical]

    assert len(marked) <= max(2, 0.04 * len(drills))  # one or two may come in a few
    assert all(d.after < d.before for d in marked)
    assert all(d.after >= d.before for d in drills if not d.untypical)


def test_the_same_seed_gives_the_same_case(drills: tuple[Drill, ...]) -> None:
    assert [draw_drill(shipped(), s) for s in range(3)] == list(drills[:3])


def test_one_drill_in_each_four_has_a_hazard() -> None:
    for block in range(50):
        assert sum(has_hazard(EVERY * block + n) for n in range(EVERY)) == 1
    assert {n for n in range(400) if has_hazard(n)} != set(range(0, 400, EVERY))


def test_a_planted_hazard_is_raised_by_its_check_and_no_other_stop_stands(
    drills: tuple[Drill, ...],
) -> None:
    for drill in drills:
        read = read_quickly(shipped(), drill.full_case())
        up = {h.stop.id for h in read.hazards if h.state == RAISED}
        assert up >= ({drill.hazard.stop} if drill.hazard else set())
        assert bool(up) == bool(drill.hazard)


def test_a_case_read_quickly_reads_as_the_product_reads_it(drills: tuple[Drill, ...]) -> None:
    for drill in drills[:4]:
        assert read_quickly(shipped(), drill.full_case()) == read_case(shipped(), drill.full_case())


@pytest.mark.parametrize(
    "family", ["thin-plate-dished", "even-bars-across-travel", "burnt-patches"]
)
def test_a_complaint_can_be_wished_for(family: str) -> None:
    drill = draw_drill(shipped(), 5, Wish(3, complaints=frozenset((family,))))

    assert drill.complaint == family


def test_a_plate_is_thin_and_a_block_is_not() -> None:
    plate = draw_drill(shipped(), 1, Wish(3, complaints=frozenset(("thin-plate-dished",))))

    assert numbers(shipped(), plate)["part-thickness"].value < 0.01


def test_a_wish_nothing_fits_is_refused() -> None:
    with pytest.raises(LookupError, match="no case of that kind"):
        draw_drill(shipped(), 1, Wish(1, causes=frozenset(("no-such-cause",))))


def test_how_common_a_cause_is_keeps_its_meaning() -> None:
    odds = pool(shipped(), Wish(3, complaints=frozenset(("even-bars-across-travel",))))
    common = odds["unbalanced-wheel", "even-bars-across-travel"]
    rare = odds["spindle-nose-bent", "even-bars-across-travel"]

    assert common > rare
    assert all(math.isfinite(w) for w in odds.values())


def test_what_is_usual_names_checks_and_answers_that_there_are() -> None:
    for check, options in usual.WEIGHTS.items():
        assert set(options) <= set(shipped().checks[check].by_option)
    assert set(usual.TOLD) <= set(shipped().checks)
    assert set(usual.MATERIALS) < set(shipped().checks["work-material"].by_option)


def test_pairs_name_causes_that_there_are() -> None:
    assert all(set(p.causes) <= set(shipped().causes) for p in PAIRS if p.causes)
    assert len(PAIRS) >= 25


def test_learners_are_scored_in_the_order_of_their_care(drills: tuple[Drill, ...]) -> None:
    ways = (at_random, by_the_list, what_tells_most)
    some = drills[: max(40, len(drills) // 4)]
    means = []
    for way in ways:
        points = [score(play(shipped(), d, way), best_possible(shipped(), d)) for d in some]
        means.append(sum(points) / len(points))

    assert means == sorted(means)
    assert means[0] < means[-1]


def test_a_learner_that_skips_safety_passes_no_case(drills: tuple[Drill, ...]) -> None:
    some = drills[: max(24, len(drills) // 4)]

    assert not any(passed(play(shipped(), d, by_the_list, skips_safety=True)) for d in some)
