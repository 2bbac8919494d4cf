"""A book as plain JSON text and back: only numbers, text and the frozen classes of the book.

Reading builds nothing but the classes named here and runs nothing that it reads.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Iterator, Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from typing import Any

from diagnose import __version__
from diagnose.book import advice, answers, conditions, glossary, guided, model, scale
from diagnose.book.frozen import FrozenMap
from diagnose.book.model import Book

ROOMS = (advice, answers, conditions, glossary, guided, model, scale)


class NotABook(ValueError):
    """The text is not that of a book."""


def to_text(book: Book) -> str:
    """The book as one line of JSON. Raises TypeError for a value that has no place in a book."""
    return json.dumps(_plain(book), ensure_ascii=False, separators=(",", ":"))


def from_text(text: str) -> Book:
    """The book of such a text. Raises NotABook when it is anything else."""
    try:
        book = _made(json.loads(text))
    except (ValueError, TypeError, KeyError, IndexError, AttributeError, RecursionError) as error:
        raise NotABook(str(error)) from None
    if not isinstance(book, Book):
        raise NotABook("no book in it")
    return book


@cache
def form() -> str:
    """A short name for the form of the book here; another one when its classes change."""
    digest = hashlib.sha256(__version__.encode())
    for name, (_, names) in sorted(_classes().items()):
        digest.update(f"{name}{names}".encode())
    return digest.hexdigest()[:16]


@cache
def _classes() -> Mapping[str, tuple[type, tuple[str, ...]]]:
    return {c.__name__: (c, tuple(f.name for f in fields(c))) for c in _frozen()}


def _frozen() -> Iterator[Any]:
    for room in ROOMS:
        for value in vars(room).values():
            if isinstance(value, type) and is_dataclass(value):
                yield value


def _plain(value: Any) -> Any:
    kind = type(value)
    if value is None or kind in (str, int, float, bool):
        return value
    if kind is tuple:
        return ["tuple", *map(_plain, value)]
    if kind is frozenset:
        return ["set", *sorted(map(_plain, value))]
    if kind in (dict, FrozenMap):
        name = "map" if kind is dict else "fixed"
        return [name, *(_plain(v) for pair in value.items() for v in pair)]
    known = _classes().get(kind.__name__)
    if known is None or known[0] is not kind:
        raise TypeError(f"{kind.__name__} has no place in a book")
    return [kind.__name__, *(_plain(getattr(value, n)) for n in known[1])]


def _made(node: Any) -> Any:
    if type(node) is not list:
        return node
    name = node[0]
    values = [_made(v) if type(v) is list else v for v in node[1:]]
    maker = _MAKERS.get(name)
    if maker is not None:
        return maker(values)
    cls, names = _classes()[name]
    if len(values) != len(names):
        raise NotABook(f"{name} has other parts")
    made: Any = object.__new__(cls)
    made.__dict__.update(zip(names, values, strict=True))
    return made


def _rows(values: list[Any]) -> dict[Any, Any]:
    return dict(zip(values[::2], values[1::2], strict=True))


_MAKERS: Mapping[str, Callable[[list[Any]], Any]] = {
    "tuple": tuple,
    "set": frozenset,
    "map": _rows,
    "fixed": lambda values: FrozenMap(_rows(values)),
}
