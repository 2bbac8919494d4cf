"""The one view of a result: terminal, JSON and page all print this, and nothing else.

Plain frozen records of text and numbers; every number shown has its unit in its text.
"""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.view.drawn import GridView, LimitView, ShakersView


@dataclass(frozen=True)
class SourceView:
    """Where a claim comes from, with its standing."""

    id: str
    title: str
    standing: str


@dataclass(frozen=True)
class CardRef:
    """A guided card to follow; `diagnose explain ID` prints it."""

    id: str
    name: str


@dataclass(frozen=True)
class StopView:
    """A stop or hold that stands."""

    id: str
    kind: str  # stop | hold
    name: str
    what_is_wrong: str
    do_first: tuple[str, ...]
    cleared_when: str
    because: tuple[str, ...]  # the answers or rules that raised it, in words
    source: SourceView
    cards: tuple[CardRef, ...] = ()


@dataclass(frozen=True)
class ReasonView:
    """One thing known and how far it speaks for (above 0) or against a cause.

    `share` is natural log-odds, order-free; `entries` are entry numbers, 0 = a card or the set-up.
    """

    text: str
    share: float
    checks: tuple[str, ...]
    entries: tuple[int, ...]


@dataclass(frozen=True)
class ArrowView:
    """One arrow of cause and effect."""

    from_: str
    to: str
    because: str


@dataclass(frozen=True)
class CauseView:
    """One ranked cause. `words` puts the chance in words."""

    id: str
    name: str
    summary: str
    status: str
    probability: float  # acts on this complaint
    cures_alone: float
    present: float
    words: str
    fix_minutes_first: float
    fix_minutes_practised: float
    reasons_for: tuple[ReasonView, ...]
    reasons_against: tuple[ReasonView, ...]
    chain: tuple[ArrowView, ...]
    look_alikes: tuple[str, ...]
    log_odds_before: float
    log_odds_after: float
    sources: tuple[SourceView, ...]
    origin: str = ""  # "your shop", "pack belt-lessons"; "" when it is shipped


@dataclass(frozen=True)
class CautionView:
    """A care before a step."""

    id: str
    say: str
    source: SourceView


@dataclass(frozen=True)
class FixView:
    """One step of the cure; a withheld step is named only, its instructions come later."""

    id: str
    do: str
    causes: tuple[str, ...]
    cures_alone: float
    minutes_first: float
    minutes_practised: float
    cautions: tuple[CautionView, ...]
    steps: tuple[str, ...]
    proof: str
    tools: tuple[str, ...]
    withheld: bool
    call_someone: str
    cards: tuple[CardRef, ...] = ()


@dataclass(frozen=True)
class AidView:
    """One step of first aid."""

    do: str
    because: str
    origin: str
    cautions: tuple[CautionView, ...]
    withheld: bool
    source: SourceView


@dataclass(frozen=True)
class PartView:
    """What to do with the part on the chuck."""

    action: str  # save | leave | quarantine | scrap | measure
    say: str
    source: SourceView


@dataclass(frozen=True)
class PlanView:
    """The part, first aid, the cure, with the minutes expected."""

    part: tuple[PartView, ...]
    first_aid: tuple[AidView, ...]
    cure: tuple[FixView, ...]
    expected_minutes: float
    quick_minutes: float
    slow_minutes: float
    cards: tuple[CardRef, ...] = ()  # of the complaint itself


@dataclass(frozen=True)
class AnswerOutcome:
    """What one answer of the next check would do: its chance and the top of the list then."""

    answer: str
    chance: float
    top: str
    probability: float


@dataclass(frozen=True)
class CheckView:
    """A check to make, with what it costs."""

    id: str
    ask: str
    help: str
    minutes: float
    wheel: str  # "wheel stopped" | "wheel turning" | ""
    why: str
    outcomes: tuple[AnswerOutcome, ...] = ()
    no_instrument: str = ""
    options: tuple[str, ...] = ()


@dataclass(frozen=True)
class NextView:
    """What to do next. kind: ask | safety | fix | stuck."""

    kind: str
    why: str
    check: CheckView | None
    fix: str = ""


