"""Fields that several kinds share."""

from __future__ import annotations

from diagnose.book.records import Field, Group
from diagnose.book.shapes import Id, Many, Raw, Tag, Words, one_of, ref

CONDITION = Raw("condition")
QUANTITY = Raw("quantity")
SOURCE = ref("source")
TEXTS = Many(Words())
TAGS = Many(Tag())
CAUTIONS = Many(ref("caution"))
CARDS = Field("cards", Many(ref("card")), help="guided cards that show how it is done")
SOURCES = Many(ref("source"))
NEEDS = Many(
    one_of(
        "wheel-stopped",
        "wheel-turning",
        "magnet-on",
        "magnet-off",
        "guard-open",
        "power-locked-out",
        "part-off-the-chuck",
    )
)

NO_SOURCE = "say where it comes from; common-practice will do if it is only what everyone knows"
NO_BECAUSE = "say in one sentence why this is so"

NOTE = Field("note", Words(), help="a remark for whoever reads this file")
REPLACES = Field("replaces", Many(Id()), help="ids this entry had before, so old cases still work")
SOURCE_FIELD = Field("source", SOURCE, help="where this comes from")
SOURCE_NEEDED = Field("source", SOURCE, NO_SOURCE)
BECAUSE = Field("because", Words(), NO_BECAUSE)


def identity(kind: str, article: str = "a") -> tuple[Field, ...]:
    """The id and the name every kind has."""
    return (
        Field("id", Id(), f"give {article} {kind} an id, the same as the file's name"),
        Field("name", Words(), "say in a few words what it is, as you would to a mate"),
    )


def listed_identity(kind: str) -> tuple[Field, ...]:
    """The id and the name of an entry of a list."""
    return (
        Field("id", Id(), f"give the {kind} an id: short words joined by hyphens"),
        Field("name", Words(), "say in a few words what it is, as you would to a mate"),
    )


AID = Group(
    (
        Field("do", Words(), "say what to do, in one line"),
        Field("because", Words(), "say why it gets the work going tonight"),
        Field("needs", NEEDS, help="the state the machine must be in"),
        Field("cautions", CAUTIONS, help="cares to be read before this step"),
        SOURCE_FIELD,
    ),
    "a first-aid step",
)
