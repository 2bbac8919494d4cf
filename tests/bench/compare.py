"""The policies side by side on the same simulated cases."""

from __future__ import annotations

import statistics
from collections.abc import Mapping, Sequence

import numpy as np

from diagnose.book.model import Book
from diagnose.reasoning.policy import ENOUGH
from tests.bench.policies import OMNISCIENT, POLICIES, Played, Player, bound
from tests.bench.states import States
from tests.bench.world import Drawer, World

SEED = 20260301
FREE = 60  # questions allowed when the cap is lifted


def interval(values: Sequence[float]) -> tuple[float, float, float]:
    """Mean with its 95 % interval (normal)."""
    mean = statistics.fmean(values)
    half = 1.96 * statistics.stdev(values) / len(values) ** 0.5 if len(values) > 1 else 0.0
    return mean, mean - half, mean + half


def policies(book: Book, states: States, cases: int, times: float) -> dict[str, object]:
    """Every policy on the same cases with checks at `times` their minutes."""
    drawer = Drawer(book, SEED)
    worlds = [drawer.case() for _ in range(cases)]
    player = Player(book, states, times)
    played = {name: [player.play(w, name) for w in worlds] for name in POLICIES}
    best = [bound(book, w) for w in worlds]
    rows = {name: _row(runs, played["ours"]) for name, runs in played.items()}
    rows[OMNISCIENT] = {"minutes": interval(best)[0]}
    return {"cases": cases, "seed": SEED, "times": times, "rows": rows,
            "cap": _cap(book, states, worlds, times, played["ours"])}  # fmt: skip


def _row(runs: Sequence[Played], ours: Sequence[Played]) -> dict[str, float]:
    gap = [o.minutes - r.minutes for o, r in zip(ours, runs, strict=True)]
    mean, low, high = interval(gap)
    questions = [r.questions for r in runs]
    return {
        "minutes": statistics.fmean(r.minutes for r in runs),
        "ours_minus": mean, "low": low, "high": high,
        "questions_median": statistics.median(questions),
        "questions_mean": statistics.fmean(questions),
        "fixes": statistics.fmean(r.fixes for r in runs),
        "helped": statistics.fmean(r.helped for r in runs),
    }  # fmt: skip


def _cap(
    book: Book, states: States, worlds: Sequence[World], times: float, ours: Sequence[Played]
) -> Mapping[str, float]:
    """What ending at the cap costs, against asking on."""
    hit = [(w, o) for w, o in zip(worlds, ours, strict=True) if o.questions >= ENOUGH]
    free = Player(book, states, times, cap=FREE)
    gaps = [o.minutes - free.play(w, "ours").minutes for w, o in hit]
    return {
        "questions": ENOUGH,
        "share": len(hit) / len(worlds),
        "cost_in_those": statistics.fmean(gaps) if gaps else 0.0,
        "cost_over_all": float(np.sum(gaps)) / len(worlds),
    }
