"""What the knowledge is made of, once read: frozen, typed, every part with its place in a file.

The field tables in `fields_*.py` say how each kind is written in YAML; this module says what the
rest of the house receives. Probabilities are floats in (0, 1), totals as authors write them
(P(sign | this cause is there), background included); numbers with a unit are SI floats.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from diagnose.book.advice import Aid, PartAdvice, Tick
from diagnose.book.conditions import Condition
from diagnose.book.glossary import Caution, Term
from diagnose.book.guided import GuidedCard
from diagnose.book.scale import Words

NO, YES = "no", "yes"
ALWAYS = Condition()


@dataclass(frozen=True)
class Where:
    """A place in a knowledge file: path as shown to people, line and column from 1."""

    file: str
    line: int
    column: int = 1


@dataclass(frozen=True)
class Source:
    """Where a fact comes from. `standing`: confirmed | from memory | common practice."""

    id: str
    title: str
    standing: str
    note: str = ""
    where: Where | None = None


@dataclass(frozen=True)
class Value:
    """One value a finding can take; `without_cause` is its background (None on the first)."""

    id: str
    name: str
    without_cause: float | None = None


@dataclass(frozen=True)
class Finding:
    """What the reasoning uses, told directly or worked out by a rule.

    kind is "sign" (a child of causes) or "circumstance" (changes the odds of causes before
    them). `values` run from least to most striking; the first is always nothing of the kind.
    A yes/no sign has the values no and yes.
    """

    id: str
    name: str
    kind: str
    values: tuple[Value, ...]
    sharpens: str | None = None
    source: str = ""
    where: Where | None = None

    @cached_property
    def value_ids(self) -> tuple[str, ...]:
        return tuple(v.id for v in self.values)


@dataclass(frozen=True)
class Symptom:
    """What is wrong with the work, in the machinist's words; also a yes/no sign of its own."""

    id: str
    name: str
    family: str
    looks_like: str
    in_words: tuple[str, ...]
    without_cause: float
    first_questions: tuple[str, ...]
    the_part: tuple[PartAdvice, ...]
    first_aid: tuple[Aid, ...]
    sources: tuple[str, ...]
    cards: tuple[str, ...] = ()
    runs: str = ""  # across | along | slanted | patches | none: which way the marks run
    spacing: str = ""  # fine | crossfeed | wide | long | none
    regular: str = ""  # regular | irregular | none
    sketch: str = ""
    sharpens: str | None = None
    replaces: tuple[str, ...] = ()
    where: Where | None = None

    @cached_property
    def finding(self) -> Finding:
        """The symptom as the yes/no sign the inference sees."""
        values = (Value(NO, "no"), Value(YES, self.name, self.without_cause))
        return Finding(self.id, self.name, "sign", values, self.sharpens, "", self.where)


@dataclass(frozen=True)
class Option:
    """One answer of a check: what it says, which findings it means, which stops it touches."""

    id: str
    say: str
    means: Mapping[str, str] = field(default_factory=dict)
    raises: tuple[str, ...] = ()
    clears: tuple[str, ...] = ()
    sketch: str = ""


@dataclass(frozen=True)
class Report:
    """A check that only reports a hidden sign, with how far it can be trusted."""

    finding: str
    right_when_there: float
    right_when_not: float


