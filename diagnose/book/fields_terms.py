"""Field table of a word of the trade."""

from __future__ import annotations

from diagnose.book.fields_common import NOTE, REPLACES, SOURCES, TEXTS, listed_identity
from diagnose.book.records import Field, Group
from diagnose.book.shapes import Many, Words, ref

ANYTHING = ref("cause", "mechanism", "symptom", "check", "finding", "stop", "card", "term")

TERM = Group(
    (
        *listed_identity("word"),
        Field("means", Words(), "say what it is, to somebody who never heard it"),
        Field("matters", Words(), "say what it does to the work"),
        Field("also", TEXTS, help="other words people use for it"),
        Field("not_the_same", TEXTS, help="what newcomers take it for, and the difference"),
        Field("see", Many(ANYTHING), help="what to read next: ids of anything"),
        Field("sources", Many(SOURCES.shape, 1, "name one source at least"), "say where from"),
        NOTE,
        REPLACES,
    ),
    "a word of the trade",
)
