"""What of wheel, dress and crossfeed is far from what suits, and in how many steps.

The circumstances of the book speak in words (a very fine dress, grades K to M) and cannot tell a
little from a lot. Here the number itself is laid beside what suits. A step is a grade letter, a
size of grit, or a doubling. Each step doubles the odds of the cause (`DOUBLES`: ours, no source),
so that the weight of a risk grows with the distance.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.book.conditions import FactValue, Number
from diagnose.physics.grains import sizes_apart
from diagnose.physics.marking import Marking
from diagnose.physics.units import show
from diagnose.physics.wheel_choice import Choice, described, distances, letters_harder
from diagnose.review.cuts import Cuts

DOUBLES = 2.0  # times the odds of the cause, for each step
FAR = 2  # letters or sizes of grit from which a wheel is far off
OPENEST, CLOSEST = 2.0, 20.0  # overlaps between which a dress is of any use
WRONG_GRAIN = 3.0  # steps a wrong abrasive counts for
OVERLAP, SECONDS, ACROSS = "dress-overlaps", "dress-seconds", "crossfeed"
# the letters behind the answer of the check, when no marking is known
LETTERS = {"g-or-softer": "EG", "h-to-j": "HJ", "k-to-m": "KM", "n-or-harder": "NR"}
BASES = {"alumina": "A", "silicon-carbide": "C"}


@dataclass(frozen=True)
class FarOff:
    """One thing far off: the cause it makes, the check that tells it, steps off, why, in words."""

    cause: str
    check: str
    steps: float
    because: str
    said: str
    source: str


def wheel_far(choice: Choice, used: Marking) -> tuple[FarOff, ...]:
    """What of a marked wheel is far from the choice."""
    told = dict(distances(choice, used))
    low, high = choice.grit
    sizes = sizes_apart(high if used.grit > high else low, used.grit)
    off = 0 if low <= used.grit <= high else abs(sizes)
    fine = "fine" if used.grit > high else "coarse"
    found = [
        *_grain(choice, used.base),
        *_grade(choice, letters_harder(choice, used), told["grade"]),
    ]
    if off >= FAR:
        grit = f"grit {used.grit}: {told['grit']}"
        found.append(_of_wheel(choice, f"wheel-grit-too-{fine}", "wheel-grit", float(off), grit))
    return tuple(found)


def answers_far(choice: Choice, facts: Mapping[str, FactValue]) -> tuple[FarOff, ...]:
    """The same by the answers about abrasive and grade: the nearest letter they may mean."""
    low, high = choice.grade
    ends = LETTERS.get(str(facts.get("wheel-grade")), low + high)
    harder = max(ord(ends[0]) - ord(high), 0) + min(ord(ends[1]) - ord(low), 0)
    word = "harder: it glazes and burns" if harder > 0 else "softer: it wears and loses size"
    base = BASES.get(str(facts.get("wheel-abrasive")), choice.abrasives[0])
    said = f"{abs(harder)} letters {word}"
    return (*_grain(choice, base), *_grade(choice, harder, said))


def _grain(choice: Choice, base: str) -> tuple[FarOff, ...]:
    if base in choice.abrasives:
        return ()
    said = f"abrasive {base}, not {' or '.join(choice.abrasives)}"
    cause, check = "wheel-wrong-for-the-material", "wheel-abrasive"
    return (_of_wheel(choice, cause, check, WRONG_GRAIN, said),)


def _grade(choice: Choice, harder: int, said: str) -> tuple[FarOff, ...]:
    if abs(harder) < FAR:
        return ()
    cause = f"wheel-grade-too-{'hard' if harder > 0 else 'soft'}"
    return (_of_wheel(choice, cause, "wheel-grade", float(abs(harder)), f"grade: {said}"),)


def _of_wheel(choice: Choice, cause: str, check: str, steps: float, said: str) -> FarOff:
    why = f"the wheel to begin with is {described(choice)}; no look at a fresh face clears it"
    return FarOff(cause, check, steps, why, said, "from-memory")


def settings_far(
    facts: Mapping[str, FactValue], cuts: Cuts | None, units: str
) -> tuple[FarOff, ...]:
    """What of the dress and the crossfeed as planned is far off."""
    found = []
    overlap, across = _number(facts, OVERLAP), _number(facts, ACROSS)
    if overlap > CLOSEST:
        found.append(_of_dress("dressed-too-fine", overlap, overlap / CLOSEST, CLOSED))
    elif 0 < overlap < OPENEST:
        found.append(_of_dress("dress-lead-too-coarse", overlap, OPENEST / overlap, OPENED))
    if cuts is not None and across >= 2 * cuts.widest:
        wide, told = show(cuts.widest, "length", units), show(across, "length", units)
        said = f"{told} across where {wide} is the most for a finish"
        times = math.log2(across / cuts.widest)
        why = "the wider the step, the less often each place is passed over"
        found.append(
            FarOff("crossfeed-too-wide", ACROSS, times, why, said, "handbook-grinding-feeds")
        )
    return tuple(found)


CLOSED = "so slow a diamond closes the face: it rubs, glazes and burns"
OPENED = "so quick a diamond leaves a thread, and parts of the face it never touched"


def _of_dress(cause: str, overlap: float, times: float, because: str) -> FarOff:
    said = f"overlap {overlap:.2g}, of use between {OPENEST:g} and {CLOSEST:g}"
    source = "dress-overlap-handbook"
    return FarOff(cause, SECONDS, 1.0 + math.log2(times), because, said, source)


def _number(facts: Mapping[str, FactValue], name: str) -> float:
    value = facts.get(name)
    return value.value if isinstance(value, Number) else 0.0


def lifted(chance: float, steps: float) -> float:
    """The chance with its odds doubled for each step."""
    chance = min(chance, 1.0 - 1e-9)
    odds = chance / (1.0 - chance) * math.pow(DOUBLES, steps)
    return odds / (1.0 + odds)
