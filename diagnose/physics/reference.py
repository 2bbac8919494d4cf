"""What a shape reading was measured against, and the conclusions that reference cannot carry.

Source: metrology reasoning and shop practice (common practice, no source). An indicator on the
wheelhead that sweeps a surface ground on the same ways copies the ways and reads zero however
crooked they are; a micrometer shows thickness, so a bowed plate of even thickness reads perfect;
a part held by the magnet is held flat, which is not flat.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Against(Enum):
    """The reference of a shape reading."""

    TRAVEL = "machine travel"
    PLATE = "surface plate"
    MICROMETER = "micrometer"
    STRAIGHTEDGE = "straightedge or known-flat block"


class Surface(Enum):
    """What the indicator, micrometer or straightedge touched."""

    PART = "part"
    CHUCK = "chuck"
    KNOWN_FLAT = "known-flat block"


class Conclusion(Enum):
    """What somebody may want a shape reading to prove."""

    WAYS = "the machine's ways are straight"
    CHUCK = "the chuck face is true"
    FLAT = "the part is flat when free"
    PARALLEL = "the part is of even thickness"


@dataclass(frozen=True)
class Setting:
    """How a grid was taken.

    `ground_here` says whether that surface was ground on this machine and has not been moved
    since; None is don't know, and counts as if it was.
    """

    against: Against
    surface: Surface = Surface.PART
    magnet_on: bool = False
    ground_here: bool | None = None


@dataclass(frozen=True)
class Refusal:
    """A conclusion this reading cannot carry, why, and the reading that could."""

    conclusion: Conclusion
    because: str
    instead: str


class CannotShow(ValueError):
    """Raised when a reading is asked for a conclusion its reference cannot carry."""

    def __init__(self, refusal: Refusal) -> None:
        self.refusal = refusal
        said = refusal.conclusion.value
        super().__init__(f"This cannot show that {said}: {refusal.because} {refusal.instead}")


_COPIES = (
    "The surface was ground on these same ways (or nobody knows), so it copies them: the needle "
    "stands still however crooked they are."
)
_HELD = "The magnet was on: held flat is not flat."
_BLOCK = "Sweep a known-flat block under the head instead."
_TURN = "Turn the part end for end, same face up, and sweep again."
_FREE = "Magnet off, part cool, on a surface plate: rock it, feel under it, then sweep it."
_THICKNESS = "Map the thickness with a micrometer."
_NOT_TOUCHED = "This reading never touched it."


def refusals(setting: Setting) -> tuple[Refusal, ...]:
    """The conclusions a grid taken in this setting cannot carry, in the order of Conclusion."""
    looks = {
        Conclusion.WAYS: _ways,
        Conclusion.CHUCK: _chuck,
        Conclusion.FLAT: _flat,
        Conclusion.PARALLEL: _parallel,
    }
    said = ((conclusion, look(setting)) for conclusion, look in looks.items())
    return tuple(Refusal(conclusion, *why) for conclusion, why in said if why)


def refusals_of_a_difference() -> tuple[Refusal, ...]:
    """A difference of two grids shows what changed, and none of the conclusions."""
    because = "What both readings share has dropped out; only the change is left."
    instead = "Judge each of the two readings for itself."
    return tuple(Refusal(conclusion, because, instead) for conclusion in Conclusion)


def _ways(setting: Setting) -> tuple[str, str] | None:
    if setting.against is not Against.TRAVEL:
        return "The machine's travel is not in this reading.", _BLOCK
    if setting.surface is Surface.KNOWN_FLAT:
        return None
    if setting.ground_here is False:
        return "The shape of the swept surface is in the reading too.", f"{_BLOCK} Or: {_TURN}"
    return _COPIES, _BLOCK


def _chuck(setting: Setting) -> tuple[str, str] | None:
    if setting.surface is not Surface.CHUCK:
        return _NOT_TOUCHED, "Lay a straightedge or a known-flat block on the bare chuck."
    if setting.against is Against.TRAVEL and setting.ground_here is not False:
        return _COPIES, "Lay a known-flat block on the chuck, magnet off, and sweep the block."
    if setting.against is Against.STRAIGHTEDGE and setting.magnet_on:
        return "The magnet pulls the straightedge down.", "Do it again with the magnet off."
    return None


def _flat(setting: Setting) -> tuple[str, str] | None:
    if setting.surface is not Surface.PART:
        return _NOT_TOUCHED, _FREE
    if setting.against is Against.MICROMETER:
        return "A bowed plate of even thickness measures the same everywhere.", _FREE
    if setting.magnet_on:
        return _HELD, _FREE
    if setting.against is Against.TRAVEL:
        return "The shape of the ways is in the reading too.", _FREE
    return None


def _parallel(setting: Setting) -> tuple[str, str] | None:
    if setting.surface is not Surface.PART:
        return _NOT_TOUCHED, _THICKNESS
    if setting.against is Against.STRAIGHTEDGE:
        return "A straightedge follows any slope.", _THICKNESS
    if setting.against is Against.TRAVEL:
        return "The seat, the chuck and the ways are in the reading with the part.", _THICKNESS
    return None
