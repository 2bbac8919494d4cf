"""What two versions of a knowledge folder say otherwise, by entry and field, with its place."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from diagnose.audit.aligning import align
from diagnose.audit.differing import Difference, differences
from diagnose.audit.told_parts import comparable
from diagnose.book.fields_signs import WORDS
from diagnose.book.files import display, kind_of, knowledge_files, read_records
from diagnose.book.nodes import Node
from diagnose.book.records import Record
from diagnose.book.shapes import Reading
from diagnose.book.words import read_words
from diagnose.book.yaml_nodes import read_tree

SCALES = "words.yaml"
IN_ORDER = "step"  # the kind whose order in the file is the order of the hands
Entries = dict[tuple[str, str], Record]


@dataclass(frozen=True)
class Said:
    """One place where the versions say something different.

    what: changed | new | gone | moved. `field` is the way into the entry in words, "" for the
    entry as a whole. `version` says in which of the two the place is: "new", or "old" for what
    is gone. Line and column count from 1.
    """

    what: str
    kind: str
    entry: str
    field: str
    before: str
    after: str
    version: str
    file: str
    line: int
    column: int


def said_otherwise(old: Path, new: Path) -> tuple[Said, ...]:
    """Every place where two folders that load say something different; whole entries first.

    Only files whose content differs are read. Layout, comments, the way a number is written and
    the order of lists whose order says nothing do not count.
    """
    before, after = _changed_files(old, new)
    was, now = _entries(old, before), _entries(new, after)
    found = [*_whole_entries(was, now)]
    for one, other in _pairs(was, now):
        found += [_said(d, *other) for d in differences(was[one], now[other])]
    found += _order(was, now)
    return tuple(sorted(found, key=lambda s: (s.field != "", s.file, s.line, s.column, s.field)))


def _changed_files(old: Path, new: Path) -> tuple[list[Path], list[Path]]:
    """The files of each folder that are not the same, byte for byte, in the other."""
    both = [{p.relative_to(base): p for p in knowledge_files(base)} for base in (old, new)]
    same = {
        name
        for name in both[0].keys() & both[1].keys()
        if both[0][name].read_bytes() == both[1][name].read_bytes()
    }
    first, second = ([p for name, p in some.items() if name not in same] for some in both)
    return first, second


def _entries(base: Path, paths: Iterable[Path]) -> Entries:
    reading = Reading()
    read_words(base, reading)
    found: Entries = {}
    for path in paths:
        name, kind = display(base, path), kind_of(base, path)
        if path.relative_to(base).as_posix() == SCALES:
            root, _ = read_tree(path, name)
            record = WORDS.read(root, reading) if root is not None else None
            found |= {("words", SCALES): record} if record is not None else {}
        elif kind is not None:
            found |= {(kind.name, r.text("id")): r for r in read_records(path, kind, reading, name)}
    return found


def _pairs(was: Entries, now: Entries) -> Iterator[tuple[tuple[str, str], tuple[str, str]]]:
    """The same entry in both, under its old id and its new one."""
    yield from ((key, key) for key in was if key in now)
    yield from _renamed(was, now).items()


def _renamed(was: Entries, now: Entries) -> Mapping[tuple[str, str], tuple[str, str]]:
    """Entries with another id: the new one replaces the old, or says the same in all else."""
    found: dict[tuple[str, str], tuple[str, str]] = {}
    fresh = [key for key in now if key not in was]
    for key in (k for k in was if k not in now):
        for other in (k for k in fresh if k[0] == key[0] and k not in found.values()):
            if key[1] in now[other].texts("replaces") or _rest(was[key]) == _rest(now[other]):
                found[key] = other
                break
    return found


def _rest(record: Record) -> object:
    return {n: comparable(v, n) for n, v in record.values.items() if n != "id"}


def _whole_entries(was: Entries, now: Entries) -> Iterator[Said]:
    renamed = _renamed(was, now)
    for key, record in was.items():
        if key not in now and key not in renamed:
            told = Difference("gone", "", _title(record), "", record.at("id"))
            yield _said(told, *key)
    for key, record in now.items():
        if key not in was and key not in renamed.values():
            yield _said(Difference("new", "", "", _title(record), record.at("id")), *key)


def _title(record: Record) -> str:
    names = ("name", "title", "do", "say")
    return next((text for n in names if (text := record.text(n))), "")


def _order(was: Entries, now: Entries) -> Iterator[Said]:
    """Steps before the cut that stand elsewhere among the others of their file."""
    files = {r.node.page.name for (kind, _), r in now.items() if kind == IN_ORDER}
    both = [key for key in now if key[0] == IN_ORDER and key in was]
    for file in sorted(files):
        here = [key for key in both if now[key].node.page.name == file]
        before = sorted(here, key=lambda key: was[key].node.line)
        for a, b in align(before, here).moved:
            node: Node = now[here[b]].at("id")
            told = f"number {a + 1} of the file", f"number {b + 1} of the file"
            yield _said(Difference("moved", "its place", *told, node), *here[b])


def _said(told: Difference, kind: str, entry: str) -> Said:
    node, version = told.node, "old" if told.what == "gone" else "new"
    words = told.what, kind, entry, told.field, told.before, told.after
    return Said(*words, version, node.page.name, node.line, node.column)
