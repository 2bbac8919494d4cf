"""Field table of a guided card."""

from __future__ import annotations

from diagnose.book.fields_causes import TIMES
from diagnose.book.fields_common import (
    CAUTIONS,
    NEEDS,
    NOTE,
    REPLACES,
    SOURCE_NEEDED,
    SOURCES,
    TAGS,
    TEXTS,
    identity,
)
from diagnose.book.records import Field, Group
from diagnose.book.shapes import Many, Words, ref

STEP = Group(
    (
        Field("do", Words(), "say what to do, in one line"),
        Field("why", Words(), "say why it is done, and what goes wrong without it"),
        Field("check_by", Words(), "say how a person sees that it is done"),
        Field("cautions", CAUTIONS, help="cares to be read before this step"),
        SOURCE_NEEDED,
    ),
    "a step of the card",
)

CARD = Group(
    (
        *identity("card"),
        Field("use_when", Many(Words(), 1), "say when this is the right job"),
        Field("not_when", Many(Words(), 1), "say when it is not, and what to do instead"),
        Field("tools", TAGS, help="what it takes"),
        Field("needs", NEEDS, help="the states the machine must be in"),
        Field("minutes", TIMES, "say how long it takes: {first_time: 60, practised: 30}"),
        Field(
            "steps",
            Many(STEP, 2, "a card has two steps at least"),
            "list the steps, each with do, why and check_by",
        ),
        Field("proof", Words(), "say what shows that the whole job is done"),
        Field(
            "experiment_for",
            Many(ref("mechanism")),
            help="a demonstration for a lesson: the mechanisms it shows",
        ),
        Field("see", TEXTS, help="experiment: what is seen, and what that shows"),
        Field("never", TEXTS, help="experiment: what must not be done"),
        Field("sources", Many(SOURCES.shape, 1, "name one source at least"), "say where from"),
        NOTE,
        REPLACES,
    ),
    "a card",
)
