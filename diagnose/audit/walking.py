"""Walks through every entry of a book: its texts, its lists, its labels, what it names.

The paths use the names of the fields as they are written in the files.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from diagnose.audit.places import SHELVES
from diagnose.book.advice import Tick
from diagnose.book.model import Book, Where

Path = tuple[str | int, ...]
Found = tuple[str, str, Path, str]

_TEXTS = (
    "name summary because do steps proof help ask say explain looks_like in_words "
    "what_is_wrong do_first cleared_when title note no_instrument proves call_someone "
)
TEXTS = frozenset(_TEXTS.split())
_TAGS = "tools changes spoiled_by renewed_by shares_preparation family sketch "
TAGS = frozenset(_TAGS.split())
REFERENCES = frozenset(("source", "sources", "cautions", "caution"))
WRITTEN = {"condition": "if", "is_": "is", "with_": "with", "inputs": "from"}
NO_LISTS = frozenset(("tests", "words", "when", "condition", "means"))


def texts(book: Book) -> Iterator[Found]:
    """(kind, id, path, text) of every text for people."""
    yield from _those(book, TEXTS)


def tags(book: Book) -> Iterator[Found]:
    """(kind, id, path, label) of every free label."""
    yield from _those(book, TAGS)


def references(book: Book) -> Iterator[Found]:
    """(kind, id, path, id named) of every source and caution that is named."""
    yield from _those(book, REFERENCES)


def repeats(thing: Any) -> Iterator[tuple[Path, int, int]]:
    """(path of a list, place of the first, place of the second) for parts that are the same."""
    for path, value in _lists(thing, ()):
        seen: dict[Any, int] = {}
        for n, part in enumerate(value):
            key = bare(part)
            if key in seen:
                yield path, seen[key], n
            else:
                seen[key] = n


def _those(book: Book, wanted: frozenset[str]) -> Iterator[Found]:
    for kind, shelf in SHELVES.items():
        for name, thing in getattr(book, shelf).items():
            if kind == "finding" and name in book.symptoms:
                continue
            for path, text in _strings(thing, ()):
                field = next(step for step in reversed(path) if isinstance(step, str))
                borrowed = path[0] == "fix" and getattr(thing, "fix", thing).id != name
                if field in wanted and text and not borrowed:
                    yield kind, name, path, text


def _strings(thing: Any, path: Path) -> Iterator[tuple[Path, str]]:
    if isinstance(thing, str):
        yield path, thing
    elif isinstance(thing, tuple):
        for n, part in enumerate(thing):
            yield from _strings(part, (*path, n))
    elif is_dataclass(thing) and not isinstance(thing, Where):
        for field in fields(thing):
            step = WRITTEN.get(field.name, field.name)
            yield from _strings(getattr(thing, field.name), (*path, step))


def _lists(thing: Any, path: Path) -> Iterator[tuple[Path, tuple[Any, ...]]]:
    if isinstance(thing, tuple):
        yield path, thing
        for n, part in enumerate(thing):
            yield from _lists(part, (*path, n))
    elif is_dataclass(thing) and not isinstance(thing, Where):
        for field in fields(thing):
            if field.name not in NO_LISTS:
                step = WRITTEN.get(field.name, field.name)
                yield from _lists(getattr(thing, field.name), (*path, step))


def bare(part: Any) -> Any:
    """A part without its place, fit to be compared."""
    if is_dataclass(part) and not isinstance(part, type):
        left = ("where", "place") if isinstance(part, Tick) else ("where",)
        names = [f.name for f in fields(part) if f.name not in left]
        return type(part).__name__, tuple(bare(getattr(part, name)) for name in names)
    if isinstance(part, Mapping):
        return tuple(sorted((k, bare(v)) for k, v in part.items()))
    return tuple(bare(p) for p in part) if isinstance(part, tuple) else part
