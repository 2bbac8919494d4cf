"""Tables of the trade: metals, wheels to begin with, handbook depths, energies. A source a row."""

from __future__ import annotations

from dataclasses import dataclass

MH_2A = "Machinery's Handbook 31st ed. p. 1328 Table 2a"
MH_3 = "Machinery's Handbook 31st ed. p. 1329 Table 3"
ENERGIES = "specific-energy table of an abrasive formula sheet after Kalpakjian & Schmid"
PRACTICE = "common practice"


@dataclass(frozen=True)
class Metal:
    """What grinding must know of a metal.

    `energy` is a middle (J/m3) to plan with and `energies` its range; `ratios` the range of
    volume ground for volume of wheel worn (G); `expansion` in 1/K.
    """

    id: str
    name: str
    energy: float
    energies: tuple[float, float]
    ratios: tuple[float, float]
    expansion: float
    source: str
    standing: str


METALS: dict[str, Metal] = {
    each.id: each
    for each in (
        Metal("soft-steel", "low-carbon or soft steel", 40e9, (14e9, 68e9), (5, 40), 12e-6,
              ENERGIES, "confirmed"),
        Metal("alloy-steel", "alloy steel, 30 to 50 HRC", 50e9, (16e9, 75e9), (5, 30), 12e-6,
              "between the rows for soft and tool steel", "from memory"),
        Metal("hardened-steel", "hardened tool steel, above 50 HRC", 60e9, (18e9, 82e9), (2, 10),
              12e-6, ENERGIES, "confirmed"),
        Metal("high-speed-steel", "high-speed steel, 60 to 66 HRC", 65e9, (18e9, 82e9), (1, 8),
              11.5e-6, ENERGIES, "confirmed"),
        Metal("grey-iron", "grey cast iron", 35e9, (12e9, 60e9), (10, 60), 10.5e-6, ENERGIES,
              "confirmed"),
        Metal("ductile-iron", "ductile iron", 40e9, (12e9, 65e9), (10, 60), 11.5e-6,
              "taken as grey iron", "from memory"),
        Metal("austenitic-stainless", "austenitic stainless", 55e9, (20e9, 80e9), (2, 15), 16.5e-6,
              "taken near tool steel", "from memory"),
        Metal("martensitic-stainless", "hard martensitic stainless", 60e9, (18e9, 82e9), (2, 10),
              10.5e-6, "taken as tool steel", "from memory"),
        Metal("aluminium", "aluminium alloy", 15e9, (7e9, 27e9), (5, 40), 23.5e-6, ENERGIES,
              "confirmed"),
        Metal("brass", "brass or soft bronze", 20e9, (7e9, 40e9), (5, 40), 19.5e-6,
              "taken near aluminium", "from memory"),
        Metal("hard-bronze", "hard bronze", 30e9, (10e9, 50e9), (5, 40), 18e-6,
              "taken near cast iron", "from memory"),
        Metal("copper", "copper", 30e9, (10e9, 50e9), (5, 40), 17e-6, "taken near bronze",
              "from memory"),
        Metal("titanium", "titanium", 40e9, (16e9, 55e9), (1, 10), 8.8e-6, ENERGIES, "confirmed"),
    )
}  # fmt: skip


@dataclass(frozen=True)
class WheelRow:
    """The wheel to begin with for a metal: families of abrasive (best first) and ranges."""

    metal: str
    abrasives: tuple[str, ...]
    grit: tuple[int, int]
    grade: tuple[str, str]
    structure: tuple[int, int]
    bond: str
    hint: str
    source: str
    standing: str


