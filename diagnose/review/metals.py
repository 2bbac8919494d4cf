"""The metal of a planned job: between what a check asks and the rows of the tables of the trade."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.book.conditions import FactValue
from diagnose.case.planned import NO_GRAIN, Planned
from diagnose.physics.quantities import read_quantity
from diagnose.physics.tables import METALS, WHEELS
from diagnose.physics.wheel_choice import HARDENED, STEELS, steel_of

MATERIAL = "work-material"
# answer of the check -> rows of the tables it may be, the one to plan with first
ROWS = {
    "soft-steel": ("soft-steel", "alloy-steel"),
    "hardened-steel": ("hardened-steel", "high-speed-steel", "martensitic-stainless"),
    "cast-iron": ("grey-iron", "ductile-iron"),
    "gummy-steel": ("austenitic-stainless",),
    "light-or-red-metal": ("aluminium", "brass", "copper", "hard-bronze"),
    "cemented-carbide": ("carbide", "ceramic"),
}


@dataclass(frozen=True)
class TheMetal:
    """The row of the tables to plan with. `taken` says what was taken for granted, "" = nothing."""

    row: str
    name: str
    taken: str = ""

    @property
    def known(self) -> bool:
        """True when the tables have a row for wheels and cuts."""
        return self.row in METALS

    @property
    def has_wheels(self) -> bool:
        """True when the table of wheels has a row."""
        return self.row in WHEELS


def metal_of(planned: Planned, facts: Mapping[str, FactValue]) -> TheMetal | None:
    """The metal of the job; None when nobody said."""
    told = facts.get(MATERIAL)
    row = planned.metal or (ROWS.get(told, ("",))[0] if isinstance(told, str) else "")
    if not row and planned.hardness:
        row = STEELS[0]  # of what is told by its hardness alone; the row follows from it below
    if planned.hardness and row in STEELS:
        row = steel_of(read_quantity(planned.hardness, "hardness").value)
    if not row:
        return None
    name = METALS[row].name if row in METALS else row
    taken = "" if planned.metal or planned.hardness else _taken(told, row)
    return TheMetal(row, name, taken)


def _taken(told: FactValue | None, row: str) -> str:
    others = [r for r in ROWS.get(str(told), ()) if r != row]
    if not others:
        return ""
    words = " or ".join(METALS[r].name if r in METALS else r for r in others)
    mine = METALS[row].name if row in METALS else row
    return f"the metal is taken as {mine}; for {words} write it under planned: metal"


def material_of(planned: Planned) -> str:
    """The answer of the check that the planned metal stands for; "" when there is none."""
    if planned.metal in NO_GRAIN:
        return "cemented-carbide" if planned.metal == "carbide" else ""
    hard = bool(planned.hardness) and _vickers(planned) >= HARDENED
    if planned.metal in (*STEELS, "") and planned.hardness:
        return "hardened-steel" if hard else "soft-steel"
    return next((check for check, rows in ROWS.items() if planned.metal in rows), "")


def _vickers(planned: Planned) -> float:
    return read_quantity(planned.hardness, "hardness").value


def fits(planned: Planned, facts: Mapping[str, FactValue]) -> bool:
    """False when the hardness told is that of another steel than the check's answer."""
    told = facts.get(MATERIAL)
    if not planned.hardness or told not in ("soft-steel", "hardened-steel"):
        return True
    return (_vickers(planned) >= HARDENED) is (told == "hardened-steel")
