"""The view of a drill: what is told at the start, each move, and the debrief; all plain facts."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.view.result import ArrowView, CautionView, SourceView

ASK, SAFETY, STOP, HINT, TRY, GIVE_UP = "ask", "safety", "stop", "hint", "try", "give up"


@dataclass(frozen=True)
class Move:
    """One thing the learner did. `kind` is one of the words above; `name` a check or cause.

    `free` moves cost nothing and are not counted; `seen` is what there was to see, `note` what is
    said besides. `turning`: the wheel turned for it, `unsafe`: while a hazard was not cleared.
    """

    kind: str
    name: str
    ask: str
    seen: str
    minutes: float = 0.0
    note: str = ""
    turning: bool = False
    unsafe: bool = False
    free: bool = False
    right: bool = False
    entries: int = 0  # entries of the case before it


@dataclass(frozen=True)
class CheckLine:
    """One line of the list of checks."""

    number: int
    check: str
    name: str
    minutes: float
    wheel: str
    place: str
    asked: bool


@dataclass(frozen=True)
class Opening:
    """What is told at the start."""

    title: str
    seed: int
    level: int
    learner: str
    story: tuple[str, ...]
    complaint: str
    looks_like: str


@dataclass(frozen=True)
class StepView:
    """A step of the learner looked at afterwards. `share` is in natural log-odds of the cause."""

    number: int
    ask: str
    seen: str
    minutes: float
    wheel: str
    told: str
    share: float
    chance: float
    better: str = ""
    counts: bool = True  # False for safety, hints and cures: no bar


@dataclass(frozen=True)
class MinutesRow:
    """Minutes to the cure of one way to go about it."""

    label: str
    minutes: float
    note: str


@dataclass(frozen=True)
class SideBySide:
    """Two things that newcomers swap, and the one look that decides between them."""

    one: str
    other: str
    because: str
    look: str
    minutes: float
    one_says: str
    other_says: str
    source: SourceView


@dataclass(frozen=True)
class HazardView:
    """The hazard that was there, and whether the learner saw it in time."""

    name: str
    what_is_wrong: str
    do_first: tuple[str, ...]
    seen_at: str
    answer: str
    caught: bool
    how: str
    source: SourceView


@dataclass(frozen=True)
class DebriefView:
    """Everything said after a drill. `first` stands before all else."""

    title: str
    seed: int
    level: int
    learner: str
    version: str
    first: str
    passed: bool
    score: int
    why: tuple[str, ...]
    hazard: HazardView | None
    story: tuple[str, ...]
    complaint: str
    cause: str
    summary: str
    chain: tuple[ArrowView, ...]
    fix: str
    proof: str
    cautions: tuple[CautionView, ...]
    untypical: bool
    typical: str
    minutes: tuple[MinutesRow, ...]
    steps: tuple[StepView, ...]
    tool_way: tuple[str, ...]
    proof_way: tuple[str, ...]
    missed_most: str
    look_alikes: tuple[SideBySide, ...]
    swapped: tuple[SideBySide, ...]
    next_time: tuple[str, ...]
    sources: tuple[SourceView, ...]


@dataclass(frozen=True)
class ProgressView:
    """How a learner stands in the course."""

    learner: str
    level: int
    highest: int
    drills: int
    passed: int
    hazards: int
    hazards_caught: int
    to_open: str
    due: tuple[str, ...]
    swaps: tuple[tuple[str, str, int], ...]  # what it was, what was named, how often
    pairs: tuple[SideBySide, ...]


@dataclass(frozen=True)
class TeacherView:
    """All learners; `table` has a row a confusion: it was, named, by whom, how often."""

    learners: tuple[ProgressView, ...]
    table: tuple[tuple[str, str, tuple[str, ...], int], ...]
    pairs: tuple[SideBySide, ...]
