"""A sharper sign and a blunter one are one sign, told more or less exactly."""

from __future__ import annotations

from dataclasses import replace

import pytest

from diagnose.book.model import Finding, Value
from diagnose.reasoning.network import _sharpen
from tests.small import small_book

YES, NO, HARDLY_SURE = (0.0, 1.0), (1.0, 0.0), (0.2, 0.8)


def sign(name: str, sharpens: str | None = None) -> Finding:
    return Finding(name, name, "sign", (Value("no", "no"), Value("yes", "yes", 0.1)), sharpens)


BOOK = replace(
    small_book(),
    findings={
        "bars": sign("bars"),
        "even": sign("even", "bars"),
        "once-a-turn": sign("once-a-turn", "even"),
    },
)


@pytest.mark.parametrize(
    ("evidence", "complaint", "kept"),
    [
        ({"bars": YES, "even": YES}, ("even",), {"even"}),
        ({"bars": YES, "even": YES, "once-a-turn": YES}, ("once-a-turn",), {"once-a-turn"}),
        ({"bars": YES, "even": YES, "once-a-turn": NO}, ("even",), {"even", "once-a-turn"}),
        ({"bars": YES, "even": NO}, ("bars",), {"bars", "even"}),
        (
            {"bars": YES, "even": YES, "once-a-turn": HARDLY_SURE},
            ("even",),
            {"even", "once-a-turn"},
        ),
        ({"bars": YES, "once-a-turn": HARDLY_SURE}, ("bars",), {"bars", "once-a-turn"}),
        ({"bars": YES, "even": NO, "once-a-turn": NO}, ("bars",), {"bars", "even"}),
    ],
)
def test_the_sharpest_sign_seen_stands_for_the_complaint(
    evidence: dict[str, tuple[float, float]], complaint: tuple[str, ...], kept: set[str]
) -> None:
    named, left = _sharpen(BOOK, ("bars",), evidence)
    assert (named, set(left)) == (complaint, kept)
