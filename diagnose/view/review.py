"""The one view of a review: terminal, JSON and page all print this, and nothing else."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.view.drawn import LimitView, MarkingView, ShakersView
from diagnose.view.result import (
    CautionView,
    CheckView,
    DiffersView,
    EntryView,
    ReadingView,
    SourceView,
    StopView,
)

RISK, NOTE = "risk", "minor note"


@dataclass(frozen=True)
class WantedView:
    """One thing that is wanted of the job, or known of it."""

    name: str
    value: str


@dataclass(frozen=True)
class ShownView:
    """Why a cause is likelier here: the reason, the numbers and answers that show it."""

    because: str
    shown: tuple[str, ...]
    source: SourceView


@dataclass(frozen=True)
class RiskView:
    """What may go wrong. `here`, `usual`, `after`: chance that the cause is there as planned, in
    any job, and with what is recommended."""

    level: str  # risk | minor note
    cause: str
    name: str
    complaint: str
    harm: str  # what would become of the part, in words
    here: float
    usual: float
    after: float
    shows: float
    shown_by: tuple[ShownView, ...]
    do: str
    change: tuple[str, ...]


@dataclass(frozen=True)
class BroughtView:
    """What part, machine or wheel make likelier, whatever is set: no fault of the plan."""

    name: str
    do: str


@dataclass(frozen=True)
class ComplaintView:
    """A complaint this set-up makes likelier: its chance here and in any job."""

    id: str
    name: str
    here: float
    usual: float


@dataclass(frozen=True)
class WheelView:
    """One wheel of the shelf. verdict: best | suits | does not suit | not to be run."""

    id: str
    name: str
    marking: str
    verdict: str
    planned: bool
    wrong: tuple[str, ...]


@dataclass(frozen=True)
class DressView:
    """One dress, in what a hand can count."""

    kind: str
    use: str
    depth: str
    passes: str
    seconds: str
    overlap: str
    finish: str


@dataclass(frozen=True)
class CutView:
    """One way to set the cut."""

    kind: str
    depth: str
    crossfeed: str
    table: str
    passes: str
    share: str  # of what the spindle pulls


@dataclass(frozen=True)
class SettingView:
    """One setting as planned and as recommended. `keep` when the planned one will do."""

    check: str
    name: str
    planned: str
    recommended: str
    keep: bool


@dataclass(frozen=True)
class DueView:
    """Strokes until the dress is due, as a range, and what it is known from."""

    strokes: str
    known_from: str
    advice: str


@dataclass(frozen=True)
class TickView:
    """One step to tick, its cautions before it."""

    do: str
    because: str
    check_by: str
    cautions: tuple[CautionView, ...]
    source: SourceView


@dataclass(frozen=True)
class ListView:
    """One list to tick."""

    id: str
    title: str
    steps: tuple[TickView, ...]


@dataclass(frozen=True)
class UnknownView:
    """What is not known, and how far the answer could move a cause."""

    check: CheckView
    cause: str
    complaint: str
    least: float
    most: float


@dataclass(frozen=True)
class AgainstView:
    """The last good job on this machine and metal, and every setting that differs from it."""

    case: str
    title: str
    date: str
    differs: tuple[DiffersView, ...]
    same: int
    not_planned: tuple[WantedView, ...]  # set then, not said now
    note: str


@dataclass(frozen=True)
class ReviewView:
    """Everything a review shows."""

    title: str
    case: str
    machine: str
    wheel: str
    part: str
    date: str
    version: str
    wanted: tuple[WantedView, ...]
    stops: tuple[StopView, ...]
    safe: bool
    open_hazards: tuple[str, ...]
    first_checks: tuple[CheckView, ...]  # what clears the hazards that are open
    headline: str
    first_action: str
    yardstick: str
    risks: tuple[RiskView, ...]
    brought: tuple[BroughtView, ...]
    complaints: tuple[ComplaintView, ...]
    wheel_wanted: str
    wheel_hint: str
    wheel_source: str
    wheels: tuple[WheelView, ...]
    marking: MarkingView | None
    shakers: ShakersView | None
    limits: tuple[LimitView, ...]
    dresses: tuple[DressView, ...]
    dress_note: str
    ceiling: str
    handbook: str
    cuts: tuple[CutView, ...]
    cut_note: str
    settings: tuple[SettingView, ...]
    due: DueView | None
    lists: tuple[ListView, ...]
    unknown: tuple[UnknownView, ...]
    taken: tuple[str, ...]
    against: AgainstView | None
    cautions: tuple[CautionView, ...]
    notes: tuple[str, ...]
    readings: tuple[ReadingView, ...]
    entries: tuple[EntryView, ...]
    sources: tuple[SourceView, ...]
    case_text: str
