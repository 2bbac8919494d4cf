"""A planned job: what is wanted of the part, before the wheel touches it.

The set-up itself (machine, wheel, dress, feeds, coolant, holding) is written as the entries and
facts of a case; this holds what no check asks for, because it is wanted and not found.
"""

from __future__ import annotations

from dataclasses import dataclass, fields

from diagnose.book.nodes import Node
from diagnose.book.records import Field, Group, Record
from diagnose.book.shapes import Reading, Schema, Words, one_of, plain
from diagnose.physics.quantities import QuantityError, read_quantity
from diagnose.physics.tables import METALS
from diagnose.physics.wheel_choice import CONTACTS

NO_GRAIN = ("carbide", "ceramic")  # for a diamond wheel only
SIDES = ("one", "two", "six")


@dataclass(frozen=True)
class Planned:
    """What is wanted, as a person wrote it; "" = not said.

    `metal` is an id of the table of metals, `contact` broad | ordinary | narrow, `sides` how many
    faces are ground. `finish` is a Ra, `strokes_had` the strokes the last dress lasted on this
    metal with this wheel.
    """

    size: str = ""
    finish: str = ""
    tolerance: str = ""
    metal: str = ""
    hardness: str = ""
    contact: str = ""
    sides: str = ""
    strokes_had: str = ""

    def rows(self) -> dict[str, str]:
        """What was said, by field."""
        told = {f.name: getattr(self, f.name) for f in fields(self)}
        return {name: text for name, text in told.items() if text}


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
        Field("contact", one_of(*CONTACTS), help="width of contact; narrow for edges and slots"),
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
