"""Which of the causes that a set-up raises is a risk, which a note, which is brought along.

A risk weighs much, or is many times likelier than in any job, and can be helped. A note weighs
less and is told only when it changes what the person does. What part, machine or wheel bring along
is no fault of the plan: it is named in one line. Notes and that line come to two at the most.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.book.model import Book
from diagnose.reasoning.network import Network
from diagnose.reasoning.reason import Read
from diagnose.review.choices import better_there_is, chosen, neutral
from diagnose.review.risks import Risk, harmful_of

SERIOUS = 0.12  # added chance x harm: from here on a risk
MANIFOLD = 3.5  # so many times likelier than in any job is a risk, when it can be helped
EVERY_DAY = 0.09  # below it a question that has no answer without a fault makes no note
HELPED = 0.9  # what is recommended helps when it takes the chance below this share
LINES = 2  # notes and the line of what is brought along, at most
NAMED = 3  # causes in that line


@dataclass(frozen=True)
class Levels:
    """The risks, the notes (heaviest first), and what part, machine or wheel bring along."""

    risks: tuple[Risk, ...]
    notes: tuple[Risk, ...]
    brought: tuple[Risk, ...]


def levels_of(
    book: Book,
    read: Read,
    network: Network,
    found: tuple[Risk, ...],
    after: Mapping[str, float],
    keep: Mapping[str, bool],
) -> Levels:
    """Part the causes found.

    `after`: the chance of each with what is recommended; `keep`: by setting, whether it will do.
    """
    harm = {
        n.id: worst[0]
        for n in network.nodes
        if (worst := harmful_of(book, n, read.facts)) is not None
    }
    risks: list[Risk] = []
    notes: list[Risk] = []
    brought: list[Risk] = []
    for risk in found:
        choices = chosen(book, risk.raised_by)
        helped = (
            bool(risk.force)
            or after[risk.cause] < HELPED * risk.there
            or _mended(risk, keep)
            or any(
                better_there_is(book, read, network, c, harm)
                for c in choices
                if c not in keep and (risk.weight >= EVERY_DAY or not neutral(book, c))
            )
        )
        seen = not risk.raised_by
        heavy = risk.weight >= SERIOUS or (risk.hurts and bool(risk.force))
        if heavy and (helped or seen or not choices):
            risks.append(risk)
        elif helped or seen:
            (risks if risk.there >= MANIFOLD * risk.usual else notes).append(risk)
        elif not choices or (heavy and not keep.keys() & set(choices)):
            brought.append(risk)
    first = sorted(risks, key=lambda r: (not r.hurts, -r.weight, r.cause))
    few = brought[:NAMED]
    return Levels(tuple(first), tuple(notes[: LINES - bool(few)]), tuple(few))


def _mended(risk: Risk, keep: Mapping[str, bool]) -> bool:
    """True when a setting that raises it is not left as planned."""
    return any(not keep.get(check, True) for check in risk.raised_by)
