"""What a person would see: every sign drawn once, so that all checks of it agree.

A sign takes the most striking of what its background and the hidden cause propose; a report on a
cause itself is right as often as the book says.
"""

from __future__ import annotations

import random
from collections.abc import Mapping

from diagnose.book.model import Book, Cause, Check, Confirm
from diagnose.reasoning.ground import Vector, ground


def draw_signs(
    draw: random.Random, book: Book, cause: str, fixed: Mapping[str, str]
) -> dict[str, str]:
    """A value for each sign that is no complaint; `fixed` values stand."""
    known = ground(book)
    signs: dict[str, str] = {}
    for name in sorted(known.backgrounds):
        if name in book.symptoms:
            continue
        vectors = [known.backgrounds[name]]
        link = known.links[cause].get(name)
        if link is not None:
            vectors.append(link)
        drawn = max(_value(draw, v) for v in vectors)
        signs[name] = fixed.get(name, book.findings[name].value_ids[drawn])
    return signs


def answers_in_words(
    draw: random.Random, book: Book, cause: str, signs: Mapping[str, str]
) -> dict[str, str]:
    """The answer of every check in words that settles a sign or reports on a cause."""
    found: dict[str, str] = {}
    for check in sorted(book.checks.values(), key=lambda c: c.id):
        if check.kind != "one":
            continue
        reports = reports_on(book, check)
        if reports:
            found[check.id] = _reported(draw, check, reports, cause)
        elif signs_of(book, check):
            found[check.id] = _seen(draw, check, signs)
    return found


def signs_of(book: Book, check: Check) -> list[str]:
    """The signs a check settles."""
    named = dict.fromkeys((*check.settles, *(f for o in check.options for f in o.means)))
    return [f for f in named if f in book.findings and book.findings[f].kind == "sign"]


def reports_on(book: Book, check: Check) -> list[tuple[Cause, Confirm]]:
    """The causes a check reports on, and how."""
    return [(c, r) for c in book.causes.values() for r in c.be_sure if r.check == check.id]


def _value(draw: random.Random, vector: Vector) -> int:
    return draw.choices(range(len(vector)), vector)[0]


def _reported(
    draw: random.Random, check: Check, reports: list[tuple[Cause, Confirm]], cause: str
) -> str:
    mine = [r for c, r in reports if c.id == cause]
    report = mine[0] if mine else reports[0][1]
    chance = report.right_when_there if mine else 1.0 - report.right_when_not
    others = [o.id for o in check.options if o.id not in {r.option for _, r in reports}]
    if draw.random() < chance or not others:
        return report.option
    return others[0]


def _seen(draw: random.Random, check: Check, signs: Mapping[str, str]) -> str:
    """The answer that agrees with most of what is there; one of them when several do."""

    def agrees(means: Mapping[str, str]) -> int:
        return sum(1 if signs.get(f) == v else -1 for f, v in means.items() if f in signs)

    best = max(agrees(o.means) for o in check.options)
    return draw.choice([o.id for o in check.options if agrees(o.means) == best])
