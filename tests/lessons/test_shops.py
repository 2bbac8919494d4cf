"""Learning in seeded shops whose true rates differ: the bench on the small knowledge."""

from __future__ import annotations

import statistics

from tests.bench.shops import asked_first, shop, summary
from tests.small import small_book

SIZES = (40, 200)


def test_learning_helps_in_seeded_shops_and_more_cases_help_more() -> None:
    """200 sealed cases judge a shop to a few percent, so a shop may lose that by chance."""
    book = small_book()
    asked = asked_first(book)
    results = [shop(book, seed, asked, SIZES, 200, refuse=seed < 2) for seed in range(8)]

    few, many = [[r.gain(k) for r in results] for k in range(len(SIZES))]

    assert min(few) > -0.03
    assert min(many) > -0.03
    assert statistics.median(many) > 0.05
    assert statistics.median(many) > statistics.median(few) > 0.0
    assert summary(results, SIZES)["shops"] == len(results)


def test_a_seed_gives_the_same_shop_again() -> None:
    book = small_book()
    asked = asked_first(book)
    one, other = (shop(book, 7, asked, (20,), 10) for _ in range(2))

    assert (one.book, one.after, one.best) == (other.book, other.after, other.best)
