"""Lesson packs: made of a shop's own knowledge, taken in by another shop."""

from __future__ import annotations

import io
import os
import re
import shutil
import tempfile
import zipfile
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from diagnose.book.day import Day
from diagnose.book.fields_common import NOTE
from diagnose.book.files import knowledge_files
from diagnose.book.loader import load_book
from diagnose.book.model import Book
from diagnose.book.nodes import Refused, Text
from diagnose.book.pages import page_of
from diagnose.book.problems import BookError, Problem
from diagnose.book.records import Field, Group
from diagnose.book.shapes import Id, Reading, Words
from diagnose.book.writing import write_new
from diagnose.book.yaml_nodes import compose
from diagnose.case.case_text import case_text, yaml_text
from diagnose.case.files import load_case
from diagnose.shop.closed import closed_cases
from diagnose.shop.folders import CASES, KNOWLEDGE, PACKS, own_knowledge
from diagnose.shop.knowledge import faulty_files
from diagnose.shop.pack_files import CARD, read_pack

SCHEMA = 1
PACK = Group(
    (
        Field("schema", Words(), "write schema: 1"),
        Field("id", Id(), "give the pack an id: belt-lessons, say"),
        Field("name", Words(), "say what it is about"),
        Field("date", Day(), help="when it was made"),
        Field("by", Words(), help="who made it, if they want that known"),
        NOTE,
    ),
    "pack.yaml",
)


@dataclass(frozen=True)
class Card:
    """What a pack says of itself."""

    id: str
    name: str
    date: str = ""
    by: str = ""
    note: str = ""


@dataclass(frozen=True)
class Taken:
    """A pack taken in: where it lies, what it brought."""

    card: Card
    folder: Path
    ids: tuple[str, ...]
    cases: int


# making one ------------------------------------------------------------------------------------


def make_pack(
    shop: Path, book: Book, card: Card, out: Path, names: Collection[str], *, with_cases: bool
) -> list[str]:
    """Write the shop's own knowledge as one zip file; the files in it.

    With `names` only the entries of these ids go along, and those of the shop they speak of.
    Cases go only when asked for; cards of machines and wheels never. Raises BookError when there
    is nothing to give or `out` is there already.
    """
    base = shop / KNOWLEDGE
    texts = {p.relative_to(base).as_posix(): p.read_text("utf-8") for p in knowledge_files(base)}
    if names:
        texts = _with_what_they_need(texts, names)
    if not texts:
        mend = "diagnose knowledge new cause writes the first"
        raise BookError([Problem(base.as_posix(), 0, 0, "there is nothing to give", mend)])
    files = {CARD: yaml_text(_rows(card))}
    files |= {f"{KNOWLEDGE}/{name}": text for name, text in texts.items()}
    if with_cases:
        closed, _ = closed_cases(shop, book)
        files |= {f"{CASES}/{k.path.stem}.yaml": case_text(k.case) for k in closed}
    if not write_new(out, _zipped(files)):
        raise BookError(
            [Problem(out.as_posix(), 0, 0, "this file is there already", "name another")]
        )
    return list(files)


def _rows(card: Card) -> dict[str, Any]:
    rows: dict[str, Any] = {"schema": str(SCHEMA), "id": card.id, "name": card.name}
    return rows | {n: v for n in ("date", "by", "note") if (v := getattr(card, n))}


def _with_what_they_need(texts: Mapping[str, str], names: Collection[str]) -> dict[str, str]:
    """The files that give one of the ids, and those they name in turn."""
    gives = {name: set(_ID.findall(text)) for name, text in texts.items()}
    wanted, kept = set(names), dict[str, str]()
    unknown = wanted - set().union(*gives.values()) if gives else wanted
    if unknown:
        what = f"the shop's own knowledge has no '{min(unknown)}'"
        raise BookError([Problem("command line", 0, 0, what, "diagnose shop lists what it has")])
    while True:
        more = {n: t for n, t in texts.items() if n not in kept and gives[n] & wanted}
        if not more:
            return {n: t for n, t in texts.items() if n in kept}
        kept |= more
        for text in more.values():
            wanted |= set(re.findall(r"[a-z0-9]+(?:-[a-z0-9]+)*", text))


