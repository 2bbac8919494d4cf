"""The shop folder: cards of its machines and of the wheels on its shelf, its healthy records."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from diagnose.book.model import Book, Where
from diagnose.book.near import listed, nearest
from diagnose.book.pages import shown
from diagnose.book.problems import BookError, Problem, in_order
from diagnose.book.records import Group, Record
from diagnose.book.shapes import Reading
from diagnose.book.yaml_nodes import read_tree
from diagnose.case.entries import Case
from diagnose.shop.fields import MACHINE, MACHINE_WORDS, SHOP, WHEEL, WHEEL_WORDS
from diagnose.shop.folders import MACHINES, WHEELS
from diagnose.shop.healthy import Healthy, read_healthy
from diagnose.shop.reading import answers_in, records_in


@dataclass(frozen=True)
class Card:
    """What the shop knows of one machine or wheel: facts by check, as a person wrote them.

    `words` are the fields in plain words: chuck, coolant ...; marking, adapter, mounted ...
    """

    id: str
    name: str
    facts: Mapping[str, str] = field(default_factory=dict)
    words: Mapping[str, str] = field(default_factory=dict)
    note: str = ""
    where: Where | None = None

    @property
    def marking(self) -> str:
        """The marking of a wheel, "" when the card has none."""
        return self.words.get("marking", "")


@dataclass(frozen=True)
class Shop:
    """A shop folder as far as it could be read; `problems` are the faults of the rest.

    `tools` (instruments included) is None when the shop lists none. `healthy` holds the latest
    healthy record of each machine.
    """

    folder: Path | None = None
    name: str = ""
    machines: Mapping[str, Card] = field(default_factory=dict)
    wheels: Mapping[str, Card] = field(default_factory=dict)
    tools: tuple[str, ...] | None = None
    problems: tuple[Problem, ...] = ()
    healthy: Mapping[str, Healthy] = field(default_factory=dict)

    @property
    def knowledge(self) -> Path | None:
        """The shop's own knowledge folder, if it has one."""
        own = self.folder / "knowledge" if self.folder else None
        return own if own and own.is_dir() else None

    def facts_for(self, case: Case) -> dict[str, str]:
        """Facts of the case's machine and wheel cards, check id -> answer.

        Raises BookError when the case names a card that the shop does not have.
        """
        facts: dict[str, str] = {}
        problems: list[Problem] = []
        for kind, name, cards in (
            ("machine", case.machine, self.machines),
            ("wheel", case.wheel, self.wheels),
        ):
            if name in cards:
                facts |= cards[name].facts
            elif name:
                problems.append(_no_card(case.path or "case", kind, name, cards))
        if problems:
            raise BookError(problems)
        return facts


def _no_card(path: str, kind: str, name: str, cards: Mapping[str, Card]) -> Problem:
    add = f"make its card: diagnose shop {kind} {name}"
    mend = f"the shop has: {listed(sorted(cards))}" if cards else add
    return Problem(path, 0, 0, f"the shop has no {kind} '{name}'", mend, nearest(name, cards))


def load_shop(folder: Path | None, book: Book | None = None) -> Shop:
    """The shop in a folder; an empty shop when there is no folder.

    Nothing is raised for a fault: what is at fault is left out and told in `problems`. With a
    book the facts of the cards are checked against it.
    """
    if folder is None or not Path(folder).is_dir():
        return Shop(Path(folder) if folder is not None else None)
    base, reading = Path(folder), Reading()
    record = _shop_yaml(base, reading)
    machines = _cards(base, MACHINES, MACHINE, record, book, reading)
    wheels = _cards(base, WHEELS, WHEEL, record, book, reading)
    healthy = read_healthy(base, machines, book, reading)
    return Shop(
        base,
        record.text("name") if record else "",
        machines,
        wheels,
        _tools(record),
        tuple(in_order(reading.problems)),
        healthy,
    )


def _tools(record: Record | None) -> tuple[str, ...] | None:
    if record is None or not {"tools", "instruments"} & record.values.keys():
        return None
    return tuple(dict.fromkeys((*record.texts("tools"), *record.texts("instruments"))))


def _shop_yaml(base: Path, reading: Reading) -> Record | None:
    path = base / "shop.yaml"
    if not path.exists():
        return None
    root, problems = read_tree(path, shown(path, base))
    reading.problems += problems
    return SHOP.read(root, reading) if root is not None else None


def _cards(
    base: Path,
    name: str,
    group: Group,
    shop: Record | None,
    book: Book | None,
    reading: Reading,
) -> dict[str, Card]:
    records = list(shop.groups(name)) if shop else []
    records += records_in(base, name, group, reading)
    cards: dict[str, Card] = {}
    for record in records:
        own = record.text("id")
        first = cards.get(own)
        if first is not None and first.where is not None:
            what = f"there is a card '{own}' already ({first.where.file}:{first.where.line})"
            reading.fault(record.at("id"), what, "give one of the two another id")
        elif own:
            cards[own] = card_of(record, book, reading)
    return cards


def card_of(record: Record, book: Book | None, reading: Reading) -> Card:
    """A card from its record."""
    words = {name: record.text(name) for name in (*MACHINE_WORDS, *WHEEL_WORDS) if name in record}
    return Card(
        record.text("id"),
        record.text("name"),
        answers_in(record, "facts", book, reading),
        words,
        record.text("note"),
        record.node.where,
    )
