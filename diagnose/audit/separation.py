"""Causes of one complaint that no quick check separates, and the check that would."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from diagnose.audit.signatures import FAR, QUICK, separation
from diagnose.audit.study import Study
from diagnose.book.model import Cause


@dataclass(frozen=True)
class Pair:
    """Two causes of a complaint with different fixes, and how far the best checks separate them.

    `far` is the total variation of the best quick check (20 minutes or less), 0 when there is
    none. `would` says what would separate them: a longer check, or a sign that needs one.
    """

    one: str
    other: str
    complaints: tuple[str, ...]
    best: str
    far: float
    would: str


def unseparated(study: Study) -> list[Pair]:
    """Every such pair, the worst first."""
    return [p for p in nearest_pairs(study) if p.far < FAR]


def nearest_pairs(study: Study) -> list[Pair]:
    """All pairs of causes that share a complaint and not the fix, the least told apart first."""
    return sorted(_pairs(study), key=lambda p: (round(p.far, 6), p.one, p.other))


def _pairs(study: Study) -> Iterator[Pair]:
    together: dict[tuple[str, str], list[str]] = {}
    for symptom in sorted(study.book.symptoms):
        causes = sorted({c.id for c, _, _ in study.shown_by.get(symptom, ())})
        for one, other in combinations(causes, 2):
            together.setdefault((one, other), []).append(symptom)
    for (one, other), complaints in together.items():
        a, b = study.book.causes[one], study.book.causes[other]
        if a.fix.id == b.fix.id:
            continue
        ways = separation(study.book, study.signatures[one], study.signatures[other])
        quick = [(far, c) for far, c in ways if c.minutes <= QUICK]
        far, best = (quick[0][0], quick[0][1].id) if quick else (0.0, "")
        long = [(f, c) for f, c in ways if c.minutes > QUICK and f >= FAR]
        if long:
            would = f"{long[0][1].id} ({long[0][1].minutes:g} min, {long[0][0]:.2f})"
        else:
            would = _sign_alone(study, a, b)
        yield Pair(one, other, tuple(complaints), best, far, would)


def _sign_alone(study: Study, one: Cause, other: Cause) -> str:
    """A check to write: for the sign that one shows far more often than the other."""
    shown = [{(k.finding, k.value): k.how_often for k in c.shows} for c in (one, other)]
    best, gap = "", FAR
    for key in shown[0].keys() | shown[1].keys():
        if key[0] in study.book.symptoms:
            continue
        apart = abs(shown[0].get(key, 0.0) - shown[1].get(key, 0.0))
        if apart > gap:
            best, gap = key[0] if key[1] == "yes" else f"{key[0]} ({key[1]})", apart
    if best:
        return f"a quick check of {best}"
    return "nothing that is written: link a sign that only one of them shows, and ask for it"
