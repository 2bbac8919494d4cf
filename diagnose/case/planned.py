"""A planned job: what is wanted of the part, before the wheel touches it.

The set-up itself (machine, wheel, dress, feeds, coolant, holding) is written as the entries and
facts of a case; this holds what no check asks for, because it is wanted and not found.
"""

from __future__ import annotations

from dataclasses import dataclass, fields

NO_GRAIN = ("carbide", "ceramic")  # for a diamond wheel only
SIDES = ("one", "two", "six")


@dataclass(frozen=True)
class Planned:
    """What is wanted, as a person wrote it; "" = not said.

    `metal` is an id of the table of metals, `marking` that of a wheel without a card, `contact`
    broad | ordinary | narrow, `sides` how many faces are ground (one | two | six). `finish` is a
    Ra, `last_depth` the depth of the last passes, `strokes_had` the strokes the last dress lasted
    on this metal with this wheel.
    """

    size: str = ""
    finish: str = ""
    tolerance: str = ""
    metal: str = ""
    hardness: str = ""
    marking: str = ""
    contact: str = ""
    last_depth: str = ""
    sides: str = ""
    strokes_had: str = ""

    def rows(self) -> dict[str, str]:
        """What was said, by field."""
        told = {f.name: getattr(self, f.name) for f in fields(self)}
        return {name: text for name, text in told.items() if text}
