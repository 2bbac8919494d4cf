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
SECONDS, FINENESS, FRESH = "dress-seconds", "dress-fineness", "since-last-dress"
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
        if risk.far is not None:
            risks.append(risk)
            continue
        choices = chosen(book, risk.raised_by)
        if keep.get(SECONDS) and _of_the_dress(book, risk) and set(choices) <= {*keep, FRESH}:
            continue  # its seconds give the finish wanted, and a fresh dress is no fault
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
    first = _named_first(sorted(risks, key=lambda r: (not r.hurts, -r.weight, r.cause)), keep)
    few = brought[:NAMED]
    return Levels(first, tuple(notes[: LINES - bool(few)]), tuple(few))


def _named_first(risks: list[Risk], keep: Mapping[str, bool]) -> tuple[Risk, ...]:
    """Of risks made by the same settings the one that hangs on the fewest comes first.

    A crossfeed far too wide makes the cut too big as well: the crossfeed is what is to be named.
    """
    out = list(risks)
    groups: dict[tuple[bool, frozenset[str]], list[int]] = {}
    for at, risk in enumerate(risks):
        off = frozenset(c for c in risk.raised_by if not keep.get(c, True))
        if off:
            groups.setdefault((risk.hurts, off), []).append(at)
    for places in groups.values():
        ranked = sorted((risks[at] for at in places), key=lambda r: _settings(r, keep))
        for at, risk in zip(places, ranked, strict=True):
            out[at] = risk
    return tuple(out)


def _settings(risk: Risk, keep: Mapping[str, bool]) -> int:
    return sum(check in keep for check in risk.raised_by)


def _of_the_dress(book: Book, risk: Risk) -> bool:
    return any(FINENESS in s.when.facts for s in book.causes[risk.cause].more_likely_when)


def _mended(risk: Risk, keep: Mapping[str, bool]) -> bool:
    """True when a setting that raises it is not left as planned."""
    return any(not keep.get(check, True) for check in risk.raised_by)