@dataclass(frozen=True)
class Check:
    """One thing to look at, ask, try or measure.

    kind: one (pick one option) | any (pick any options) | number | file. `settles` names the
    findings its answer, or the rules on its number, can conclude. `trial` changes something
    and starts a new round; `changes` are the tags it leaves behind, `spoiled_by` the tags
    after which this check must be made afresh. `standing`: "" | machine | wheel | job: a fact
    that does not change while that thing stays the same.
    """

    id: str
    name: str
    kind: str
    ask: str
    help: str
    minutes: float
    options: tuple[Option, ...] = ()
    settles: tuple[str, ...] = ()
    dimension: str = ""
    lowest: float | None = None
    highest: float | None = None
    example: str = ""
    give_or_take: float = 0.0  # relative, used when the answer states no uncertainty
    together_with: tuple[str, ...] = ()
    reads: str = ""  # file: grid
    against: str = ""  # grid: machine-travel | surface-plate | micrometer | straightedge
    touched: str = ""  # grid: part | chuck | known-flat
    proves: str = ""
    no_instrument: str = ""
    needs: tuple[str, ...] = ()  # wheel-stopped | wheel-turning | magnet-on | magnet-off | ...
    tools: tuple[str, ...] = ()
    place: str = ""  # history | part | wheel | machine | bench
    shares_preparation: str = ""
    preparation_minutes: float = 0.0
    asked_when: Condition = ALWAYS
    trial: bool = False
    changes: tuple[str, ...] = ()
    spoiled_by: tuple[str, ...] = ()
    standing: str = ""
    gate: bool = False
    opens: float = 0.0  # place among the questions asked before all else; 0: none
    reports: Report | None = None
    cautions: tuple[str, ...] = ()
    source: str = ""
    replaces: tuple[str, ...] = ()
    where: Where | None = None

    @cached_property
    def by_option(self) -> dict[str, Option]:
        return {o.id: o for o in self.options}


@dataclass(frozen=True)
class Arrow:
    """One step of cause and effect, with its because."""

    to: str
    because: str
    source: str = ""


@dataclass(frozen=True)
class Mechanism:
    """A step between cause and symptom: what a newcomer must learn."""

    id: str
    name: str
    explain: str
    leads_to: tuple[Arrow, ...]
    source: str = ""
    where: Where | None = None


@dataclass(frozen=True)
class WorkOut:
    """A named calculation of `diagnose.physics`: its inputs by fact, its result as a new fact."""

    with_: str
    inputs: Mapping[str, str]  # input name of the calculation -> fact name or literal quantity
    gives: str


@dataclass(frozen=True)
class Conclusion:
    """What a rule adds: exactly one of finding (with `is_`), stop, note, caution."""

    condition: Condition = ALWAYS
    finding: str = ""
    is_: str = ""
    stop: str = ""
    note: str = ""
    caution: str = ""
    shows: str = ""  # what grid readings must be able to show: ways | chuck | flat | parallel


@dataclass(frozen=True)
class Rule:
    """When these facts hold, work this out and conclude that. Rules only ever add."""

    id: str
    name: str
    when: Condition
    then: tuple[Conclusion, ...]
    because: str
    source: str
    work_out: WorkOut | None = None
    where: Where | None = None


@dataclass(frozen=True)
class Stop:
    """A hazard. kind "stop": the machine; kind "hold": the work is put aside, diagnosis goes on.

    `asked_by` is the check certain to be asked before anything turns; the clearance lapses
    after any of the tags in `renewed_by`.
    """

    id: str
    name: str
    kind: str
    what_is_wrong: str
    do_first: tuple[str, ...]
    cleared_when: str
    asked_by: str
    source: str
    applies_when: Condition = ALWAYS
    renewed_by: tuple[str, ...] = ()
    cards: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    replaces: tuple[str, ...] = ()
    where: Where | None = None


@dataclass(frozen=True)
class Link:
    """P(sign has this value | this cause is there), a total."""

    finding: str
    value: str
    how_often: float
    word: str
    because: str
    source: str
    where: Where | None = None


@dataclass(frozen=True)
class Shift:
    """A circumstance that makes a cause more or less likely, as an odds factor."""

    when: Condition
    factor: float
    word: str
    because: str
    source: str = ""


@dataclass(frozen=True)
class Gate:
    """A condition without which a cause is impossible, and what to say when it is ruled out."""

    when: Condition
    because: str


@dataclass(frozen=True)
class Confirm:
    """A check that reports this cause itself; `option` is the answer that speaks for it."""

    check: str
    option: str
    right_when_there: float
    right_when_not: float


