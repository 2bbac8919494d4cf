"""The records of all files on their way to becoming the book."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from diagnose.book.advice import Aid
from diagnose.book.condition_text import read_condition
from diagnose.book.conditions import Condition
from diagnose.book.fact_names import FactNames
from diagnose.book.model import Cause, Check, Finding
from diagnose.book.nodes import Node
from diagnose.book.records import Record
from diagnose.book.shapes import Reading


@dataclass
class Shelf:
    """What the builders share: the records by kind, the facts, and what is built so far."""

    reading: Reading
    records: dict[str, list[Record]]
    facts: FactNames = field(default_factory=dict)
    findings: dict[str, Finding] = field(default_factory=dict)
    checks: dict[str, Check] = field(default_factory=dict)
    causes: dict[str, Cause] = field(default_factory=dict)

    def named(self, kind: str) -> Iterator[tuple[str, Record]]:
        """(id, record) of every record of a kind, by id."""
        with_id = [(r.text("id"), r) for r in self.records[kind] if "id" in r]
        return iter(sorted(with_id, key=lambda pair: pair[0]))

    def condition(self, record: Record, name: str) -> Condition:
        """The condition in a field; the empty one when the field is absent."""
        return read_condition(record.raw(name), self.facts, self.reading)

    def value_of(self, finding: str, word: str, node: Node) -> bool:
        """True when the finding can have this value; a fault is noted otherwise.

        A finding that does not exist is left to the check of references.
        """
        known = self.findings.get(finding)
        if known is None:
            return False
        if word in known.value_ids:
            return True
        what = f"{finding} is never '{word}'"
        if known.value_ids == ("no", "yes"):
            what = f"{finding} is a yes/no finding, never '{word}'"
        self.reading.not_among(node, word, known.value_ids, what)
        return False


def aid(record: Record) -> Aid:
    """A first-aid step."""
    return Aid(
        record.text("do"),
        record.text("because"),
        record.texts("needs"),
        record.texts("cautions"),
        record.text("source"),
    )
