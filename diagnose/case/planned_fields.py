"""The field table of a planned job in a case file."""

from __future__ import annotations

from dataclasses import dataclass, fields

from diagnose.book.nodes import Node
from diagnose.book.records import Field, Group, Record
from diagnose.book.shapes import Reading, Schema, Words, one_of, plain
from diagnose.case.planned import NO_GRAIN, SIDES, Planned
from diagnose.physics.quantities import QuantityError, read_quantity
from diagnose.physics.tables import METALS
from diagnose.physics.wheel_choice import CONTACTS


@dataclass(frozen=True)
class Measure:
    """A number with its unit, kept as it was written."""

    dimension: str

    def read(self, node: Node, reading: Reading) -> str | None:
        text = plain(node, reading, "a number with its unit")
        if text is None:
            return None
        try:
            read_quantity(text, self.dimension)
        except QuantityError as error:
            reading.fault(node, str(error))
            return None
        return text

    def schema(self) -> Schema:
        return {"type": ["string", "number"]}


PLANNED = Group(
    (
        Field("size", Words(), help="the size wanted, as on the drawing"),
        Field("finish", Measure("roughness"), help="the finish wanted, Ra: 0.4 um"),
        Field("tolerance", Measure("length"), help="the whole width of the tolerance: 0.01 mm"),
        Field("metal", one_of(*METALS, *NO_GRAIN), help="the metal, closer than a check"),
        Field("hardness", Measure("hardness"), help="the hardness: 60 HRC"),
        Field("marking", Words(), help="marking of a wheel that has no card: A 46 H 8 V, 3600 rpm"),
        Field("contact", one_of(*CONTACTS), help="width of contact; narrow for edges and slots"),
        Field("last_depth", Measure("length"), help="depth of the last passes: 0.0025 mm"),
        Field("sides", one_of(*SIDES), help="how many faces are ground"),
        Field("strokes_had", Measure("count"), help="strokes the last dress lasted on this metal"),
    ),
    "what is wanted",
)


def planned_of(record: Record | None) -> Planned | None:
    """What is wanted; None for a case that is no planned job."""
    if record is None:
        return None
    return Planned(**{f.name: record.text(f.name) for f in fields(Planned)})
