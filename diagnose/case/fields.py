"""Field tables of a case file."""

from __future__ import annotations

from diagnose.book.day import Day
from diagnose.book.number_shapes import MINUTES
from diagnose.book.records import Field, Group
from diagnose.book.shapes import ByName, Flag, Many, Raw, Tag, Words, one_of
from diagnose.case.entries import OUTCOMES
from diagnose.case.planned_fields import PLANNED

SCHEMA = 1
ANSWERS = ByName(Raw("answer", may_be_blank=True), Words())

ENTRY = Group(
    (
        Field("answer", Words(), help="the check that is answered"),
        Field("correct", Words(), help="number of the entry that was wrong, from 1"),
        Field("tried", Words(), help="the check or the cause's fix that was tried"),
        Field("cleared", Words(), help="the stop that is cleared"),
        Field("later", Words(), help="the check that is put off"),
        Field("value", Raw("answer"), help="the answer"),
        Field(
            "how",
            Words(),
            help="answer: said, measured, shop or unasked; cleared: how it was done",
        ),
        Field("sure", one_of("think so", "yes", "no"), help="think so, when not certain"),
        Field("outcome", one_of(*OUTCOMES), help="tried: what came of it"),
        Field("note", Words()),
    ),
    "an entry",
)
KINDS = ("answer", "correct", "tried", "cleared", "later")

CLOSED = Group(
    (
        Field("date", Day(), "say when it was closed: 2026-03-14"),
        Field("cured_by", Many(Words()), help="the causes whose fix cured it, by id"),
        Field("something_new", Words(), help="the cause in your words, when none is listed"),
        Field("not_cured", Flag(), help="yes when nothing cured it"),
        Field("done", Words(), help="what was done"),
        Field("minutes", MINUTES, help="the time spent"),
        Field("proved", Words(), help="how it was proved"),
        Field("note", Words()),
        Field("pictures", Many(Words()), help="paths of pictures"),
    ),
    "how the case was closed",
)

CASE = Group(
    (
        Field("schema", Words(), help="version of this form of file"),
        Field("title", Words(), "say in one line what the case is"),
        Field("complaint", Many(Words(), 1), help="what is wrong with the part"),
        Field("planned", PLANNED, help="in place of a complaint: the job before the first cut"),
        Field("machine", Raw("card"), help="id of a machine of the shop, or its facts"),
        Field("wheel", Raw("card"), help="id of a wheel of the shop, or its facts"),
        Field("part", Words(), help="the part, its material and size"),
        Field("facts", ANSWERS, help="what is known beforehand: {check: answer}"),
        Field("minutes_to_spare", MINUTES, help="checks that take longer are left out"),
        Field("tools", Many(Tag()), help="at hand; what needs others is left out or done without"),
        Field("practised", Flag(), help="yes for a hand who has done this before"),
        Field("note", Words()),
        Field("entries", Many(ENTRY), help="what was answered, tried and cleared, in order"),
        Field("answers", ANSWERS, help="answers in short, in place of entries"),
        Field("now", ByName(Words()), help="readings to lay beside the machine's healthy record"),
        Field("closed", CLOSED, help="how it ended; written by diagnose close"),
    ),
    "a case",
)
