"""From a knowledge folder to the book, or to all that is wrong with it at once."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Collection, Sequence
from pathlib import Path
from typing import TypeVar

from diagnose.book import (
    build_before,
    build_cards,
    build_causes,
    build_checks,
    build_rules,
    build_signs,
    build_terms,
    whole,
)
from diagnose.book.fact_names import fact_names
from diagnose.book.files import display, kind_of, knowledge_files, misplaced, read_records
from diagnose.book.kinds import KINDS
from diagnose.book.model import Book, Cause
from diagnose.book.overrides import Merged, Records, merge
from diagnose.book.problems import BookError, Problem
from diagnose.book.records import Record
from diagnose.book.references import check_references, index, renamed
from diagnose.book.scale import Words
from diagnose.book.shapes import Reading
from diagnose.book.shelf import Shelf
from diagnose.book.words import read_words

T = TypeVar("T")


def load_book(folder: Path, extra: Sequence[Path] = (), leave_out: Collection[Path] = ()) -> Book:
    """The knowledge of a folder, with that of the `extra` folders added to it.

    An entry of a later folder stands in place of an earlier one when it says so and why. Files
    of `leave_out` are passed over. The scale of words is that of `folder`. Raises BookError with
    every fault of every file: form, fields, words, ids, references, conditions, rates that say
    nothing, rings. While a file is no YAML at all, the faults that depend on the whole wait until
    it is.
    """
    reading = Reading()
    bases = [Path(folder), *map(Path, extra)]
    for base in bases:
        if not base.is_dir():
            what = "there is no such folder"
            raise BookError([Problem(base.as_posix(), 0, 0, what, "name the knowledge folder")])
    words = read_words(bases[0], reading)
    shelves: list[Records] = [{kind.name: [] for kind in KINDS} for _ in bases]
    files = [(base, p) for base in bases for p in knowledge_files(base) if p not in leave_out]
    for base, path in files:
        _read(base, path, bases.index(base) > 0, shelves[bases.index(base)], reading)
    merged = merge(shelves, reading)
    records = merged.records
    ids = index(records, reading)
    now = renamed(records, ids, reading)
    check_references(ids, now, reading)
    shelf = Shelf(reading, records)
    book = None
    if not reading.blind:
        shelf.facts = fact_names(records)
        book = _build(shelf, words, now, content_version(files), merged)
    if reading.problems or book is None:
        raise BookError(reading.problems)
    return book


def _read(base: Path, path: Path, own: bool, records: Records, reading: Reading) -> None:
    name = display(base, path, own=own)
    if path.relative_to(base).as_posix() == "words.yaml":
        if own:
            what = "the scale of words is that of the shipped knowledge"
            reading.problems.append(Problem(name, 0, 0, what, "take this file out"))
        return
    problem = misplaced(base, path, name)
    if problem is not None:
        reading.problems.append(problem)
    kind = kind_of(base, path)
    if kind is not None:
        records[kind.name] += read_records(path, kind, reading, name)


def content_version(files: Sequence[tuple[Path, Path]]) -> str:
    """A short name for the content of the files: the same files, the same name."""
    digest = hashlib.sha256()
    for base, path in files:
        digest.update(path.relative_to(base).as_posix().encode() + b"\0")
        try:
            digest.update(path.read_bytes().replace(b"\r\n", b"\n") + b"\0")
        except OSError:
            continue
    return digest.hexdigest()[:10]


def _build(shelf: Shelf, words: Words, now: dict[str, str], version: str, merged: Merged) -> Book:
    reading = shelf.reading
    sources = _all(shelf, "source", build_signs.source)
    cautions = _all(shelf, "caution", build_signs.caution)
    symptoms = _all(shelf, "symptom", lambda r: build_signs.symptom(r, shelf))
    findings = _all(shelf, "finding", lambda r: build_signs.finding(r, reading))
    shelf.findings = findings | {name: s.finding for name, s in symptoms.items()}
    shelf.checks = _all(shelf, "check", lambda r: build_checks.check(r, shelf))
    mechanisms = _all(shelf, "mechanism", build_signs.mechanism)
    rules = _all(shelf, "rule", lambda r: build_rules.rule(r, shelf))
    stops = _all(shelf, "stop", lambda r: build_rules.stop(r, shelf))
    fixes = {name: f for name, r in shelf.named("cause") if (f := r.group("fix"))}
    causes: dict[str, Cause] = _all(shelf, "cause", lambda r: build_causes.cause(r, shelf, fixes))
    book = Book(
        words=words,
        sources=sources,
        symptoms=symptoms,
        findings=shelf.findings,
        checks=shelf.checks,
        causes=causes,
        mechanisms=mechanisms,
        cautions=cautions,
        rules=rules,
        stops=stops,
        cards=_all(shelf, "card", lambda r: build_cards.card(r, shelf)),
        terms=_all(shelf, "term", build_terms.term),
        before=_all(shelf, "step", lambda r: build_before.tick(r, shelf)),
        renamed=now,
        version=version,
        own=merged.own,
        overridden=merged.reasons,
    )
    whole.look(book, shelf)
    return book


def _all(shelf: Shelf, kind: str, build: Callable[[Record], T]) -> dict[str, T]:
    return {name: build(record) for name, record in shelf.named(kind)}