WHEELS: dict[str, WheelRow] = {
    each.metal: each
    for each in (
        WheelRow("soft-steel", ("A",), (46, 60), ("H", "K"), (7, 9), "V",
                 "brown or half-friable grain; J to begin with", MH_2A, "from memory"),
        WheelRow("alloy-steel", ("A",), (46, 60), ("H", "J"), (8, 8), "V",
                 "white or pink grain", PRACTICE, "from memory"),
        WheelRow("hardened-steel", ("A",), (46, 80), ("F", "H"), (8, 12), "V",
                 "white grain: 46 H 8 for broad contact, or 60 F 12 open; 80 only to finish",
                 MH_2A, "from memory"),
        WheelRow("high-speed-steel", ("A",), (46, 60), ("F", "H"), (8, 12), "V",
                 "white or ceramic grain", PRACTICE, "from memory"),
        WheelRow("grey-iron", ("C", "A"), (36, 46), ("H", "K"), (7, 8), "V",
                 "C 36 K 8, or A 46 I 8", MH_2A, "from memory"),
        WheelRow("ductile-iron", ("A",), (46, 46), ("H", "J"), (8, 8), "V", "", PRACTICE,
                 "from memory"),
        WheelRow("austenitic-stainless", ("A", "C"), (46, 54), ("G", "I"), (8, 12), "V",
                 "white or ceramic grain; it loads", PRACTICE, "from memory"),
        WheelRow("martensitic-stainless", ("A",), (46, 60), ("G", "I"), (8, 12), "V",
                 "white grain", PRACTICE, "from memory"),
        WheelRow("aluminium", ("C", "A"), (36, 46), ("H", "J"), (8, 12), "V",
                 "green grain with oil or wax on the wheel; it loads", MH_2A, "from memory"),
        WheelRow("brass", ("C",), (36, 46), ("I", "K"), (7, 8), "V", "",
                 "Machinery's Handbook 31st ed. p. 1317, cylindrical rows", "from memory"),
        WheelRow("hard-bronze", ("A",), (46, 46), ("I", "K"), (8, 8), "V", "", PRACTICE,
                 "from memory"),
        WheelRow("copper", ("C",), (36, 46), ("I", "J"), (8, 12), "V", "it smears and loads",
                 PRACTICE, "from memory"),
        WheelRow("mixed-work", ("A",), (46, 46), ("H", "J"), (8, 8), "V",
                 "the first wheel of a small shop: white or pink, 46, H to J, 8", MH_2A,
                 "from memory"),
    )
}  # fmt: skip


@dataclass(frozen=True)
class DepthRow:
    """A row of handbook depths (m a pass) and crossfeed (share of the wheel's width)."""

    metal: str
    rough: float
    finish: float
    crossfeed: float
    source: str
    standing: str


_THOU = 25.4e-6
DEPTHS: dict[str, DepthRow] = {
    each.metal: each
    for each in (
        DepthRow("soft-steel", 3 * _THOU, 0.5 * _THOU, 1 / 4, MH_3, "confirmed"),
        DepthRow("alloy-steel", 3 * _THOU, _THOU, 1 / 4, MH_3, "confirmed"),
        DepthRow("hardened-steel", 2 * _THOU, 0.5 * _THOU, 1 / 10, MH_3, "from memory"),
        DepthRow("high-speed-steel", 2 * _THOU, 0.5 * _THOU, 1 / 10, MH_3, "from memory"),
        DepthRow("grey-iron", 3 * _THOU, _THOU, 1 / 3, MH_3, "from memory"),
        DepthRow("ductile-iron", 3 * _THOU, _THOU, 1 / 5, MH_3, "from memory"),
        DepthRow("austenitic-stainless", 2 * _THOU, 0.5 * _THOU, 1 / 4, MH_3, "from memory"),
        DepthRow("martensitic-stainless", _THOU, 0.5 * _THOU, 1 / 8, MH_3, "from memory"),
        DepthRow("aluminium", 3 * _THOU, _THOU, 1 / 3, MH_3, "from memory"),
        DepthRow("brass", 2 * _THOU, 0.5 * _THOU, 1 / 3, PRACTICE, "common practice"),
        DepthRow("hard-bronze", 2 * _THOU, 0.5 * _THOU, 1 / 4, PRACTICE, "common practice"),
        DepthRow("copper", 2 * _THOU, 0.5 * _THOU, 1 / 4, PRACTICE, "common practice"),
        DepthRow("titanium", _THOU, 0.5 * _THOU, 1 / 10, PRACTICE, "common practice"),
    )
}


@dataclass(frozen=True)
class FinishRow:
    """Roughness Ra (m) that a grit gives on a sharp wheel with spark-out: fine dress to rough."""

    grit: int
    finest: float
    roughest: float


FINISHES = (
    FinishRow(36, 0.8e-6, 1.6e-6),
    FinishRow(46, 0.4e-6, 1.0e-6),
    FinishRow(60, 0.3e-6, 0.6e-6),
    FinishRow(80, 0.2e-6, 0.4e-6),
    FinishRow(120, 0.1e-6, 0.25e-6),
)

TEMPER_COLOURS: dict[str, tuple[float, float]] = {  # deg C on carbon steel, minutes in a furnace
    "pale straw": (215, 225), "straw": (230, 240), "brown": (250, 260), "purple": (270, 280),
    "blue": (290, 305), "grey-blue": (320, 340),
}  # fmt: skip
