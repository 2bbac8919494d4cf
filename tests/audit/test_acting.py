"""How many causes act in a complaint alone."""

from __future__ import annotations

import pytest

from diagnose.audit.acting import acting, alone
from tests.small import small_book


def test_the_expected_number_is_the_sum_of_what_each_cause_acts():
    book = small_book()
    for symptom, found in acting(book).items():
        assert found.expected == pytest.approx(sum(r.acts for r in alone(book, symptom).ranked))


def test_the_commonest_causes_stand_first():
    for found in acting(small_book()).values():
        chances = [chance for _, chance in found.most]
        assert chances == sorted(chances, reverse=True)
