"""What one closed case can teach: complaint, what cured it, signs seen before anything was tried.

Its answers are read as they stood before the first fix. A sign counts when it was asked for
another reason than being the complaint: not the complaint itself, nor a sharper or blunter word
for it (given the complaint these are seen more often than the cause alone would show them).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from diagnose.book.model import Book
from diagnose.case.entries import Case, Entry
from diagnose.reasoning.facts import Gathered
from diagnose.reasoning.forward import Deduced
from diagnose.reasoning.network import SURE, meanings
from diagnose.reasoning.reason import read_case

STANDING = ("machine", "wheel")


@dataclass(frozen=True)
class Taught:
    """One closed case as learning sees it.

    `cured_by` are causes of the book; `new` is True when something not listed had a part.
    `signs` are the findings settled, value by sign. `standing` are the facts of machine and wheel
    that stood before the complaint (check, answer). `gathered` and `deduced` are the case as told.
    """

    title: str
    date: str
    complaint: tuple[str, ...]
    machine: str
    cured_by: tuple[str, ...]
    new: bool
    signs: Mapping[str, str]
    standing: tuple[tuple[str, str], ...]
    gathered: Gathered
    deduced: Deduced

    @property
    def alone(self) -> str:
        """The one cause named as the cure, or ""."""
        return self.cured_by[0] if len(self.cured_by) == 1 and not self.new else ""


def taught_by(book: Book, case: Case, cards: Mapping[str, str] | None = None) -> Taught | None:
    """What a closed case teaches; None when it was not cured or its complaint is not known."""
    closed = case.closed
    complaint = tuple(sorted(set(case.complaint)))
    if closed is None or not closed.cured or not complaint or set(complaint) - set(book.symptoms):
        return None
    entries = tuple(e for e in before_fixes(case.entries) if e.kind in ("answer", "correct"))
    read = read_case(book, replace(case, entries=entries, closed=None), cards)
    standing = tuple(
        (name, fact.text)
        for name, fact in sorted(read.gathered.told.items())
        if book.checks[name].standing in STANDING
    )
    return Taught(
        case.title,
        closed.date,
        complaint,
        case.machine,
        tuple(c for c in closed.cured_by if c in book.causes),
        bool(closed.something_new),
        signs_of(book, complaint, _seen(book, read.gathered, read.deduced)),
        standing,
        read.gathered,
        read.deduced,
    )


def before_fixes(entries: Iterable[Entry]) -> list[Entry]:
    """The entries up to the first fix or trial that was carried out."""
    found = []
    for entry in entries:
        if entry.kind == "tried" and entry.outcome != "not done":
            break
        found.append(entry)
    return found


def _seen(book: Book, gathered: Gathered, deduced: Deduced) -> dict[str, str]:
    """Findings settled beyond doubt, by an answer or worked out from one."""
    found: dict[str, str] = {}
    for degrees in (deduced.words, meanings(book, gathered)):
        for name, values in degrees.items():
            best = max(values, key=lambda v: (values[v], v))
            if values[best] >= SURE:
                found[name] = best
    return found


def signs_of(book: Book, complaint: tuple[str, ...], seen: Mapping[str, str]) -> dict[str, str]:
    """Of what was seen, the signs that were asked for other reasons than being the complaint."""
    barred = {b for symptom in complaint for b in _chain(book, symptom)}
    return {
        name: value
        for name, value in sorted(seen.items())
        if name in book.findings
        and book.findings[name].kind == "sign"
        and name not in barred
        and not set(_chain(book, name)) & set(complaint)
    }


def _chain(book: Book, sign: str) -> list[str]:
    """A sign and every blunter one it sharpens."""
    chain = [sign]
    while (blunter := book.findings[chain[-1]].sharpens) and blunter not in chain:
        chain.append(blunter)
    return chain
