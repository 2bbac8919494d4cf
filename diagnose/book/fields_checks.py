"""Field tables of what is asked and what follows from it: check, rule, stop."""

from __future__ import annotations

from diagnose.book.fields_common import (
    BECAUSE,
    CARDS,
    CAUTIONS,
    CONDITION,
    NEEDS,
    NOTE,
    QUANTITY,
    REPLACES,
    SOURCE_FIELD,
    SOURCE_NEEDED,
    SOURCES,
    TAGS,
    TEXTS,
    identity,
    listed_identity,
)
from diagnose.book.number_shapes import MINUTES, OFTEN, Amount
from diagnose.book.records import Field, Group
from diagnose.book.shapes import ByName, Flag, Id, Many, Tag, Words, one_of, ref

STOPS = Many(ref("stop"))
AGAINST = ("machine-travel", "surface-plate", "micrometer", "straightedge")
TOUCHED = ("part", "chuck", "known-flat")
SHOWN = ("ways", "chuck", "flat", "parallel")

OPTION = Group(
    (
        Field("id", Id(), "give the answer a short id"),
        Field("say", Words(), "say the answer as a person would give it"),
        Field("means", ByName(Id(), ref("finding")), help="the findings this answer settles"),
        Field("raises", STOPS, help="stops this answer raises"),
        Field("clears", STOPS, help="stops this answer clears"),
        Field("sketch", Tag(), help="name of a figure"),
    ),
    "an answer",
)

REPORTS = Group(
    (
        Field("finding", ref("finding"), "name the hidden sign it reports"),
        Field("right_when_there", OFTEN, "say how often it reports the sign when it is there"),
        Field("right_when_not", OFTEN, "say how often it keeps silent when the sign is not there"),
    ),
    "what the check reports",
)

RANGE = Group(
    (
        Field("lowest", QUANTITY, "give the lowest number that is possible, with its unit"),
        Field("highest", QUANTITY, "give the highest number that is possible, with its unit"),
    ),
    "the range",
)

CHECK = Group(
    (
        *identity("check"),
        Field(
            "kind", one_of("one", "any", "number", "file"), "say its kind: one, any, number or file"
        ),
        Field("ask", Words(), "write the question, in one line"),
        Field("help", Words(), "say in one sentence how to find the answer"),
        Field("minutes", MINUTES, "say how many minutes it takes"),
        Field("options", Many(OPTION), help="the answers, from nothing of the kind on"),
        Field("settles", Many(ref("finding")), help="the findings its answer can settle"),
        Field("unit", Tag(), help="number: what is measured: length, speed, time ..."),
        Field("range", RANGE, help="number: outside of this is impossible"),
        Field("example", Words(), help="number: an answer as a person would write it"),
        Field("give_or_take", Amount(0.0, 1.0), help="number: how exact such an answer is"),
        Field("together_with", Many(ref("check")), help="other readings for the same conclusion"),
        Field("reads", one_of("grid"), help="file: what is in it"),
        Field("against", one_of(*AGAINST), help="grid: what it is measured against"),
        Field("touched", one_of(*TOUCHED), help="grid: what the indicator touches"),
        Field("proves", Words(), help="what the answer tells"),
        Field("no_instrument", Words(), help="how to do it with no instrument"),
        Field("needs", NEEDS, help="the state the machine must be in"),
        Field("tools", TAGS, help="what it takes: rule, glass, indicator"),
        Field("place", one_of("history", "part", "wheel", "machine", "bench")),
        Field("shares_preparation", Tag(), help="work it shares with other checks"),
        Field("preparation_minutes", MINUTES, help="the minutes that shared work takes"),
        Field("asked_when", CONDITION, help="asked only if this holds"),
        Field("trial", Flag(), help="yes if it changes something to see what happens"),
        Field("changes", TAGS, help="what it leaves changed: wheel-dressed, part-reseated"),
        Field("spoiled_by", TAGS, help="after these it must be made again"),
        Field("standing", one_of("machine", "wheel", "job"), help="does not change with this"),
        Field("gate", Flag(), help="yes for the question before anything turns"),
        Field("opens", Amount(1.0, 9.0), help="asked before all else, the lower number first"),
        Field("reports", REPORTS, help="the hidden sign it only reports"),
        Field("cautions", CAUTIONS, help="cares to be read before it"),
        SOURCE_FIELD,
        NOTE,
        REPLACES,
    ),
    "a check",
)

WORK_OUT = Group(
    (
        Field("with", Id(), "name the calculation: diagnose calc --list shows them"),
        Field("from", ByName(QUANTITY, Words()), "say which fact goes into each input"),
        Field("gives", Id(), "name the number that comes out"),
    ),
    "work_out",
)

THEN = Group(
    (
        Field("if", CONDITION, help="only if this holds as well"),
        Field("finding", ref("finding"), help="the finding that follows"),
        Field("is", Id(), help="its value; yes when left out"),
        Field("stop", ref("stop"), help="the stop that follows"),
        Field("note", Words(), help="what to tell the person"),
        Field("caution", ref("caution"), help="the care that follows"),
        Field("shows", one_of(*SHOWN), help="from a grid: what the readings must be able to show"),
    ),
    "a conclusion",
)

RULE = Group(
    (
        *listed_identity("rule"),
        Field("when", CONDITION, help="the facts that must hold"),
        Field("work_out", WORK_OUT, help="a number to work out"),
        Field("then", Many(THEN), help="what follows"),
        BECAUSE,
        SOURCE_NEEDED,
        NOTE,
        REPLACES,
    ),
    "a rule",
)

STOP = Group(
    (
        *identity("stop"),
        Field("kind", one_of("stop", "hold"), "say stop (the machine) or hold (the work)"),
        Field("what_is_wrong", Words(), "say what is dangerous"),
        Field("do_first", TEXTS, "list what to do first, one step a line"),
        Field("cleared_when", Words(), "say what must be so before work goes on"),
        Field("asked_by", ref("check"), "name the check that is certain to ask about it"),
        Field("applies_when", CONDITION, help="only if this holds"),
        Field("renewed_by", TAGS, help="after these it must be cleared again"),
        CARDS,
        SOURCE_NEEDED,
        Field("sources", SOURCES, help="further sources"),
        NOTE,
        REPLACES,
    ),
    "a stop",
)
