"""How well each complaint is covered, and where the book is thin."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.audit.separation import Pair
from diagnose.audit.study import Study
from diagnose.book.counts import STANDINGS

FEW_CAUSES, FEW_CHECKS = 3, 4


@dataclass(frozen=True)
class Coverage:
    """One complaint: its causes, the checks that move them, links by standing of their source,
    causes expected to act alone, share of "none of these", and what is thin."""

    symptom: str
    causes: int
    checks: int
    standing: tuple[tuple[str, int], ...]
    acting: float
    none: float
    unseparated: int
    thin: tuple[str, ...]


def coverage(study: Study, pairs: list[Pair]) -> list[Coverage]:
    """Every complaint, the thinnest first."""
    found = [_one(study, symptom, pairs) for symptom in sorted(study.book.symptoms)]
    return sorted(found, key=lambda c: (-len(c.thin), c.causes, c.symptom))


def _one(study: Study, symptom: str, pairs: list[Pair]) -> Coverage:
    book = study.book
    shown = study.shown_by.get(symptom, ())
    causes = {c.id for c, _, _ in shown}
    checks = {check for c in causes for check in study.signatures[c].rows}
    by: dict[str, int] = {}
    for _, _, link in shown:
        source = book.sources.get(link.source)
        name = source.standing if source else "no source given"
        by[name] = by.get(name, 0) + 1
    acting = study.acting[symptom]
    close = sum(symptom in p.complaints for p in pairs)
    thin = []
    if len(causes) < FEW_CAUSES:
        thin.append(f"{len(causes)} causes")
    if len(checks) < FEW_CHECKS:
        thin.append(f"{len(checks)} checks")
    if not acting.sane:
        thin.append(f"{acting.expected:.2f} causes act alone")
    if close:
        thin.append(f"{close} pairs that no quick check separates")
    if not by.get("confirmed"):
        thin.append("no link on a confirmed source")
    standing = tuple((s, by[s]) for s in (*STANDINGS, "no source given") if s in by)
    return Coverage(
        symptom,
        len(causes),
        len(checks),
        standing,
        acting.expected,
        acting.none,
        close,
        tuple(thin),
    )
