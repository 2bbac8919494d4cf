"""The planned job as the sums need it: what is known, and what is taken in place of the rest."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from diagnose.book.conditions import Number
from diagnose.book.model import Book
from diagnose.case.entries import Case, Entry
from diagnose.case.planned import Planned
from diagnose.physics.dressing import COARSEST, FINEST, expected_roughness
from diagnose.physics.marking import Marking, MarkingError
from diagnose.physics.power import FINISH
from diagnose.physics.quantities import read_quantity
from diagnose.reasoning.reason import Read, read_case
from diagnose.review.dresses import TIGHTEST
from diagnose.review.marking_facts import facts_of, marking_in
from diagnose.review.metals import MATERIAL, TheMetal, material_of, metal_of
from diagnose.shop.cards import Card, Shop


@dataclass(frozen=True)
class Usual:
    """What is taken when a number is not known: the careful end of what machines have."""

    value: float
    words: str


# check -> what is taken; careful means that the result is never too much for the machine
TAKEN = {
    "machine-power": Usual(370.0, "0.37 kW (1/2 hp), the least of usual machines"),
    "table-speed": Usual(0.2, "12 m/min, a brisk hand"),
    "spindle-speed": Usual(2850 / 60, "2850 rpm"),
    "wheel-width": Usual(0.013, "13 mm (1/2 in)"),
    "wheel-diameter": Usual(0.178, "178 mm (7 in)"),
    "part-length": Usual(0.15, "150 mm (6 in)"),
}
WET, DEPTH, SPARK_OUT = "wet-or-dry", "depth-of-cut", "spark-out-strokes"
REACH = "finish-in-reach"


@dataclass(frozen=True)
class SetUp:
    """The case read once, with the numbers of the set-up by check (SI) and what was taken."""

    read: Read
    planned: Planned
    metal: TheMetal | None
    numbers: Mapping[str, float]
    taken: Mapping[str, str] = field(default_factory=dict)
    marking: Marking | None = None
    thin: bool = False
    last: Read | None = None  # read with the depth of the last passes
    last_taken: str = ""  # that depth in words, when nobody said it

    @property
    def dry(self) -> bool:
        """True for a dry cut; mist counts as dry, for it may wet too little."""
        return self.read.facts.get(WET) in ("dry", "mist")

    @property
    def contact(self) -> str:
        """Width of contact: broad | ordinary | narrow."""
        return self.planned.contact or "ordinary"

    @property
    def grit(self) -> float | None:
        """Grit of the planned wheel, when its marking is known."""
        return float(self.marking.grit) if self.marking else None

    @property
    def finish(self) -> float | None:
        """The finish wanted, Ra (m)."""
        return _si(self.planned.finish, "roughness")

    @property
    def tolerance(self) -> float | None:
        """The whole width of the tolerance (m)."""
        return _si(self.planned.tolerance, "length")


def _si(text: str, dimension: str) -> float | None:
    return read_quantity(text, dimension).value if text else None


def set_up(book: Book, case: Case, shop: Shop, *, last_passes: bool = True) -> SetUp:
    """Read the planned job with the facts of its cards, its marking and its metal.

    `last_passes=False` leaves the second reading out, that of the last passes.

    Raises BookError when it names a card the shop does not have.
    """
    planned = case.planned or Planned()
    cards = dict(shop.facts_for(case))
    card = shop.wheels.get(case.wheel)
    marking = written_on(card) if card else planned.marking
    extra = facts_of(marking) if marking else {}
    material = material_of(planned)
    if material:
        extra[MATERIAL] = material
    extra |= _reach(planned, marking)
    known = {name: text for name, text in extra.items() if name in book.checks}
    read = read_case(book, case, {**known, **cards})
    last = _last_passes(read, planned) if last_passes else ""
    numbers = {n: v.value for n, v in read.facts.items() if isinstance(v, Number)}
    taken = {n: usual.words for n, usual in TAKEN.items() if n not in numbers}
    numbers |= {n: TAKEN[n].value for n in taken}
    return SetUp(
        read,
        planned,
        metal_of(planned, read.facts),
        numbers,
        taken,
        _marking(marking),
        is_thin(book, read),
        read_case(book, _with_depth(case, last), {**known, **cards}) if last else None,
        "" if planned.last_depth else last,
    )


def written_on(card: Card) -> str:
    """All that is written on a wheel, as its card has it: marking, size, speed limit."""
    return ", ".join(w for w in map(card.words.get, ("marking", "size", "limit")) if w)


def _reach(planned: Planned, text: str) -> dict[str, str]:
    """The answer of the check on the finish that the grit of the wheel can give."""
    marking, finish = _marking(text), _si(planned.finish, "roughness")
    if marking is None or finish is None or not COARSEST <= marking.grit <= FINEST:
        return {}
    reached = expected_roughness(float(marking.grit), TIGHTEST) <= finish
    return {REACH: "in-reach" if reached else "out-of-reach"}


def _last_passes(read: Read, planned: Planned) -> str:
    """The depth of the last passes as an answer: as planned, else the finishing cut of the trade.

    "" when the one depth that is told is as small as that.
    """
    told = read.facts.get(DEPTH)
    if planned.last_depth:
        return planned.last_depth
    return f"{FINISH * 1e3:g} mm" if isinstance(told, Number) and told.value > FINISH else ""


def _with_depth(case: Case, depth: str) -> Case:
    return case.with_entry(Entry("answer", DEPTH, depth))


def _marking(text: str) -> Marking | None:
    try:
        return marking_in(text) if text else None
    except MarkingError:
        return None


def is_thin(book: Book, read: Read) -> bool:
    """True when the book's own list for thin work applies."""
    from diagnose.review.lists import THIN, in_force

    return bool(in_force(book, THIN, read.facts))
