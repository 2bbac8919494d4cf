"""The facts that conditions may name: answers of checks, findings, worked-out numbers."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from diagnose.book.grid_checks import grid_facts
from diagnose.book.model import NO, YES
from diagnose.book.nodes import Node, Text
from diagnose.book.numbers import UNCERTAIN, dimension_of, dimensions
from diagnose.book.records import Record
from diagnose.book.shapes import Reading


@dataclass(frozen=True)
class FactName:
    """What a fact can be: one of `words`, or a number of `dimension`; a file has neither.

    A number of a grid has `cannot_show`: what its readings do not carry, and why; else None.
    """

    words: tuple[str, ...] = ()
    dimension: str = ""
    place: str = ""
    cannot_show: tuple[tuple[str, str], ...] | None = None


FactNames = Mapping[str, FactName]


def fact_names(records: Mapping[str, Iterable[Record]]) -> dict[str, FactName]:
    """Every fact, from the records of the kinds check, finding, symptom and rule."""
    names: dict[str, FactName] = {}
    for symptom in records["symptom"]:
        names[symptom.text("id")] = FactName((NO, YES), place=_place(symptom.node))
    for finding in records["finding"]:
        values = tuple(v.text("id") for v in finding.groups("values")) or (NO, YES)
        names[finding.text("id")] = FactName(values, place=_place(finding.node))
    for check in records["check"]:
        names[check.text("id")] = _of_check(check)
        for name, refused in grid_facts(check).items():
            names.setdefault(name, FactName((), "deviation", _place(check.node), refused))
    for name, dimension, place in worked_out(records["rule"]):
        names.setdefault(name, FactName(dimension=dimension, place=place))
    return names


def worked_out(rules: Iterable[Record]) -> Iterator[tuple[str, str, str]]:
    """(name, dimension, place) of every number that a rule works out with a known formula."""
    for rule in rules:
        work = rule.group("work_out")
        if work is None or not work.text("gives"):
            continue
        dimension = dimension_of(work.text("with"))
        yield work.text("gives"), dimension, _place(work.node)


def _of_check(check: Record) -> FactName:
    place = _place(check.node)
    if check.text("kind") == "number":
        unit = check.text("unit")
        return FactName(dimension=unit if unit in dimensions() else UNCERTAIN, place=place)
    return FactName(tuple(o.text("id") for o in check.groups("options")), place=place)


def _place(node: Node) -> str:
    return f"{node.page.name}:{node.line}"


def unknown_fact(node: Text, word: str, facts: FactNames, reading: Reading) -> None:
    """Note that no fact has this name, offering the nearest and where it is written."""
    from diagnose.book.near import nearest

    near = nearest(word, facts)
    suggestion = f"{near} ({facts[near].place})" if near else ""
    mend = "" if near else "a fact is the id of a check, a finding or a number that a rule gives"
    reading.fault(node, f"there is no fact '{word}'", mend, suggestion)
