"""Field tables of a file of lessons."""

from __future__ import annotations

from diagnose.book.day import Day
from diagnose.book.number_shapes import Amount
from diagnose.book.records import Field, Group
from diagnose.book.shapes import Many, Words, one_of

COUNT, CHANCE, ODDS = Amount(0.0, 1e6), Amount(0.0, 1.0), Amount(1e-3, 1e3)
MACHINE = Field("machine", Words(), help="left out: the whole shop")

SHARE = Group(
    (
        Field("complaint", Many(Words()), help="left out: any complaint without its own"),
        MACHINE,
        Field("cause", Words(), "name the cause by its id"),
        Field("acted", COUNT, "say in how many cases it was named"),
        Field("cases", COUNT, "say of how many cases"),
        Field("before", CHANCE, "the share before"),
        Field("after", CHANCE, "the share now"),
        Field("odds", ODDS, "the factor on the odds of the cause"),
    ),
    "a share",
)
STRENGTH = Group(
    (
        Field("cause", Words(), "name the cause by its id"),
        MACHINE,
        Field("finding", Words(), "name the sign by its id"),
        Field("value", Words(), "name the value of the sign"),
        Field("seen", COUNT, "say in how many cases it showed"),
        Field("cases", COUNT, "say of how many cases"),
        Field("book", CHANCE, "the book's number"),
        Field("before", CHANCE, "the number before"),
        Field("after", CHANCE, "the number now"),
    ),
    "a strength",
)
NO_LINK = Group(
    (
        Field("complaint", Many(Words(), 1), "name the complaint"),
        Field("cause", Words(), "name the cause by its id"),
        Field("cases", COUNT, "say in how many cases it was named"),
    ),
    "a cause without a link",
)
REFUSED = Group(
    (
        Field("kind", one_of("complaint", "signs"), "say what was refused"),
        Field("what", Many(Words(), 1), "name it"),
        MACHINE,
        Field("cases", COUNT, "say by how many cases it was judged"),
        Field("before", CHANCE, "the typical chance without it"),
        Field("after", CHANCE, "the typical chance with it"),
    ),
    "what was refused",
)
LESSONS = Group(
    (
        Field("learned", Day(), "say when it was learned: 2026-03-14"),
        Field("cases", COUNT, "say from how many cases"),
        Field("typical_before", CHANCE, help="typical chance of what cured them, before"),
        Field("typical_after", CHANCE, help="the same now"),
        Field("shares", Many(SHARE)),
        Field("strengths", Many(STRENGTH)),
        Field("no_links", Many(NO_LINK)),
        Field("refused", Many(REFUSED)),
    ),
    "a file of lessons",
)
