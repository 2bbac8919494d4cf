"""A new rule, stop or symptom of the shop."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import Any

from diagnose.book.model import Book
from diagnose.book.slug import free_id, free_slug
from diagnose.shop.draft import Draft, page, to_fill

SOURCE = "common-practice"


@dataclass(frozen=True)
class NewRule:
    """When these facts hold, that follows. `when` is a condition as the files write it."""

    name: str
    when: Mapping[str, Any]
    then: Mapping[str, str]
    because: str = ""
    id: str = ""


def rule_draft(told: NewRule, taken: Collection[str]) -> Draft:
    """The file of a new rule."""
    own = told.id or free_slug(told.name, taken, "new-rule")
    rows = {
        "id": own,
        "name": told.name,
        "when": dict(told.when),
        "then": [dict(told.then)],
        "because": told.because or to_fill("why this follows"),
        "source": SOURCE,
    }
    name, text = page("rule", rows, "")
    return Draft(own, {name: text})


@dataclass(frozen=True)
class NewStop:
    """A hazard, and the question that is certain to ask about it."""

    name: str
    kind: str = "stop"
    what_is_wrong: str = ""
    do_first: tuple[str, ...] = ()
    cleared_when: str = ""
    ask: str = ""
    renewed_by: tuple[str, ...] = ()
    id: str = ""


def stop_draft(told: NewStop, taken: Collection[str]) -> Draft:
    """The files of a new stop: the stop and its question, which clears and raises it."""
    own = told.id or free_slug(told.name, taken, "new-stop")
    check = free_id(f"{own}-asked", {*taken, own})
    cleared = told.cleared_when or to_fill("what must be so before work goes on")
    stop: dict[str, Any] = {
        "id": own,
        "name": told.name,
        "kind": told.kind,
        "what_is_wrong": told.what_is_wrong or to_fill("what is dangerous"),
        "do_first": list(told.do_first) or [to_fill("what to do first, one step a line")],
        "cleared_when": cleared,
        "asked_by": check,
        "source": SOURCE,
    }
    question: dict[str, Any] = {
        "id": check,
        "name": told.name,
        "kind": "one",
        "ask": told.ask or f"Before anything turns, is it so: {cleared}?",
        "help": to_fill("in one sentence, how to look"),
        "minutes": "0.5",
        "options": [
            {"id": "clear", "say": cleared, "clears": [own]},
            {"id": "not-so", "say": f"no: {told.name}", "raises": [own]},
        ],
        "place": "machine",
        "needs": ["wheel-stopped"],
        "source": SOURCE,
    }
    if told.renewed_by:
        stop["renewed_by"] = list(told.renewed_by)
        question["spoiled_by"] = list(told.renewed_by)
    files = dict((page("stop", stop, ""), page("check", question, "machine")))
    return Draft(own, files)


@dataclass(frozen=True)
class NewSymptom:
    """What is wrong with the work, as people say it."""

    name: str
    family: str = ""
    looks_like: str = ""
    in_words: tuple[str, ...] = ()
    first_questions: tuple[str, ...] = ()
    the_part: str = ""
    id: str = ""


def symptom_draft(told: NewSymptom, book: Book, taken: Collection[str]) -> Draft:
    """The file of a new symptom."""
    own = told.id or free_slug(told.name, taken, "new-symptom")
    rows = {
        "id": own,
        "name": told.name,
        "family": told.family or own,
        "looks_like": told.looks_like or to_fill("what the eye sees on the work"),
        "in_words": list(told.in_words) or [told.name],
        "without_cause": "almost never",
        "first_questions": list(told.first_questions) or _asked_first(book),
        "the_part": [
            {
                "do": "measure",
                "say": told.the_part or to_fill("what to do with the part in hand"),
                "source": SOURCE,
            }
        ],
        "sources": [SOURCE],
    }
    name, text = page("symptom", rows, "")
    return Draft(own, {name: text})


def _asked_first(book: Book) -> list[str]:
    """The question that most symptoms ask first."""
    counts: dict[str, int] = {}
    for symptom in book.symptoms.values():
        for name in symptom.first_questions[:1]:
            counts[name] = counts.get(name, 0) + 1
    return [max(sorted(counts), key=lambda n: counts[n])]
