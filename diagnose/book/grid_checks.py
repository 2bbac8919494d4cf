"""Checks whose answer is a grid of indicator readings: how they are taken, what they can show."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

from diagnose.book.model import Book, Check
from diagnose.book.nodes import Node
from diagnose.book.records import Record
from diagnose.book.shapes import Reading

if TYPE_CHECKING:
    from diagnose.physics.grid_reading import GridReading
    from diagnose.physics.reference import Setting

FIELDS = ("reads", "against", "touched")


def grid_fields(record: Record, kind: str, reading: Reading) -> dict[str, Any]:
    """The fields of a check of kind file; what is missing or out of place is noted."""
    for name in FIELDS:
        if kind and kind != "file" and name in record.nodes:
            what = f"'{name}:' belongs to a check of kind file; this one is kind {kind}"
            reading.fault(record.at(name), what, "take it out")
        elif kind == "file" and name not in record.nodes:
            what = f"a check of kind file has no '{name}:'"
            reading.fault(record.node, what, _MENDS[name])
    return {name: record.text(name) for name in FIELDS} if kind == "file" else {}


_MENDS = {
    "reads": "write reads: grid",
    "against": "say what it is measured against: surface-plate, micrometer, machine-travel ...",
    "touched": "say what the indicator touches: part, chuck or known-flat",
}


def setting_of(check: Check) -> Setting:
    """How the readings of a grid check are taken unless the answer says otherwise."""
    return _setting(check.against, check.touched, "magnet-on" in check.needs)


def told_how(check: Check) -> bool:
    """True when the check says what its readings are and how they are taken."""
    from diagnose.physics.grid_reading import AGAINST, SURFACES

    return check.reads == "grid" and check.against in AGAINST and check.touched in SURFACES


def grid_reading(check: Check, text: str, folder: Path | None = None) -> GridReading:
    """The readings of an answer. Raises BadReadings (from `diagnose.physics.readings`)."""
    from diagnose.physics.grid_reading import read_grid_reading

    return read_grid_reading(text, setting_of(check), folder)


def grid_facts(check: Record) -> dict[str, tuple[tuple[str, str], ...]]:
    """Each number that a grid check gives, with what the readings cannot show and why."""
    from diagnose.physics.grid_reading import AGAINST, SURFACES, TERMS

    against, touched = check.text("against"), check.text("touched")
    if check.text("reads") != "grid" or against not in AGAINST or touched not in SURFACES:
        return {}
    setting = _setting(against, touched, "magnet-on" in check.texts("needs"))
    return {f"{check.text('id')}-{term}": cannot_show(setting) for term in TERMS}


def grid_numbers(book: Book) -> dict[str, tuple[str, str]]:
    """Each number that a grid of readings gives: its check and its term."""
    from diagnose.physics.grid_reading import TERMS

    grids = [c.id for c in book.checks.values() if c.reads == "grid"]
    return {f"{name}-{term}": (name, term) for name in grids for term in TERMS}


def cannot_show(setting: Setting) -> tuple[tuple[str, str], ...]:
    """The conclusions that readings taken so do not carry: (id, why, and what would)."""
    from diagnose.physics.grid_reading import CONCLUSIONS
    from diagnose.physics.reference import refusals

    ids = {conclusion: name for name, conclusion in CONCLUSIONS.items()}
    return tuple(
        (ids[r.conclusion], f"These readings cannot show that {r.conclusion.value}: "
         f"{_small(r.because)} {r.instead}")
        for r in refusals(setting)
    )  # fmt: skip


def claim(shows: str, refused: dict[str, str], node: Node, reading: Reading) -> None:
    """Note a conclusion from a grid that says not what it needs, or needs too much."""
    if not shows:
        mend = "write shows: ways, chuck, flat or parallel"
        reading.fault(node, "it rests on a grid and says not what the readings must show", mend)
    elif shows in refused:
        reading.fault(node, refused[shows], "conclude this from a reading that can carry it")


def _setting(against: str, touched: str, magnet_on: bool) -> Setting:
    from diagnose.physics.grid_reading import AGAINST, SURFACES
    from diagnose.physics.reference import Setting

    return Setting(AGAINST[against], SURFACES[touched], magnet_on)


def _small(text: str) -> str:
    return text[:1].lower() + text[1:]
