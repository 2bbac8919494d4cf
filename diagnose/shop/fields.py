"""Field tables of the shop folder: machine cards, wheel cards, shop.yaml."""

from __future__ import annotations

from diagnose.book.fields_common import NOTE
from diagnose.book.records import Field, Group
from diagnose.book.shapes import ByName, Id, Many, Raw, Tag, Words

FACTS = Field("facts", ByName(Raw("answer"), Words()), help="what is so: {check: answer}")

MACHINE = Group(
    (
        Field("id", Id(), "give the machine an id: north-grinder, say"),
        Field("name", Words(), "say what you call it"),
        FACTS,
        NOTE,
    ),
    "a machine card",
)

WHEEL = Group(
    (
        Field("id", Id(), "give the wheel an id: the same as its tag on the shelf, say"),
        Field("name", Words(), "say what you call it"),
        Field("marking", Words(), help="the marking as it stands on the blotter"),
        FACTS,
        NOTE,
    ),
    "a wheel card",
)

SHOP = Group(
    (
        Field("name", Words(), help="the name of the shop"),
        Field("machines", Many(MACHINE), help="machine cards, if not in files of their own"),
        Field("wheels", Many(WHEEL), help="wheel cards, if not in files of their own"),
        Field("tools", Many(Tag()), help="the tools at hand"),
        NOTE,
    ),
    "shop.yaml",
)
