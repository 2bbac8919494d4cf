"""What is usual in a small shop: machines, wheels and jobs that drilled cases are set up with.

All invented; figures lie where small surface grinders lie. A weight says how usual an answer is
beside the other answers of its check; what is not named here counts one.
"""

from __future__ import annotations

from dataclasses import dataclass

METRE_A_MINUTE = 1.0 / 60.0
TURN_A_MINUTE = 1.0 / 60.0


@dataclass(frozen=True)
class Grinder:
    """One kind of machine. Spindle in rev/s, power in W, wheel in m; `drives` it comes with."""

    drives: tuple[str, ...]
    spindle: float
    power: float
    diameter: float
    width: float


GRINDERS = (
    Grinder(("belt",), 2840 * TURN_A_MINUTE, 750.0, 0.200, 0.020),
    Grinder(("belt",), 2600 * TURN_A_MINUTE, 1500.0, 0.200, 0.025),
    Grinder(("direct", "inverter-direct"), 2850 * TURN_A_MINUTE, 1100.0, 0.200, 0.020),
    Grinder(("direct", "inverter-direct"), 3450 * TURN_A_MINUTE, 750.0, 0.178, 0.013),
    Grinder(("coupling", "direct"), 1450 * TURN_A_MINUTE, 4000.0, 0.300, 0.040),
)
TABLE_SPEEDS = tuple(v * METRE_A_MINUTE for v in (4.0, 6.0, 8.0, 10.0, 12.0, 15.0, 18.0, 22.0))
DEPTHS = (2e-6, 5e-6, 8e-6, 1e-5, 1.5e-5, 2e-5, 3e-5)
DRESS_DEPTHS = (5e-6, 1e-5, 1.5e-5, 2e-5, 3e-5)
POLE_PITCHES = (0.010, 0.013, 0.016, 0.020, 0.025)
MARKED = 35.0  # m/s, the usual mark of a vitrified wheel


@dataclass(frozen=True)
class Shape:
    """A kind of part: lengths in m, each from lowest to highest."""

    name: str
    thickness: tuple[float, float]
    length: tuple[float, float]
    base: tuple[float, float]


PLATE = Shape("plate", (0.0025, 0.008), (0.10, 0.30), (0.05, 0.12))
BLOCK = Shape("block", (0.016, 0.040), (0.08, 0.25), (0.05, 0.12))

MATERIALS = {
    "soft-steel": "mild steel",
    "hardened-steel": "hardened tool steel, about 60 HRC",
    "cast-iron": "grey cast iron",
    "gummy-steel": "stainless steel",
    "light-or-red-metal": "aluminium",
    "cemented-carbide": "cemented carbide",
}
COOLING = {"dry": "ground dry", "mist": "with a mist of coolant", "wet": "with flood coolant"}

WEIGHTS: dict[str, dict[str, float]] = {
    "work-material": {
        "soft-steel": 4.0,
        "hardened-steel": 5.0,
        "cast-iron": 1.5,
        "gummy-steel": 1.5,
        "cemented-carbide": 0.3,
    },
    "wheel-abrasive": {"alumina": 8.0, "boron-nitride-or-diamond": 0.4},
    "wet-or-dry": {"wet": 3.0, "dry": 2.0},
    "drive": {"belt": 2.0, "direct": 2.0, "coupling": 0.5},
    "wheel-grit": {"middle-46-to-60": 4.0},
    "wheel-grade": {"h-to-j": 3.0, "k-to-m": 2.0},
    "how-held": {"flat-on-the-magnet": 8.0, "tape-or-wax": 0.3},
    "power-supply": {"three-phase-mains": 4.0},
    "skin-of-the-work": {"machined-clean": 4.0},
    "what-else-happened": {"nothing-else": 8.0},
    "what-was-done-to-the-wheel": {"off-and-on-again": 2.0, "new-of-the-same-kind": 2.0},
    "measured-already": {"outside": 3.0, "only-seen": 4.0, "inside": 0.02},
    "longer-than-usual-undressed": {"sooner": 2.0},
}
# With what metal which grain is usual, over the weight of the grain alone.
GRAIN_FOR: dict[str, dict[str, float]] = {
    "cemented-carbide": {"boron-nitride-or-diamond": 100.0},
    "light-or-red-metal": {"silicon-carbide": 8.0},
    "cast-iron": {"silicon-carbide": 3.0},
}
# Told in the story, so known from the start.
TOLD = (
    "work-material",
    "wet-or-dry",
    "drive",
    "wheel-abrasive",
    "wheel-grit",
    "wheel-grade",
    "part-thickness",
    "part-length",
    "part-base",
    "machine-power",
    "wheel-diameter",
    "wheel-width",
)


def weight(check: str, option: str, words: dict[str, str]) -> float:
    """How usual an answer is, given what is set up already."""
    found = WEIGHTS.get(check, {}).get(option, 1.0)
    if check == "wheel-abrasive":
        found *= GRAIN_FOR.get(words.get("work-material", ""), {}).get(option, 1.0)
    if (check, option) == ("what-changed", "coolant") and words.get("wet-or-dry") == "dry":
        found *= 0.02  # nobody changes a coolant that is not there
    return found