@dataclass(frozen=True)
class Fix:
    """The cure of a cause. `id` is the cause's own id, or that of the cause it shares it with."""

    id: str
    do: str
    minutes_first_time: float
    minutes_practised: float
    cures: float
    steps: tuple[str, ...]
    proof: str
    needs: tuple[str, ...] = ()
    tools: tuple[str, ...] = ()
    changes: tuple[str, ...] = ()
    call_someone: str = ""
    cards: tuple[str, ...] = ()


@dataclass(frozen=True)
class Example:
    """A test that sits beside its cause: these answers rank it first, or do not."""

    title: str
    complaint: tuple[str, ...]
    answers: Mapping[str, str]
    first: str = ""
    not_first: str = ""
    where: Where | None = None


@dataclass(frozen=True)
class Cause:
    """Something a person can change, with all that is known of it."""

    id: str
    name: str
    summary: str
    status: str
    prior: float
    how_common: str
    shows: tuple[Link, ...]
    leads_through: tuple[Arrow, ...]
    fix: Fix
    cautions: tuple[str, ...]
    look_alikes: tuple[str, ...]
    sources: tuple[str, ...]
    examples: tuple[Example, ...]
    possible_when: tuple[Gate, ...] = ()
    more_likely_when: tuple[Shift, ...] = ()
    set_by: str = ""
    be_sure: tuple[Confirm, ...] = ()
    first_aid: tuple[Aid, ...] = ()
    replaces: tuple[str, ...] = ()
    where: Where | None = None
    learned: float = 1.0  # odds factor of the shop's closed cases, for the complaint in hand

    @cached_property
    def shifts(self) -> Mapping[str, tuple[Shift, ...]]:
        """What moves its odds, by the first fact each looks at: not known, it moves nothing."""
        firsts = dict.fromkeys(s.when.facts[0] for s in self.more_likely_when)
        return {f: tuple(s for s in self.more_likely_when if s.when.facts[0] == f) for f in firsts}


@dataclass(frozen=True)
class Book:
    """The whole knowledge, by kind and id."""

    words: Words
    sources: Mapping[str, Source]
    symptoms: Mapping[str, Symptom]
    findings: Mapping[str, Finding]  # the signs and circumstances, symptoms included
    checks: Mapping[str, Check]
    causes: Mapping[str, Cause]
    mechanisms: Mapping[str, Mechanism]
    cautions: Mapping[str, Caution]
    rules: Mapping[str, Rule]
    stops: Mapping[str, Stop]
    cards: Mapping[str, GuidedCard] = field(default_factory=dict)
    terms: Mapping[str, Term] = field(default_factory=dict)
    before: Mapping[str, Tick] = field(default_factory=dict)  # what is ticked off before the cut
    renamed: Mapping[str, str] = field(default_factory=dict)  # old id -> id
    version: str = ""
    own: Mapping[str, int] = field(default_factory=dict)  # id -> which extra folder, from 1
    origins: tuple[str, ...] = ()  # the extra folders in words: "your shop", "pack belt-lessons"
    overridden: Mapping[str, str] = field(default_factory=dict)  # id -> reason of the shop

    def origin(self, name: str) -> str:
        """Where an entry comes from in words; "" when it is shipped."""
        number = self.own.get(name, 0)
        return self.origins[number - 1] if 0 < number <= len(self.origins) else ""

    @cached_property
    def dimensions(self) -> dict[str, str]:
        """Dimension of every number fact: answers of number checks and worked-out results."""
        from diagnose.book.grid_checks import grid_numbers
        from diagnose.physics.catalogue import calculation

        told = {c.id: c.dimension for c in self.checks.values() if c.kind == "number"}
        told |= dict.fromkeys(grid_numbers(self), "deviation")
        for rule in self.rules.values():
            if rule.work_out is not None:
                told[rule.work_out.gives] = calculation(rule.work_out.with_).gives
        return told
