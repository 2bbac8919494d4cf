"""What a page says, read back from its HTML."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from typing import Any
from xml.etree import ElementTree

import html5lib

UNSEEN = {"style", "title", "desc", "head"}


def parsed(page: str) -> ElementTree.Element:
    """The page as a tree; any fault of its HTML raises."""
    parser = html5lib.HTMLParser(
        strict=True, tree=html5lib.getTreeBuilder("etree"), namespaceHTMLElements=False
    )
    return parser.parse(page)


def local(tag: object) -> str:
    """The name of an element without its namespace."""
    return str(tag).rpartition("}")[2]


def said(element: ElementTree.Element) -> str:
    """All that a reader sees, spaces made single; spoken titles of drawings are left out."""
    return " ".join(" ".join(_texts(element)).split())


def _texts(element: ElementTree.Element) -> Iterator[str]:
    if isinstance(element.tag, str) and local(element.tag) not in UNSEEN:
        yield element.text or ""
        for child in element:
            yield from _texts(child)
            yield child.tail or ""


@dataclasses.dataclass(frozen=True)
class Fact:
    """One leaf of a record: the record's class, the field, the value."""

    of: str
    field: str
    value: Any


def facts(record: Any, of: str = "", field: str = "") -> Iterator[Fact]:
    """Every leaf of a record, however deep."""
    if dataclasses.is_dataclass(record):
        for part in dataclasses.fields(record):
            yield from facts(getattr(record, part.name), type(record).__name__, part.name)
    elif isinstance(record, tuple):
        for part in record:
            yield from facts(part, of, field)
    elif record is not None:
        yield Fact(of, field, record)


def with_every_text(record: Any, text: str) -> Any:
    """The record with each text in it replaced."""
    if isinstance(record, str):
        return text
    if isinstance(record, tuple):
        return tuple(with_every_text(part, text) for part in record)
    if dataclasses.is_dataclass(record) and not isinstance(record, type):
        parts = dataclasses.fields(record)
        changed = {p.name: with_every_text(getattr(record, p.name), text) for p in parts}
        return dataclasses.replace(record, **changed)
    return record
