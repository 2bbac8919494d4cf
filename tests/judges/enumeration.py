"""A judge that enumerates every cause and every link, sharing no code with the product's sum.

Each cause (and the background, and what is unlisted) proposes at most one value of each sign;
the most striking proposal wins. Everything is added up term by term, in exact fractions.
"""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True)
class Verdict:
    """What the judge finds, all as floats given the evidence."""

    total: float
    present: Mapping[str, float]
    acts: Mapping[str, float]
    cures_alone: Mapping[str, float]
    background_alone: float
    unlisted_alone: float


def judge(
    priors: Mapping[str, float],
    links: Mapping[str, Mapping[str, Sequence[float]]],
    background: Mapping[str, Sequence[float]],
    evidence: Mapping[str, Sequence[float]],
    complaint: Sequence[str],
    reports: Mapping[str, tuple[float, float]] | None = None,
) -> Verdict:
    """Enumerate. `priors` may include "unlisted", whose links are in `links` as well.

    `reports` gives each cause's likelihood of the reports on it, when there and when absent.
    """
    causes = sorted(priors)
    total = Fraction(0)
    present = dict.fromkeys(causes, Fraction(0))
    acts = dict.fromkeys(causes, Fraction(0))
    alone = dict.fromkeys(causes, Fraction(0))
    by_chance = Fraction(0)
    for here in itertools.product((0, 1), repeat=len(causes)):  # every set of causes
        there = [c for c, on in zip(causes, here, strict=True) if on]
        weight = Fraction(1)
        for c, on in zip(causes, here, strict=True):
            p = Fraction(priors[c])
            weight *= p if on else 1 - p
            if reports and c in reports:
                weight *= Fraction(reports[c][0] if on else reports[c][1])
        for signs in _worlds(there, links, background, evidence):
            chance, makers = signs
            term = weight * chance
            total += term
            for c in there:
                present[c] += term
            fired = {c for f in complaint for c in makers.get(f, ())}
            for c in fired & set(there):
                acts[c] += term
            sets = [set(makers.get(f, ())) for f in complaint]
            if sets and all(s == sets[0] and len(s) == 1 for s in sets):
                (only,) = sets[0]
                if only == "background":
                    by_chance += term
                else:
                    alone[only] += term
    return Verdict(
        float(total),
        {c: float(present[c] / total) for c in causes},
        {c: float(acts[c] / total) for c in causes},
        {c: float(alone[c] / total) for c in causes},
        float(by_chance / total),
        float(alone.get("unlisted", Fraction(0)) / total),
    )


def _worlds(there, links, background, evidence):  # type: ignore[no-untyped-def]  # plain tables
    """Every joint outcome of the observed signs: its chance and who made each observed value."""
    per_sign = []
    for sign in sorted(evidence):
        makers = ["background"] + [c for c in there if sign in links[c]]
        vectors = [background[sign]] + [links[c][sign] for c in makers[1:]]
        outcomes: dict[tuple[str, ...], Fraction] = {}
        for picks in itertools.product(*(range(len(v)) for v in vectors)):
            chance = Fraction(1)
            for pick, vector in zip(picks, vectors, strict=True):
                chance *= Fraction(vector[pick])
            value = max(picks)
            chance *= Fraction(evidence[sign][value])
            if chance:
                who = tuple(
                    m for m, pick in zip(makers, picks, strict=True) if pick == value and value
                )
                outcomes[who] = outcomes.get(who, Fraction(0)) + chance
        per_sign.append((sign, outcomes))
    for combo in itertools.product(*(o.items() for _, o in per_sign)):
        chance = Fraction(1)
        for _, p in combo:
            chance *= p
        yield chance, {sign: who for (sign, _), (who, _) in zip(per_sign, combo, strict=True)}
