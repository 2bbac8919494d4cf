"""Walks through every entry of a book: its texts, its lists, its labels, what it names.

The paths use the names of the fields as they are written in the files.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from diagnose.audit.shelves import SHELVES
from diagnose.book.advice import Tick
from diagnose.book.model import Book, Where

Path = tuple[str | int, ...]
Found = tuple[str, str, Path, str]

_TEXTS = (
    "name summary because do steps proof help ask say explain looks_like in_words "
    "what_is_wrong do_first means matters not_the_same cleared_when title note no_instrument "
    "proves call_someone "
)
TEXTS = frozenset(_TEXTS.split())
_TAGS = "tools changes spoiled_by renewed_by shares_preparation family sketch "
TAGS = frozenset(_TAGS.split())
REFERENCES = frozenset(("source", "sources", "cautions", "caution"))
WRITTEN = {"condition": "if", "is_": "is", "with_": "with", "inputs": "from"}
NO_LISTS = frozenset(("tests", "words", "when", "condition", "means"))


def strings(book: Book) -> tuple[Found, ...]:
    """(kind, id, path, text) of every text, label and reference; a borrowed fix only once."""
    found: list[Found] = []
    for kind, shelf in SHELVES.items():
        for name, thing in getattr(book, shelf).items():
            if kind == "finding" and name in book.symptoms:
                continue
            borrowed = getattr(thing, "fix", None) is not None and thing.fix.id != name
            for path, text in _strings(thing, ()):
                if text and not (borrowed and path[0] == "fix"):
                    found.append((kind, name, path, text))
    return tuple(found)


def texts(found: Iterable[Found]) -> Iterator[Found]:
    """Those of `strings` that are texts for people."""
    yield from (f for f in found if _field(f[2]) in TEXTS)


def tags(found: Iterable[Found]) -> Iterator[Found]:
    """Those that are free labels."""
    yield from (f for f in found if _field(f[2]) in TAGS)


def references(found: Iterable[Found]) -> Iterator[Found]:
    """Those that name a source or a caution."""
    yield from (f for f in found if _field(f[2]) in REFERENCES)


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


def _field(path: Path) -> str:
    """The name of the field a text stands in."""
    return next(step for step in reversed(path) if isinstance(step, str))


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
