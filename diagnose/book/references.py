"""Ids: each given once, and every word that must name something does."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from diagnose.book.near import nearest
from diagnose.book.nodes import Text
from diagnose.book.records import Record
from diagnose.book.shapes import Reading


@dataclass(frozen=True)
class Named:
    """Where an id is given, and to which kind."""

    kind: str
    file: str
    line: int

    @property
    def place(self) -> str:
        return f"{self.file}:{self.line}"


def index(records: Mapping[str, Iterable[Record]], reading: Reading) -> dict[str, Named]:
    """Every id with its kind and place; an id given twice is a fault at its second place."""
    ids: dict[str, Named] = {}
    for kind, some in records.items():
        for record in some:
            own, node = record.text("id"), record.at("id")
            if not own:
                continue
            if own in ids:
                first = ids[own]
                what = f"the id '{own}' is already given to a {first.kind} ({first.place})"
                reading.fault(node, what, "ids are unique over all kinds: choose another")
                continue
            ids[own] = Named(kind, node.page.name, node.line)
    return ids


def renamed(
    records: Mapping[str, Iterable[Record]], ids: Mapping[str, Named], reading: Reading
) -> dict[str, str]:
    """Old id -> id from every `replaces:`; an old id in use or replaced twice is a fault."""
    now: dict[str, str] = {}
    for some in records.values():
        for record in some:
            for old in record.texts("replaces"):
                node, own = record.at("replaces"), record.text("id")
                if old in ids:
                    what = f"'{old}' is still in use ({ids[old].place})"
                    reading.fault(node, what, "an id can only replace one that is gone")
                elif old in now:
                    what = f"'{old}' is replaced by {now[old]} as well"
                    reading.fault(node, what, "one of the two must go")
                else:
                    now[old] = own
    return now


def check_references(ids: Mapping[str, Named], now: Mapping[str, str], reading: Reading) -> None:
    """Note every reference that names nothing, or something of another kind."""
    by_kind: dict[str, list[str]] = {}
    for own, named in ids.items():
        by_kind.setdefault(named.kind, []).append(own)
    for kinds, node in reading.references:
        word, fit = node.value.strip(), _fitting(kinds)
        named_ = ids.get(word)
        if named_ is not None and named_.kind not in fit:
            what = f"'{word}' is a {named_.kind} ({named_.place}); a {kinds[0]} is needed here"
            reading.fault(node, what)
        elif named_ is None and not _may_be_unread(fit, word, reading):
            known = [own for kind in fit for own in by_kind.get(kind, [])]
            _unknown(node, kinds, known, ids, now, reading)


def _fitting(kinds: tuple[str, ...]) -> tuple[str, ...]:
    return (*kinds, "symptom") if "finding" in kinds else kinds


def _may_be_unread(kinds: tuple[str, ...], word: str, reading: Reading) -> bool:
    return any((kind, stem) in reading.unread for kind in kinds for stem in ("", word))


def _unknown(
    node: Text,
    kinds: tuple[str, ...],
    known: list[str],
    ids: Mapping[str, Named],
    now: Mapping[str, str],
    reading: Reading,
) -> None:
    word = node.value.strip()
    near = now.get(word) or nearest(word, known)
    suggestion = f"{near} ({ids[near].place})" if near in ids else near
    what = f"there is no {' or '.join(kinds)} '{word}'"
    if word in now:
        what += "; it has a new name"
    reading.fault(node, what, "" if near else _where_to_write(kinds[0], word), suggestion)


def _where_to_write(kind: str, word: str) -> str:
    from diagnose.book.kinds import BY_NAME

    place = BY_NAME[kind].place
    if not BY_NAME[kind].one_file_each:
        return f"add it to the {place}"
    middle = "ROOM/" if kind == "cause" else ""
    return f"write it in {place}/{middle}{word}.yaml"
