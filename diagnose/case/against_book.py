"""The words of a case checked against the book: checks, answers, symptoms, stops, causes."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from diagnose.book.answers import AnswerError, read_answer
from diagnose.book.complaints import symptoms_meant
from diagnose.book.model import Book
from diagnose.book.near import listed, nearest
from diagnose.book.nodes import Items, Node
from diagnose.book.records import Record
from diagnose.book.shapes import Reading


@dataclass(frozen=True)
class AgainstBook:
    """The book and the reading that collects the faults."""

    book: Book
    reading: Reading
    folder: Path | None = None  # of the case; files of readings lie beside it

    def answer(self, key: Node, name: str, node: Node, text: str) -> tuple[str, str]:
        """(check id, answer as a case keeps it); a fault at `key` or `node` when unusable."""
        check = self.book.checks.get(self.id_of("check", key, name, self.book.checks))
        if check is None:
            return name, text
        try:
            return check.id, read_answer(check, text, numbered=False, folder=self.folder)
        except AnswerError as error:
            self.reading.fault(node, error.what, error.mend, error.near)
            return check.id, text

    def id_of(self, what: str, node: Node, name: str, known: Iterable[str]) -> str:
        """The id, an old one made new; "" with a fault when nothing has it."""
        names = set(known)
        new = self.book.renamed.get(name, name)
        if new in names:
            return new
        near = nearest(name, sorted(names))
        mend = "" if near else f"the book has: {listed(sorted(names))}"
        self.reading.fault(node, f"there is no {what} '{name}'", mend, near)
        return ""

    def complaint(self, record: Record) -> tuple[str, ...]:
        """Ids of the symptoms complained of."""
        node = record.at("complaint")
        nodes = node.items if isinstance(node, Items) else [node]
        found = [
            self.symptom(item, words)
            for item, words in zip(nodes, record.texts("complaint"), strict=False)
        ]
        return tuple(dict.fromkeys(name for name in found if name))

    def symptom(self, node: Node, words: str) -> str:
        """The symptom the words mean; "" with a fault when none, or more than one."""
        meant = symptoms_meant(words, self.book)
        if len(meant) == 1:
            return meant[0]
        if meant:
            mend = f"write which one: {listed(meant)}"
            self.reading.fault(node, f"'{words}' could be more than one complaint", mend)
            return ""
        near = nearest("-".join(words.lower().split()), self.book.symptoms)
        mend = "" if near else f"the complaints are: {listed(self.book.symptoms, 40)}"
        self.reading.fault(node, f"no complaint is known as '{words}'", mend, near)
        return ""
