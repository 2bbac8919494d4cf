"""Field table of a cause."""

from __future__ import annotations

from diagnose.book.fields_common import (
    AID,
    BECAUSE,
    CARDS,
    CAUTIONS,
    CONDITION,
    NEEDS,
    NOTE,
    REPLACES,
    SOURCE_FIELD,
    SOURCE_NEEDED,
    SOURCES,
    TAGS,
    TEXTS,
    identity,
)
from diagnose.book.number_shapes import CHANGE, COMMON, MINUTES, OFTEN
from diagnose.book.records import Field, Group
from diagnose.book.shapes import ByName, Id, Many, Raw, Words, one_of, ref

LINK = Group(
    (
        Field("finding", ref("finding"), "name the sign or symptom it shows"),
        Field("is", Id(), help="the value of the sign; yes when left out"),
        Field("how_often", OFTEN, "say how often it shows when this cause is there"),
        BECAUSE,
        SOURCE_NEEDED,
    ),
    "a sign it shows",
)

SHIFT = Group(
    (
        Field("when", CONDITION, "say in which circumstance"),
        Field("change", CHANGE, "say much more, more, less or much less"),
        BECAUSE,
        SOURCE_FIELD,
    ),
    "a circumstance",
)

GATE = Group(
    (
        Field("when", CONDITION, "say when the cause is possible at all"),
        Field("because", Words(), "say why it is ruled out otherwise"),
    ),
    "possible_when",
)

THROUGH = Group(
    (Field("to", ref("mechanism"), "name the mechanism"), BECAUSE, SOURCE_FIELD),
    "a step of cause and effect",
)

CONFIRM = Group(
    (
        Field("check", ref("check"), "name the check"),
        Field("answer", Id(), "name the answer that speaks for the cause"),
        Field("right_when_there", OFTEN, "say how often that answer comes if the cause is there"),
        Field("right_when_not", OFTEN, "say how often that answer keeps away if it is not"),
    ),
    "be_sure",
)

TIMES = Group(
    (
        Field("first_time", MINUTES, "say how long it takes the first time"),
        Field("practised", MINUTES, "say how long it takes a practised hand"),
    ),
    "minutes",
)

FIX = Group(
    (
        Field("same_as", ref("cause"), help="the cause whose fix cures this one too"),
        Field("do", Words(), help="the fix in one line"),
        Field("minutes", TIMES, help="how long it takes"),
        Field("cures", OFTEN, help="how often it cures, if this is the cause"),
        Field("steps", TEXTS, help="one step a line"),
        Field("proof", Words(), help="what the next part must show"),
        Field("needs", NEEDS, help="the state the machine must be in"),
        Field("tools", TAGS, help="what it takes"),
        Field("changes", TAGS, help="what it leaves changed"),
        Field("call_someone", Words(), help="whom to call when it is not for you"),
        CARDS,
    ),
    "the fix",
)

FIX_NEEDS = {
    "do": "say the fix in one line",
    "minutes": "say how long it takes: {first_time: 60, practised: 30}",
    "cures": "say how often it cures, if this is the cause",
    "steps": "list the steps",
    "proof": "say what the next part must show",
}

EXAMPLE = Group(
    (
        Field("title", Words(), "say the case in one line"),
        Field("complaint", Many(ref("symptom"), 1), "name the symptom complained of"),
        Field("answers", ByName(Raw("answer"), ref("check")), "give the answers: {check: answer}"),
        Field("first", ref("cause"), help="the cause that must come first"),
        Field("not_first", ref("cause"), help="the cause that must not come first"),
        NOTE,
    ),
    "an example",
)

CAUSE = Group(
    (
        *identity("cause"),
        Field(
            "summary", Words(), "say in one plain sentence what it is and why it makes the fault"
        ),
        Field("status", one_of("draft", "tried", "proven"), "say draft, tried or proven"),
        Field("how_common", COMMON, "say how common it is: common, occasional or rare"),
        Field("possible_when", Many(GATE), help="without this it is ruled out"),
        Field("more_likely_when", Many(SHIFT), help="circumstances that change its odds"),
        Field("set_by", ref("rule"), help="the rule of the reading that decides it"),
        Field(
            "shows",
            Many(LINK, 1, "name at least one sign or symptom that this cause shows"),
            "name what it shows on the work, the wheel or the machine, and how often",
        ),
        Field("leads_through", Many(THROUGH), help="the mechanisms on the way to the symptom"),
        Field("be_sure", Many(CONFIRM), help="checks that report this cause itself"),
        Field("fix", FIX, "say how it is cured, or {same_as: another-cause}"),
        Field("first_aid", Many(AID), help="what gets the work going tonight"),
        Field("cautions", CAUTIONS, help="cares to be read before the fix"),
        Field(
            "look_alikes",
            Many(ref("cause"), 1, "name at least one cause that is taken for this one"),
            "name the causes that are taken for this one",
        ),
        Field(
            "sources",
            Many(SOURCES.shape, 1, "name at least one source"),
            "say where this comes from: ids of sources",
        ),
        Field(
            "examples",
            Many(EXAMPLE, 2, "two examples at least: one where it comes first, one where not"),
            "give one example where it comes first and one that only looks like it",
        ),
        NOTE,
        REPLACES,
    ),
    "a cause",
)
