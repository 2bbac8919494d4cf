"""Field tables of what is seen and what is behind it: symptom, finding, mechanism; and of the
small lists: caution, source, words."""

from __future__ import annotations

from diagnose.book.fields_common import (
    AID,
    BECAUSE,
    CARDS,
    CONDITION,
    NOTE,
    REPLACES,
    SOURCE_FIELD,
    SOURCE_NEEDED,
    SOURCES,
    TEXTS,
    identity,
    listed_identity,
)
from diagnose.book.number_shapes import OFTEN, Amount
from diagnose.book.records import Field, Group
from diagnose.book.shapes import ByName, Id, Many, Tag, Words, one_of, ref

SHARPENS = Field("sharpens", ref("finding"), help="the blunter sign this one makes more exact")

VALUE = Group(
    (
        Field("id", Id(), "give the value a short id"),
        Field("name", Words(), "say what this value looks like"),
        Field("without_cause", OFTEN, help="how often it shows when nothing is wrong"),
    ),
    "a value",
)

FINDING = Group(
    (
        *listed_identity("finding"),
        Field(
            "kind",
            one_of("sign", "circumstance"),
            "sign = made by a cause; circumstance = was so before and makes causes more likely",
        ),
        Field("values", Many(VALUE), help="from least to most striking; leave out for yes/no"),
        Field("without_cause", OFTEN, help="yes/no sign: how often it shows with nothing wrong"),
        SHARPENS,
        SOURCE_FIELD,
        NOTE,
        REPLACES,
    ),
    "a finding",
)

LOOKS = Group(
    (
        Field("runs", one_of("across", "along", "slanted", "patches", "none")),
        Field("spacing", one_of("fine", "crossfeed", "wide", "long", "none")),
        Field("regular", one_of("regular", "irregular", "none")),
    ),
    "looks",
)

THE_PART = Group(
    (
        Field("when", CONDITION, help="only if this holds"),
        Field(
            "do",
            one_of("save", "leave", "quarantine", "scrap", "measure"),
            "say what becomes of the part: save, leave, quarantine, scrap or measure",
        ),
        Field("say", Words(), "say it to the person with the part in hand"),
        SOURCE_FIELD,
    ),
    "advice on the part",
)

SYMPTOM = Group(
    (
        *identity("symptom"),
        Field("family", Tag(), "say the family: chatter, burn, loading, taper, dished ..."),
        Field("looks_like", Words(), "say what the eye sees on the work"),
        Field("in_words", TEXTS, "list the words people use for it, such as ladder rungs"),
        Field("looks", LOOKS, help="which way the marks run, how far apart, how regular"),
        Field("sketch", Tag(), help="name of a figure"),
        Field("without_cause", OFTEN, "say how often it shows with no cause: almost never, say"),
        SHARPENS,
        Field(
            "first_questions",
            Many(ref("check"), 1, "name at least one check to ask first"),
            "list the checks an old hand asks first, in his order",
        ),
        Field("the_part", Many(THE_PART), "say what to do with the part in hand"),
        Field("first_aid", Many(AID), help="what gets the work going tonight"),
        CARDS,
        Field("sources", SOURCES, "say where this comes from: ids of sources"),
        NOTE,
        REPLACES,
    ),
    "a symptom",
)

LEADS_TO = Group(
    (
        Field("to", ref("mechanism", "symptom", "finding"), "say what it leads to"),
        BECAUSE,
        SOURCE_FIELD,
    ),
    "a step of cause and effect",
)

MECHANISM = Group(
    (
        *listed_identity("mechanism"),
        Field("explain", Words(), "explain it to a newcomer"),
        Field("leads_to", Many(LEADS_TO, 1), "say what it leads to, with its because"),
        SOURCE_FIELD,
        NOTE,
        REPLACES,
    ),
    "a mechanism",
)

CAUTION = Group(
    (
        Field("id", Id(), "give the caution an id: short words joined by hyphens"),
        Field("say", Words(), "say the care to take, before the step"),
        Field("because", Words(), help="what happens to somebody who passes it over"),
        SOURCE_NEEDED,
        NOTE,
        REPLACES,
    ),
    "a caution",
)

SOURCE = Group(
    (
        Field("id", Id(), "give the source an id: short words joined by hyphens"),
        Field("title", Words(), "name the standard, handbook or page"),
        Field(
            "standing",
            one_of("confirmed", "from memory", "common practice"),
            "say how sure it is: confirmed, from memory or common practice",
        ),
        NOTE,
        REPLACES,
    ),
    "a source",
)

_NUMBER = Amount(0.0, 1000.0)
_ANY = Words()
WORDS = Group(
    (
        Field("how_often", ByName(_NUMBER, _ANY), "give the scale of how often"),
        Field("how_common", ByName(_NUMBER, _ANY), "give the scale of how common"),
        Field("change", ByName(_NUMBER, _ANY), "give the scale of more and less likely"),
        Field("unlisted", ByName(_NUMBER), "give prior and strength of a cause not in the book"),
        Field("think_so", Amount(0.5, 0.999), "say how much 'I think so' is worth: 0.8, say"),
        NOTE,
    ),
    "words.yaml",
)
