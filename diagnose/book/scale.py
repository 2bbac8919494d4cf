"""The scale of words, as read from words.yaml."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Words:
    """The scale of words and the few numbers of the reasoning that are ours."""

    how_often: Mapping[str, float]
    how_common: Mapping[str, float]
    change: Mapping[str, float]
    unlisted_prior: float
    unlisted_strength: float
    think_so: float  # share of belief put on the answer when a person says "I think so"
    odds_limit: float = 20.0
    set_high: float = 0.98
    set_low: float = 0.02
