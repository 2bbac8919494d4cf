"""The wheel from the shelf that suits the job best, and what is wrong with each other one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.physics.dressing import COARSEST, FINEST, expected_roughness
from diagnose.physics.grains import sizes_apart
from diagnose.physics.marking import Marking, MarkingError
from diagnose.physics.quantities import QuantityError, read_quantity
from diagnose.physics.units import show
from diagnose.physics.wheel import over_marked_speed, wheel_speed
from diagnose.physics.wheel_choice import Choice, choose, described, distances, letters_harder
from diagnose.review.dresses import TIGHTEST
from diagnose.review.far_off import wheel_far
from diagnose.review.marking_facts import marking_in
from diagnose.shop.cards import Card

JUST = 1.005  # a spindle may read that much above the mark and still be at it
TURNS, RIM = "marked-turning-speed", "marked-rim-speed"


@dataclass(frozen=True)
class Judged:
    """One wheel of the shelf. `barred`: why it may not run here; `wrong`: what does not suit.

    `far`: true when it is so far off that it is recommended for nothing here.
    """

    card: Card
    barred: str
    wrong: tuple[str, ...]
    rank: tuple[float, ...]
    far: bool = False


@dataclass(frozen=True)
class Shelf:
    """The wheel to begin with, and the wheels of the shelf, the best first."""

    choice: Choice
    wanted: str
    wheels: tuple[Judged, ...]

    @property
    def best(self) -> Judged | None:
        """The wheel that suits best; None when none may be used or comes near."""
        return next((w for w in self.wheels if not w.barred and not w.far), None)


def shelf_for(
    row: str,
    wheels: Mapping[str, Card],
    turning_speed: float | None,
    finish: float | None,
    *,
    planned: str,
    contact: str,
    thin: bool,
    wet: bool,
    units: str,
) -> Shelf:
    """The wheels of the shelf judged for a metal of the table of wheels (KeyError for another).

    `turning_speed` (rev/s) is the spindle's, None when it is not known; of equals the `planned`
    wheel is the best.
    """
    choice = choose(row, contact, thin, wet)
    judged = [_judge(choice, card, turning_speed, finish, units) for card in wheels.values()]
    judged.sort(key=lambda w: (bool(w.barred), w.far, w.rank, w.card.id != planned, w.card.id))
    return Shelf(choice, described(choice), tuple(judged))


def _judge(
    choice: Choice, card: Card, turning_speed: float | None, finish: float | None, units: str
) -> Judged:
    try:
        marking = marking_in(card.marking) if card.marking else None
    except MarkingError as error:
        return Judged(card, f"its marking cannot be read: {error}", (), ())
    if marking is None:
        return Judged(card, "no marking on its card: an unknown wheel is not run", (), ())
    barred = _too_fast(card, turning_speed, units) or _unreadable(card)
    wrong = [f"{name}: {how}" for name, how in distances(choice, marking) if how != "as wanted"]
    coarse = _too_coarse(marking, finish, units)
    far = bool(wheel_far(choice, marking))
    return Judged(card, barred, (*wrong, *coarse), _rank(choice, marking, bool(coarse)), far)


def _unreadable(card: Card) -> str:
    return "its mark cannot be read" if card.facts.get("wheel-mark") == "cannot-be-read" else ""


def _too_fast(card: Card, turning_speed: float | None, units: str) -> str:
    """Why the wheel may not run on this spindle; "" when nothing is known against it."""
    diameter = _si(card.facts.get("wheel-diameter", ""), "length")
    if turning_speed is None:
        return ""
    turns = _si(card.facts.get(TURNS, ""), "turning-speed")
    if turns is not None and turning_speed > JUST * turns:
        here, mark = show(turning_speed, "turning-speed"), show(turns, "turning-speed")
        return f"the spindle turns at {here}, the wheel is marked {mark}"
    rim = _si(card.facts.get(RIM, ""), "speed")
    if rim and diameter and over_marked_speed(diameter, turning_speed, rim) > JUST:
        here = show(wheel_speed(diameter, turning_speed), "speed", units)
        return f"its rim would run at {here}, it is marked {show(rim, 'speed', units)}"
    return ""


def _si(text: str, dimension: str) -> float | None:
    try:
        return read_quantity(text, dimension).value if text else None
    except QuantityError:
        return None


def _too_coarse(marking: Marking, finish: float | None, units: str) -> list[str]:
    if finish is None or not COARSEST <= marking.grit <= FINEST:
        return []
    finest = expected_roughness(float(marking.grit), TIGHTEST)
    if finest <= finish:
        return []
    told = show(finest, "roughness", units)
    return [f"finish: about Ra {told} at its finest, {show(finish, 'roughness', units)} is wanted"]


def _rank(choice: Choice, used: Marking, coarse: bool) -> tuple[float, ...]:
    """What counts first: the grain, the grade, the finish, the grit, the structure, the bond."""
    low, high = choice.grit
    off = (
        0 if low <= used.grit <= high else sizes_apart(high if used.grit > high else low, used.grit)
    )
    harder = letters_harder(choice, used)
    open_, closed = choice.structure
    structure = used.structure if used.structure is not None else open_
    loose = max(open_ - structure, structure - closed, 0)
    best_family = choice.abrasives.index(used.base) if used.base in choice.abrasives else 9
    # a letter too hard is worse than one too soft: it burns, the other only wears
    grade = 1.5 * harder if harder > 0 else float(-harder)
    other_bond = used.bond != choice.bond
    return (float(used.base not in choice.abrasives), grade, float(coarse), float(abs(off)),
            float(loose), float(other_bond), float(best_family))  # fmt: skip