@dataclass(frozen=True)
class FindingView:
    """A finding told or worked out, in words, with the checks it stands on and the rules used."""

    id: str
    name: str
    value: str
    from_: tuple[str, ...]
    rules: tuple[str, ...]
    degree: float


@dataclass(frozen=True)
class ReadingView:
    """A number measured or worked out, written with its unit."""

    id: str
    name: str
    value: str
    low: str
    high: str
    measured: bool
    si: float
    si_low: float
    si_high: float
    dimension: str


@dataclass(frozen=True)
class EntryView:
    """One line of the case as it was said."""

    number: int  # from 1; 0 = a card or the set-up
    check: str
    ask: str
    answer: str
    how: str
    sure: bool
    round: int


@dataclass(frozen=True)
class StabilityView:
    """How often the first cause stays first when every word moves by at most a step."""

    first_in: int
    of: int
    rival: str
    firm: bool
    separating_check: str


@dataclass(frozen=True)
class RuledOutView:
    """A cause that cannot be here, and why."""

    name: str
    because: str


@dataclass(frozen=True)
class EarlierView:
    """An earlier closed case like this one."""

    said: str  # one sentence: when, and what it was
    title: str
    date: str
    machine: str
    wheel: str
    cured: str
    alike: str  # how far it is like this one
    took: str  # the time spent, "" when nobody wrote it down
    done: str
    case: str


@dataclass(frozen=True)
class DiffersView:
    """One thing that is not as it was when the machine ground well."""

    name: str
    now: str
    good: str
    times: str  # "2.7 times" what it was, or ""
    date: str  # of the healthy record
    machine: str


@dataclass(frozen=True)
class HelpedView:
    """A cause whose fix helped, so that it was surely at work, though something is left."""

    name: str
    how_far: str


@dataclass(frozen=True)
class ResultView:
    """Everything the tool has to say about one case."""

    title: str
    case: str
    complaint: tuple[tuple[str, str], ...]  # (id, name)
    complaint_sketches: tuple[str, ...]
    machine: str
    wheel: str
    part: str
    date: str
    version: str
    stops: tuple[StopView, ...]
    safe: bool
    open_hazards: tuple[str, ...]
    headline: str
    first_action: str
    causes: tuple[CauseView, ...]
    several_together: float
    none_of_these: float
    also_present: tuple[tuple[str, float], ...]
    too_close: str
    next: NextView
    walk: tuple[CheckView, ...]
    plan: PlanView
    findings: tuple[FindingView, ...]
    readings: tuple[ReadingView, ...]
    notes: tuple[str, ...]
    cautions: tuple[CautionView, ...]
    entries: tuple[EntryView, ...]
    not_asked: tuple[CheckView, ...]
    unknown_answers: tuple[str, ...]
    ruled_out: tuple[RuledOutView, ...]
    stability: StabilityView | None
    set_aside: tuple[str, ...]
    sources: tuple[SourceView, ...]
    case_text: str  # the entries as a case file, so that it can be run again
    earlier: tuple[EarlierView, ...] = ()
    differs: tuple[DiffersView, ...] = ()
    helped: tuple[HelpedView, ...] = ()
    shakers: ShakersView | None = None
    limits: tuple[LimitView, ...] = ()
    grids: tuple[GridView, ...] = ()


def chance_words(probability: float) -> str:
    """A chance in words; the number always stands beside it."""
    for limit, words in (
        (0.95, "almost certain"),
        (0.8, "very likely"),
        (0.6, "likely"),
        (0.4, "about even"),
        (0.2, "possible"),
        (0.07, "unlikely"),
    ):
        if probability >= limit:
            return words
    return "hardly likely"


def percent(probability: float) -> str:
    """A chance as a whole percentage, never rounded to certainty."""
    if probability <= 0.005:
        return "under 1 %"
    if probability >= 0.995:
        return "over 99 %"
    return f"{100 * probability:.0f} %"


def minutes(value: float) -> str:
    """Minutes as people say them."""
    if value < 1:
        return f"{max(5, round(value * 60 / 5) * 5)} s"
    if value < 120:
        return f"{value:.0f} min"
    return f"{value / 60:.1f} h"
