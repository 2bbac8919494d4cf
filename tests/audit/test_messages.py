"""Every message of the reading of the knowledge is known by a lint that explains it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from diagnose.audit.linting import lints, named
from diagnose.book import yaml_faults
from diagnose.book.problems import Problem
from diagnose.physics.grid_reading import AGAINST, SURFACES
from diagnose.physics.reference import Setting, refusals
from tests.audit.messages import Message, messages, messages_of

SOURCE = (
    "book",
    "physics/grid_reading.py",
    "physics/grids.py",
    "physics/quantities.py",
    "physics/readings.py",
    "physics/shape.py",
)
NOT_OF_THE_KNOWLEDGE = (
    "book/day.py",  # no field of the knowledge is a day; cards of a shop have them
    "book/writing.py",  # files that cannot be written
    "physics/grids.py:89",  # two grids at once: no answer of a check
    "physics/grids.py:93",
)
# what cannot be followed in the source, and why nothing is lost by it
HANDED_ON = {
    "(place if error.file else '') + error.what.rstrip('.')": "a BadReadings, collected itself",
    "str(error) + '.'": "a QuantityError, collected itself",
    "_with_own_example(str(error), check)": "a QuantityError, collected itself",
    "str(error)": "a QuantityError, collected itself",
    "error.what": "an AnswerError, collected itself",
    "what": "an argument: the callers are collected",
    "suggestion": "an argument of Node.problem",
    "self.few": "an argument of Many: collected itself",
    "_NO_COLON[0]": "of the tables of yaml_faults",
    "*yaml_faults.TOO_DEEP": "of the tables of yaml_faults",
    "refused[shows]": "of the refusals of a setting",
    "_why_not(text, kind)": "of _why_not in quantities",
}


def tables() -> Iterator[str]:
    """The messages that stand in tables, or are made from them."""
    yield from (what for _, what, _ in yaml_faults._PLAIN)
    yield yaml_faults._NO_COLON[0]
    yield yaml_faults.TOO_DEEP[0]
    yield yaml_faults._plain("something new")[0]
    for against in AGAINST.values():
        for surface in SURFACES.values():
            for refusal in refusals(Setting(against, surface, False)):
                told = refusal.because
                yield f"These readings cannot show that {refusal.conclusion.value}: {told}"
    yield "'mil' means thou to some and mm to others: write thou or mm"
    yield "this wants a length; rpm is a speed. Write it like 6 mm"
    yield "'furlongs' is not a unit of length known here; write it like 6 mm"


@cache
def collected() -> tuple[Message, ...]:
    found = messages(*SOURCE)
    return tuple(m for m in found if not m.place.startswith(NOT_OF_THE_KNOWLEDGE))


def nameless(told: Iterator[str] | tuple[str, ...]) -> bool:
    """True when no lint knows any of the ways a message may read."""
    return not any(lint.knows(text) for text in told for lint in lints())


def test_every_message_of_the_reading_is_known_by_a_lint() -> None:
    found = [m for m in collected() if any(m.readings)]
    assert len(found) > 120
    assert [f"{m.place}: {m.source}" for m in found if nameless(m.readings)] == []


def test_messages_of_tables_are_known_as_well() -> None:
    assert [text for text in tables() if nameless((text,))] == []


def test_what_cannot_be_followed_is_accounted_for() -> None:
    left = {m.source for m in collected() if not m.readings}
    assert left == HANDED_ON.keys()


def test_a_new_message_that_no_lint_knows_is_seen() -> None:
    source = """
def look(node, reading, odd):
    what = f"nobody thought of {node}" if odd else "nothing is written here"
    reading.fault(node, what, "mend it")
"""
    told = list(messages_of(source, "new.py"))
    assert [nameless(m.readings) for m in told] == [True, False]


def test_a_check_that_says_not_what_its_readings_are_has_its_lint() -> None:
    what = "this check does not say what its readings are"
    (alarm,) = named([Problem("a.yaml", 1, 1, what)])
    assert alarm.lint == "missing-field"