_ID = re.compile(r"^(?:- )?id: *['\"]?([a-z0-9-]+)", re.MULTILINE)


def _zipped(files: Mapping[str, str]) -> bytes:
    """The same files give the same bytes."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as pack:
        for name in sorted(files):
            pack.writestr(zipfile.ZipInfo(name, (2000, 1, 1, 0, 0, 0)), files[name])
    return buffer.getvalue()


# taking one in ---------------------------------------------------------------------------------


def take_pack(shipped: Path, shop: Path, path: Path) -> Taken:
    """Take a pack into the shop: looked through aside, then put there in one step.

    Raises BookError, with nothing changed, for a pack that cannot be used or is taken already.
    """
    files = read_pack(path)
    card = _card(path, files)
    home = shop / PACKS
    target = home / card.id
    if target.exists():
        mend = f"to take it anew, move {target.as_posix()} away first"
        raise BookError([Problem(path.as_posix(), 0, 0, f"'{card.id}' is taken already", mend)])
    try:
        home.mkdir(parents=True, exist_ok=True)
        aside = Path(tempfile.mkdtemp(prefix=".", dir=home))
    except OSError as error:
        raise BookError([Problem(home.as_posix(), 0, 0, str(error.strerror))]) from None
    try:
        found = aside / card.id
        _spread(found, files)
        ids, cases = _looked_through(shipped, shop, found)
        os.rename(found, target)
    except OSError as error:
        raise BookError([Problem(path.as_posix(), 0, 0, str(error.strerror))]) from None
    finally:
        shutil.rmtree(aside, ignore_errors=True)
    return Taken(card, target, ids, cases)


def _card(path: Path, files: Mapping[str, bytes]) -> Card:
    name = f"{path.name}/{CARD}"
    if CARD not in files:
        raise BookError(
            [Problem(path.as_posix(), 0, 0, f"there is no {CARD} in it", "it is no pack")]
        )
    reading = Reading()
    try:
        root, problems = compose(page_of(name, files[CARD]))
    except Refused as refused:
        raise BookError(refused.problems) from None
    record = PACK.read(root, reading) if root is not None else None
    problems += reading.problems
    if record is None or problems:
        raise BookError(problems or [Problem(name, 0, 0, "this file is empty")])
    schema = record.at("schema")
    if record.text("schema") != str(SCHEMA):
        told = schema.value if isinstance(schema, Text) else "?"
        what = f"this pack was made by another version (schema {told}; this one reads {SCHEMA})"
        raise BookError([schema.problem(what, "bring diagnose up to date; nothing was changed")])
    return Card(*(record.text(n) for n in ("id", "name", "date", "by", "note")))


def _spread(folder: Path, files: Mapping[str, bytes]) -> None:
    for name, raw in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(raw)


def _looked_through(shipped: Path, shop: Path, found: Path) -> tuple[tuple[str, ...], int]:
    """The ids the pack brings and how many cases; raises BookError with every fault of it."""
    own = own_knowledge(shop)
    base = found / KNOWLEDGE
    mine = [base] if base.is_dir() else []
    at = len(own) - (shop / KNOWLEDGE in own)
    book = load_book(shipped, [*own[:at], *mine, *own[at:]], faulty_files(shipped, shop))
    problems: list[Problem] = []
    cases = sorted((found / CASES).rglob("*.y*ml")) if (found / CASES).is_dir() else []
    for path in cases:
        try:
            load_case(path, book)
        except BookError as error:
            problems += error.problems
    if problems:
        raise BookError([_within(p, found) for p in problems])
    ids = tuple(sorted(n for n, number in book.own.items() if mine and number == at + 1))
    return ids, len(cases)


def _within(problem: Problem, found: Path) -> Problem:
    from dataclasses import replace

    return replace(problem, file=problem.file.replace(found.parent.as_posix() + "/", ""))
