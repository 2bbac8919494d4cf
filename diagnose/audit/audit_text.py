"""The audit as text for a terminal; it and the comparison as data for other programs."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable, Iterator
from typing import Any

from diagnose.audit.comparing import Comparison
from diagnose.audit.overview import Audit
from diagnose.view.result import percent

SHOWN = 12  # rows of one list on the terminal; --json and the page have them all


def as_data(view: Audit | Comparison) -> dict[str, Any]:
    """The whole view as plain data."""
    return {"schema": 1, **dataclasses.asdict(view)}


def audit_text(view: Audit) -> str:
    """The audit for a terminal; long lists are cut, and the number left out is said."""
    lines = [f"Audit of knowledge {view.version}"]
    for heading, rows in sections(view):
        lines += ["", heading, *_cut(rows)]
    return "\n".join(lines)


def sections(view: Audit) -> Iterator[tuple[str, list[str]]]:
    """(heading, rows) of every part of the audit; a part without rows says so in one row."""
    pairs = [
        f"{p.one} / {p.other}: best is {p.best or 'no check'} ({p.far:.2f}); would: {p.would}"
        for p in view.unseparated
    ]
    yield (
        "Causes that no check of 20 minutes separates",
        _or(pairs, "none: every pair is told apart"),
    )
    yield (
        "Checks that never change which fix is first",
        _or(list(view.idle_checks), "none: each changes some decision"),
    )
    never = [f"{n.cause}: {n.rank} ({n.acts:.2f}), behind {n.above}" for n in view.never_first]
    yield (
        "Causes that are not first even when all speaks for them",
        _or(never, "none: each is first in its own best case"),
    )
    thin = [f"{c.symptom}: {'; '.join(c.thin)}" for c in view.coverage if c.thin]
    yield "Thin spots by complaint", _or(thin, "none")
    yield "Sources by standing", _standing_rows(view)
    merge = [
        f"{m.one} + {m.other} ({m.because}): "
        + (f"changes {len(m.changed)}" if m.changed else "changes none")
        + f" of {m.decisions} decisions"
        for m in view.mergings
    ]
    yield "Would merging these change a decision?", _or(merge, "no pair asks for it")
    yield "Closed cases against the written rates", _calibration_rows(view)


def _standing_rows(view: Audit) -> list[str]:
    rows = [
        f"{what}: " + ", ".join(f"{number} {name}" for name, number in by.items())
        for what, by in view.standings.items()
        if by
    ]
    memory = [c.source for c in view.sources if c.standing == "from memory" and c.claims]
    if memory:
        rows.append(f"Sources nobody has seen that claims stand on: {', '.join(memory)}")
    return rows


def _calibration_rows(view: Audit) -> list[str]:
    found = view.calibration
    if not found.cases:
        return ["no closed case names a cure yet"]
    loss = f", log loss {found.log_loss:.2f}" if found.log_loss is not None else ""
    rows = [
        f"Closed cases with a cure: {found.cases}; the cure was first in {found.first}, "
        f"among three in {found.among_three}{loss}"
    ]
    rows += [
        f"said {percent(b.said)} on average, was {percent(b.was)} (of {b.number})"
        for b in found.bands
    ]
    for rate in found.rates:
        if rate.drifts:
            word = "more" if rate.off > 0 else "less"
            rows.append(
                f"{rate.cause} cures {word} often than written: {rate.cured} of {rate.cases}, "
                f"{rate.expected:.1f} expected"
            )
    return rows


def _cut(rows: list[str]) -> Iterable[str]:
    yield from (f"  {row}" for row in rows[:SHOWN])
    if len(rows) > SHOWN:
        yield f"  and {len(rows) - SHOWN} more: --json or --page shows them"


def _or(rows: list[str], nothing: str) -> list[str]:
    return rows or [nothing]
