"""From the entries of a case to the facts in force.

One answer stands for each check. Within a state of the machine the latest wins; when a trial
has spoiled what was seen before, the more striking answer stands: a trial can wipe a sign away,
not undo that it was there. A check that guards against a hazard is judged afresh each time.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from diagnose.book.conditions import FactValue, Number
from diagnose.book.model import Book, Check
from diagnose.case.entries import UNASKED, UNKNOWN, Case, Read, Standing, read_entries
from diagnose.physics.quantities import read_quantity


@dataclass(frozen=True)
class Told:
    """One fact as the rules see it. `entry` counts from 1; 0 = written in the case or a card."""

    check: str
    value: FactValue
    text: str
    how: str
    sure: bool
    entry: int
    round: int


@dataclass(frozen=True)
class Gathered:
    """Everything the entries say: facts by check, the checks answered "don't know", the record."""

    told: Mapping[str, Told]
    unknown: frozenset[str]
    read: Read
    changes: tuple[tuple[int, frozenset[str]], ...]  # (entry number, tags left behind)
    owned: Mapping[str, frozenset[str]] = field(default_factory=dict)

    def owned_now(self) -> dict[str, FactValue]:
        """Answers about danger with all that was owned up to: cleared is not never there.

        A wheel that was dropped and has been changed may still have spoiled the face before.
        """
        found: dict[str, FactValue] = {}
        for check, before in self.owned.items():
            now = self.told[check].value if check in self.told else frozenset()
            found[check] = ((now if isinstance(now, frozenset) else frozenset()) | before) - {
                "none"
            }
        return found


def gather(case: Case, book: Book, cards: Mapping[str, str] | None = None) -> Gathered:
    """Facts in force. `cards` are facts of the machine and wheel cards (check id -> text)."""
    read = read_entries(case)
    changes = _changes(read, book)
    told: dict[str, Told] = {}
    unknown: set[str] = set()
    for name in sorted(cards or {}):
        if name in book.checks and name not in case.given:
            told[name] = _told(book.checks[name], Standing(name, (cards or {})[name], "shop",
                                                           True, 0, 0))  # fmt: skip
    for standing in read.answers:
        check = book.checks.get(standing.check)
        if check is None:
            continue
        if standing.value == UNKNOWN:
            if check.id not in told:
                unknown.add(check.id)
            continue
        unknown.discard(check.id)
        new = _told(check, standing)
        old = told.get(check.id)
        spoiled = old is not None and _spoiled(check, old.entry, new.entry, changes)
        told[check.id] = _striking(check, old, new) if old is not None and spoiled else new
    return Gathered(told, frozenset(unknown), read, changes, _owned(read, book))


def _owned(read: Read, book: Book) -> dict[str, frozenset[str]]:
    """The dangers that any answer in force owned up to, by the check that asks for them."""
    found: dict[str, frozenset[str]] = {}
    for standing in read.answers:
        check = book.checks.get(standing.check)
        if check is None or check.kind != "any" or standing.value == UNKNOWN:
            continue
        chosen = fact_value(check, standing.value)
        raised = frozenset(o.id for o in check.options if o.raises)
        if isinstance(chosen, frozenset) and chosen & raised:
            found[check.id] = found.get(check.id, frozenset()) | (chosen & raised)
    return found


def stale(check: Check, gathered: Gathered) -> bool:
    """True when a trial or fix since the answer has spoiled it, so that it may be asked again."""
    told = gathered.told.get(check.id)
    if told is None:
        return False
    last = max((s.entry for s in gathered.read.answers if s.check == check.id), default=0)
    return _spoiled(check, last, 10**9, gathered.changes)


def spoiled_by_now(check: Check, gathered: Gathered) -> bool:
    """True when any trial or fix so far has spoiled what the check looks for."""
    return _spoiled(check, -1, 10**9, gathered.changes)


def wiped(check: Check, gathered: Gathered) -> bool:
    """True when the answer in force was given after a trial had spoiled what it looks for.

    What is seen then is there; that nothing is seen says nothing.
    """
    told = gathered.told.get(check.id)
    return told is not None and told.entry > 0 and _spoiled(check, -1, told.entry, gathered.changes)


def fact_value(check: Check, text: str) -> FactValue:
    """The text of an answer as the rules see it; a number keeps its range in SI units.

    Raises QuantityError (from `diagnose.physics.quantities`) for a number that cannot be read.
    """
    if check.kind == "any":
        return frozenset(part.strip() for part in text.split(",") if part.strip())
    if check.kind != "number":
        return text.strip()
    quantity = read_quantity(text, check.dimension)
    spread = quantity.uncertainty or abs(quantity.value) * check.give_or_take
    return Number(quantity.value, quantity.value - spread, quantity.value + spread)


def _told(check: Check, standing: Standing) -> Told:
    value = fact_value(check, standing.value)
    return Told(
        check.id, value, standing.value, standing.how, standing.sure, standing.entry, standing.round
    )


def _changes(read: Read, book: Book) -> tuple[tuple[int, frozenset[str]], ...]:
    """Tags left behind, by the number of the entry after which they hold."""
    found: list[tuple[int, frozenset[str]]] = []
    for number, entry, _ in read.tried:
        if entry.outcome == "not done":
            continue
        tags: tuple[str, ...] = ()
        if entry.name in book.checks:
            tags = book.checks[entry.name].changes
        elif entry.name in book.causes:
            tags = book.causes[entry.name].fix.changes
        found.append((number, frozenset(tags)))
    for standing in read.answers:
        check = book.checks.get(standing.check)
        before = standing.how == UNASKED  # tried before all that was told with it
        if check is not None and check.trial and standing.value != UNKNOWN and not before:
            found.append((standing.entry, frozenset(check.changes)))
    return tuple(sorted(found, key=lambda pair: pair[0]))


def _spoiled(
    check: Check, before: int, after: int, changes: tuple[tuple[int, frozenset[str]], ...]
) -> bool:
    return any(before < n < after and tags & set(check.spoiled_by) for n, tags in changes)


def _striking(check: Check, old: Told, new: Told) -> Told:
    if any(o.raises or o.clears for o in check.options):
        return new  # a hazard is judged afresh
    if check.kind == "any" and isinstance(old.value, frozenset):
        both = old.value | (new.value if isinstance(new.value, frozenset) else frozenset())
        return Told(check.id, both, new.text, new.how, new.sure, new.entry, new.round)
    if check.kind == "one":
        rank = {o.id: i for i, o in enumerate(check.options)}
        if rank.get(str(old.value), 0) >= rank.get(str(new.value), 0):
            return old
    return new
