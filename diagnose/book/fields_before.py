"""Field table of what is ticked off before the cut."""

from __future__ import annotations

from diagnose.book.fields_common import BECAUSE, CAUTIONS, CONDITION, NOTE, SOURCE_NEEDED
from diagnose.book.records import Field, Group
from diagnose.book.shapes import Id, Words, one_of, ref

WARM_UP, SET_UP, THIN, SIX_FACES = "warm-up", "set-up", "thin-work", "six-faces"
LISTS = {
    WARM_UP: "Warm the machine up",
    SET_UP: "Set up, and tick",
    THIN: "The order of sides for thin work",
    SIX_FACES: "The order of faces for a square block",
}

TICK = Group(
    (
        Field("id", Id(), "give the step an id: short words joined by hyphens"),
        Field("list", one_of(*LISTS), "say which list it stands in; the file gives the order"),
        Field("do", Words(), "say what to do, in one line"),
        BECAUSE,
        Field("when", CONDITION, help="only if this holds; a step for any job has none"),
        Field("cautions", CAUTIONS, help="cares to be read before this step"),
        Field("card", ref("card"), help="the guided card whose steps follow"),
        SOURCE_NEEDED,
        NOTE,
    ),
    "a step before the cut",
)
