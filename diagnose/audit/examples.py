"""Runs the examples that sit beside every cause: each is a test of the knowledge."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from diagnose.book.model import Book, Cause, Example, Where
from diagnose.case.entries import Case, Entry
from diagnose.reasoning.belief import Impossible, believe
from diagnose.reasoning.reason import read_case
from diagnose.reasoning.trials import network_of


@dataclass(frozen=True)
class Failure:
    """An example that does not come out as written, and what came out."""

    where: Where | None
    cause: str
    title: str
    said: str

    def __str__(self) -> str:
        place = f"{self.where.file}:{self.where.line}: " if self.where else ""
        return f"{place}example '{self.title}' of {self.cause}: {self.said}"


@dataclass(frozen=True)
class Outcome:
    """What one example came to: the causes in order with their chance of acting."""

    cause: str
    example: Example
    ranking: tuple[tuple[str, float], ...]

    @property
    def rank(self) -> int:
        """Rank of the cause the example names, from 1; 0 when it is ruled out."""
        wanted = self.example.first or self.example.not_first
        names = [name for name, _ in self.ranking]
        return names.index(wanted) + 1 if wanted in names else 0


def case_of(example: Example) -> Case:
    """The example as a case."""
    entries = tuple(Entry("answer", n, v, "measured") for n, v in example.answers.items())
    return Case(example.title, example.complaint, entries)


def run_example(book: Book, cause: Cause, example: Example) -> Outcome:
    """Rank one example. Raises Impossible when its answers cannot all be true."""
    read = read_case(book, case_of(example))
    network, _ = network_of(book, example.complaint, read.gathered, read.deduced)
    ranked = believe(network).ranked
    return Outcome(cause.id, example, tuple((r.cause, r.acts) for r in ranked))


def run_examples(book: Book) -> Iterator[Failure]:
    """Every example that does not come out as its cause says."""
    for cause in sorted(book.causes.values(), key=lambda c: c.id):
        yield from failures_of(book, cause)


def failures_of(book: Book, cause: Cause) -> Iterator[Failure]:
    """The examples of one cause that do not come out as it says."""
    for example in cause.examples:
        said = _judge(book, cause, example)
        if said:
            yield Failure(example.where, cause.id, example.title, said)


def _judge(book: Book, cause: Cause, example: Example) -> str:
    try:
        outcome = run_example(book, cause, example)
    except Impossible as error:
        return str(error)
    top = [f"{name} {chance:.2f}" for name, chance in outcome.ranking[:3]]
    if example.first and outcome.rank != 1:
        return f"ranks {outcome.rank or 'nowhere'}, not first; the order is {', '.join(top)}"
    if example.not_first and outcome.rank == 1:
        return f"ranks first; the order is {', '.join(top)}"
    return ""
