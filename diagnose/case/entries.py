"""A case: one job with one complaint, as an append-only list of entries.

Everything else (facts, rounds, findings, ranking) is computed from the list, so undo is "drop
the last and replay".
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from diagnose.case.planned import Planned

UNKNOWN = "don't know"
UNASKED = "unasked"
OUTCOMES = ("gone and stays", "gone and comes back", "better", "same", "not done")


@dataclass(frozen=True)
class Entry:
    """One line of the case.

    kind: answer | correct | tried | cleared | later. `name` is the check (answer, correct,
    later), the check or cause (tried) or the stop (cleared). `value` is text as the person
    wrote it: an option id, option ids with commas (kind any), a number with its unit, a file,
    or "don't know". `how`: said | measured | shop | unasked (told before any question).
    `sure` False = "I think so". `replaces` is the number, from 1, of the entry a correction
    replaces.
    """

    kind: str
    name: str
    value: str = ""
    how: str = "said"
    sure: bool = True
    outcome: str = ""
    replaces: int = 0
    line: int = 0

    @property
    def left_out(self) -> bool:
        """True for what was left out of a list on which other looks were told."""
        return self.kind == "answer" and self.how == UNASKED and self.value == UNKNOWN


@dataclass(frozen=True)
class Closed:
    """How a case ended: what was done, what cured it, how that was proved.

    `date` is year-month-day. `cured_by` are causes of the book, `something_new` is a cause in the
    machinist's own words; both empty means it was not cured. `minutes` is the time spent, None
    when nobody knows; `pictures` are paths as given.
    """

    date: str
    cured_by: tuple[str, ...] = ()
    something_new: str = ""
    done: str = ""
    minutes: float | None = None
    proved: str = ""
    note: str = ""
    pictures: tuple[str, ...] = ()

    @property
    def cured(self) -> bool:
        """True when something cured it."""
        return bool(self.cured_by or self.something_new)


@dataclass(frozen=True)
class Case:
    """The case as read from its file or built by the interview.

    `machine` and `wheel` name cards of the shop folder; `given` are facts written inline
    (check id -> text), kept apart from the entries. `cleared_stops` come as entries. `now` are
    readings by name to lay beside the healthy record of the machine. `closed` is None while the
    case is open. `planned` is what is wanted of a job not yet begun, which has no complaint.
    """

    title: str
    complaint: tuple[str, ...]
    entries: tuple[Entry, ...] = ()
    machine: str = ""
    wheel: str = ""
    part: str = ""
    given: Mapping[str, str] = field(default_factory=dict)
    minutes_to_spare: float | None = None
    tools: tuple[str, ...] | None = None
    practised: bool = False
    note: str = ""
    path: str = ""
    now: Mapping[str, str] = field(default_factory=dict)
    closed: Closed | None = None
    planned: Planned | None = None

    def with_entry(self, entry: Entry) -> Case:
        """The case with one more entry."""
        return replace(self, entries=(*self.entries, entry))

    def without_last(self) -> Case:
        """The case as it was before its last entry."""
        return replace(self, entries=self.entries[:-1])


@dataclass(frozen=True)
class Standing:
    """An answer in force: the text, which entry (from 1; 0 = given or shop), in which round."""

    check: str
    value: str
    how: str
    sure: bool
    entry: int
    round: int


@dataclass(frozen=True)
class Read:
    """The entries read in order: answers per round, trials, clearances, checks put off."""

    answers: tuple[Standing, ...]  # every answer in force, spoiled ones included, in order
    tried: tuple[tuple[int, Entry, int], ...]  # (entry number, entry, round it ended)
    cleared: tuple[tuple[int, str, str], ...]  # (entry number, stop, how)
    later: tuple[str, ...]
    rounds: int


def read_entries(case: Case) -> Read:
    """Replay the list: corrections replace what they name, trials start a new round."""
    standing: dict[int, Standing] = {}
    tried: list[tuple[int, Entry, int]] = []
    cleared: list[tuple[int, str, str]] = []
    later: list[str] = []
    now = 0
    for index, name in enumerate(sorted(case.given)):
        standing[-1 - index] = Standing(name, case.given[name], "given", True, 0, 0)
    for number, entry in enumerate(case.entries, start=1):
        if entry.kind == "answer":
            standing[number] = Standing(entry.name, entry.value, entry.how, entry.sure, number, now)
            later = [name for name in later if name != entry.name]
        elif entry.kind == "correct":
            _correct(standing, entry, number, now)
        elif entry.kind == "tried":
            tried.append((number, entry, now))
            now += entry.outcome != "not done"
        elif entry.kind == "cleared":
            cleared.append((number, entry.name, entry.value))
        elif entry.kind == "later":
            later.append(entry.name)
    ordered = tuple(standing[k] for k in sorted(standing))
    return Read(ordered, tuple(tried), tuple(cleared), tuple(later), now + 1)


def _correct(standing: dict[int, Standing], entry: Entry, number: int, now: int) -> None:
    old = standing.pop(entry.replaces, None)
    round_ = old.round if old is not None else now
    name = entry.name or (old.check if old is not None else "")
    if name:
        standing[number] = Standing(name, entry.value, entry.how, entry.sure, number, round_)
