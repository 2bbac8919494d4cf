"""Field tables of the shop folder: machine cards, wheel cards, shop.yaml, healthy records."""

from __future__ import annotations

from diagnose.book.day import Day
from diagnose.book.fields_common import NOTE
from diagnose.book.records import Field, Group
from diagnose.book.shapes import ByName, Id, Many, Raw, Tag, Words

FACTS = Field("facts", ByName(Raw("answer"), Words()), help="what is so: {check: answer}")

# what a card says in words: field -> question. What the book has a check for stands in `facts`.
MACHINE_WORDS = {
    "chuck": "Chuck: kind and size",
    "table": "Table: how it is driven, length of stroke",
    "coolant": "Coolant: what and how mixed, or dry",
    "dresser": "Dresser: kind, and where it stands",
}
WHEEL_WORDS = {
    "marking": "Marking, as it stands on the blotter",
    "size": "Size: diameter x width x bore",
    "limit": "Speed limit as marked, with its unit: 3600 rpm or 35 m/s",
    "adapter": "Adapter it is mounted on",
    "mounted": "Mounted when",
    "dressed": "Dressed how often",
    "last_job": "Last job it ground",
}


def _words(questions: dict[str, str]) -> tuple[Field, ...]:
    return tuple(Field(name, Words(), help=told) for name, told in questions.items())


MACHINE = Group(
    (
        Field("id", Id(), "give the machine an id: north-grinder, say"),
        Field("name", Words(), "say what you call it"),
        *_words(MACHINE_WORDS),
        FACTS,
        NOTE,
    ),
    "a machine card",
)

WHEEL = Group(
    (
        Field("id", Id(), "give the wheel an id: the same as its tag on the shelf, say"),
        Field("name", Words(), "say what you call it"),
        *_words(WHEEL_WORDS),
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
        Field("instruments", Many(Tag()), help="the measuring instruments at hand"),
        NOTE,
    ),
    "shop.yaml",
)

HEALTHY = Group(
    (
        Field("machine", Words(), "name the machine by the id of its card"),
        Field("date", Day(), "say when it ground well: 2026-03-14"),
        Field("wheel", Words(), help="the wheel it ground well with"),
        Field("answers", FACTS.shape, help="checks as they were then: {dress-seconds: 9 s}"),
        Field(
            "readings",
            ByName(Words()),
            help="what else was measured then: {block-finish: 0.3 um, idle-shake: 0.4 mm/s}",
        ),
        NOTE,
    ),
    "a healthy record",
)
