"""What is drawn because people would rather look than read: each drawing's facts, in words too."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class FieldView:
    """One field of a wheel's marking: its name, as it is written, what it means."""

    name: str
    written: str
    meaning: str


@dataclass(frozen=True)
class MarkingView:
    """A wheel's marking taken apart; fields left out are not listed."""

    wheel: str
    marking: str
    fields: tuple[FieldView, ...]


@dataclass(frozen=True)
class ShakerView:
    """One thing of this machine that can shake. `si_low`, `si_high`: its frequency (Hz)."""

    name: str
    rate: str
    apart: str  # how far apart its bars lie at the speed of the table, "" when that is not known
    fits: bool  # the marks that were counted come as often
    si_low: float
    si_high: float


@dataclass(frozen=True)
class ShakersView:
    """How often things shake on this machine, beside the marks. `rate` "" = no marks counted."""

    rate: str
    said: str
    si_low: float
    si_high: float
    shakers: tuple[ShakerView, ...]


@dataclass(frozen=True)
class LimitView:
    """A number that has a limit at 1, with its doubt. `good_above`: safe above it, else below."""

    name: str
    value: str
    low: str
    high: str
    means: str
    good_above: bool
    si: float
    si_low: float
    si_high: float


@dataclass(frozen=True)
class GridView:
    """A grid of indicator readings as a map: rows across, "" for a gap; `split`: its parts."""

    name: str
    unit: str
    against: str
    rows: tuple[tuple[str, ...], ...]
    si_rows: tuple[tuple[float | None, ...], ...]  # in `unit`; None for a gap
    split: tuple[tuple[str, str], ...]
    spread: str
