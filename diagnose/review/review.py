"""A planned job reviewed in one call: everything the view of a review shows, worked out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from diagnose.book.advice import Tick
from diagnose.book.model import Book
from diagnose.case.entries import Case, Entry
from diagnose.physics.catalogue import Answer
from diagnose.physics.dressing import COARSEST, FINEST
from diagnose.physics.wear import strokes_answer
from diagnose.reasoning.network import Network
from diagnose.reasoning.reason import read_case
from diagnose.reasoning.trials import network_of
from diagnose.review.against import LastGood, last_good
from diagnose.review.cuts import Cuts, cuts_for, table_pace
from diagnose.review.dresses import Dresses, dresses_for
from diagnose.review.far_off import FarOff, answers_far, settings_far, wheel_far
from diagnose.review.levels import Levels, levels_of
from diagnose.review.lists import lists_for
from diagnose.review.marking_facts import facts_of, marking_in
from diagnose.review.risks import Risk, Weighed, present, weigh
from diagnose.review.set_up import DEPTH, SetUp, set_up
from diagnose.review.settings import ACROSS, Setting, settings_for, usual_bite
from diagnose.review.unknown import Unknown, unknowns
from diagnose.review.wheels import Shelf, shelf_for
from diagnose.shop.cards import Card, Shop
from diagnose.shop.closed import Kept

LASTED = "strokes-a-dress-lasted"  # reading of a healthy record
ORDINARY_GRIT = 46.0
PLANNED = "planned"  # stands for a wheel told by its marking alone
DRIVEN = "hydraulic"
WHEEL_CHECKS = ("wheel-abrasive", "wheel-grit", "wheel-grade", "wheel-structure")


@dataclass(frozen=True)
class Review:
    """All that was worked out for a planned job; None where the metal has no row in a table.

    `after` gives each risk's cause its chance with what is recommended.
    """

    setup: SetUp
    weighed: Weighed
    levels: Levels
    after: Mapping[str, float]
    shelf: Shelf | None
    cuts: Cuts | None
    dresses: Dresses | None
    settings: tuple[Setting, ...]
    due: Answer | None
    lists: tuple[tuple[str, tuple[Tick, ...]], ...]
    unknown: tuple[Unknown, ...]
    against: LastGood | None
    asked_against: bool


def review(
    book: Book, case: Case, shop: Shop, units: str, closed: Iterable[Kept] | None = None
) -> Review:
    """Review a planned job. `closed`: closed cases, latest first, when it is laid beside one.

    Raises BookError for a card the shop does not have, belief.Impossible.
    """
    setup = set_up(book, case, shop)
    metal = setup.metal
    shelf = _shelf(setup, shop, units) if metal is not None and metal.has_wheels else None
    cuts = _cuts(setup) if metal is not None and metal.known else None
    far = _far(setup, shelf, cuts, units)
    weighed = weigh(book, setup.read, setup.last, nothing_known(book), far)
    dresses = _dresses(setup, shelf) if cuts else None
    settings = settings_for(setup, cuts, dresses) if cuts and dresses else ()
    told = {name: fact.text for name, fact in setup.read.gathered.told.items()}
    after = _after(book, case, shop, weighed.risks, shelf, cuts, settings)
    keep = {s.check: s.keep for s in settings if s.planned is not None}
    return Review(
        setup,
        weighed,
        levels_of(book, setup.read, weighed.network, weighed.risks, after, keep),
        after,
        shelf,
        cuts,
        dresses,
        settings,
        _due(setup, shop, cuts),
        lists_for(book, setup.read.facts, setup.planned.sides),
        unknowns(book, setup.read, weighed),
        last_good(book, shop, case.machine, told, closed) if closed is not None else None,
        closed is not None,
    )


def nothing_known(book: Book) -> Network:
    """The network of a job of which nothing is known: what risks are measured against."""
    read = read_case(book, Case("", ()))
    return network_of(book, (), read.gathered, read.deduced)[0]


def _shelf(setup: SetUp, shop: Shop, units: str) -> Shelf:
    assert setup.metal is not None
    wheels = dict(shop.wheels)
    if setup.planned.marking and not setup.read.case.wheel:
        card = Card(PLANNED, "the wheel planned", facts_of(setup.planned.marking),
                    {"marking": setup.planned.marking})  # fmt: skip
        wheels[PLANNED] = card
    turns = None if "spindle-speed" in setup.taken else setup.numbers["spindle-speed"]
    return shelf_for(
        setup.metal.row,
        wheels,
        turns,
        setup.finish,
        planned=setup.read.case.wheel or PLANNED,
        contact=setup.contact,
        thin=setup.thin,
        wet=not setup.dry,
        units=units,
    )


def _far(setup: SetUp, shelf: Shelf | None, cuts: Cuts | None, units: str) -> tuple[FarOff, ...]:
    """What of the wheel and of the settings as planned is far off."""
    facts = setup.read.facts
    settings = settings_far(facts, cuts, units)
    if shelf is None:
        return settings
    if setup.marking is not None:
        return (*wheel_far(shelf.choice, setup.marking), *settings)
    return (*answers_far(shelf.choice, facts), *settings)


def _cuts(setup: SetUp) -> Cuts:
    assert setup.metal is not None
    numbers = setup.numbers
    return cuts_for(
        setup.metal.row,
        numbers["machine-power"],
        table_pace(numbers["table-speed"], setup.read.facts.get("table-drive") == DRIVEN),
        numbers["wheel-width"],
        numbers["wheel-diameter"],
        dry=setup.dry,
        thin=setup.thin,
        tolerance=setup.tolerance,
    )


def _dresses(setup: SetUp, shelf: Shelf | None) -> Dresses:
    """For the planned wheel; for the best of the shelf when none is planned."""
    grit = setup.grit
    if grit is None and shelf is not None and shelf.best is not None:
        grit = float(marking_in(shelf.best.card.marking).grit)
    grit = min(max(grit or ORDINARY_GRIT, COARSEST), FINEST)
    numbers = setup.numbers
    bite = usual_bite(setup)
    return dresses_for(setup.finish, grit, numbers["wheel-width"], numbers["spindle-speed"], bite)


def _due(setup: SetUp, shop: Shop, cuts: Cuts | None) -> Answer | None:
    if cuts is None or setup.metal is None:
        return None
    good = shop.healthy.get(setup.read.case.machine)
    had = setup.planned.strokes_had or (good.readings.get(LASTED, "") if good else "")
    numbers = setup.numbers
    return strokes_answer(
        setup.metal.row,
        numbers["wheel-diameter"],
        numbers["wheel-width"],
        cuts.ways[0].crossfeed,
        numbers["part-length"],
        _count(had),
    )


def _count(text: str) -> float:
    from diagnose.physics.quantities import QuantityError, read_quantity

    try:
        return read_quantity(text, "count").value if text else 0.0
    except QuantityError:
        return 0.0


def _after(
    book: Book,
    case: Case,
    shop: Shop,
    risks: tuple[Risk, ...],
    shelf: Shelf | None,
    cuts: Cuts | None,
    settings: tuple[Setting, ...],
) -> Mapping[str, float]:
    """The chance of each cause at risk with the recommended wheel, dress and cut."""
    answers = {s.check: s.answer() for s in settings}
    wheel = shelf.best.card if shelf is not None and shelf.best is not None else None
    if wheel is not None:
        answers |= {n: a for n, a in wheel.facts.items() if n in book.checks}
        answers |= facts_of(wheel.marking)
    if not answers or not risks:
        return {r.cause: r.there for r in risks}
    job = _with(case, answers)
    found = present(_network(book, job, shop))
    ends = {r.cause for r in risks if r.at_the_end}
    if ends and cuts is not None:
        way = cuts.ways[-1]
        last = _with(job, {DEPTH: _mm(way.depth), ACROSS: _mm(way.crossfeed)})
        found |= {c: p for c, p in present(_network(book, last, shop)).items() if c in ends}
    # no wheel, dress or cut balances what is out of balance
    # and a wheel that is far off stays so when the shelf has no better one
    stays = {r.cause for r in risks if r.force or (_of_wheel(r) and wheel is None)}
    return {r.cause: r.there if r.cause in stays else found.get(r.cause, 0.0) for r in risks}


def _of_wheel(risk: Risk) -> bool:
    return risk.far is not None and risk.far.check in WHEEL_CHECKS


def _network(book: Book, case: Case, shop: Shop) -> Network:
    read = set_up(book, case, shop, last_passes=False).read
    return network_of(book, (), read.gathered, read.deduced)[0]


def _with(case: Case, answers: Mapping[str, str]) -> Case:
    entries = tuple(Entry("answer", name, text) for name, text in sorted(answers.items()))
    return replace(case, entries=(*case.entries, *entries))


def _mm(length: float) -> str:
    return f"{length * 1e3:.6g} mm"
