"""The shop folder: cards of its machines and of the wheels on its shelf."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from diagnose.book.answers import AnswerError, read_answer
from diagnose.book.files import ENDINGS
from diagnose.book.model import Book, Where
from diagnose.book.near import listed, nearest
from diagnose.book.nodes import Items, Node, written
from diagnose.book.pages import shown
from diagnose.book.problems import BookError, Problem, in_order
from diagnose.book.records import Group, Record
from diagnose.book.shapes import Reading
from diagnose.book.yaml_nodes import read_tree
from diagnose.case.entries import Case
from diagnose.shop.fields import MACHINE, SHOP, WHEEL


@dataclass(frozen=True)
class Card:
    """What the shop knows of one machine or wheel: facts by check, as a person wrote them."""

    id: str
    name: str
    facts: Mapping[str, str] = field(default_factory=dict)
    marking: str = ""
    note: str = ""
    where: Where | None = None


@dataclass(frozen=True)
class Shop:
    """A shop folder as far as it could be read; `problems` are the faults of the rest.

    `tools` is None when the shop does not list its tools.
    """

    folder: Path | None = None
    name: str = ""
    machines: Mapping[str, Card] = field(default_factory=dict)
    wheels: Mapping[str, Card] = field(default_factory=dict)
    tools: tuple[str, ...] | None = None
    problems: tuple[Problem, ...] = ()

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
    mend = f"the shop has: {listed(sorted(cards))}" if cards else f"add a card to {kind}s/"
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
    machines = _cards(base, "machines", MACHINE, record, book, reading)
    wheels = _cards(base, "wheels", WHEEL, record, book, reading)
    return Shop(
        base,
        record.text("name") if record else "",
        machines,
        wheels,
        record.texts("tools") if record and "tools" in record else None,
        tuple(in_order(reading.problems)),
    )


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
    records += _in_files(base, name, group, reading)
    cards: dict[str, Card] = {}
    for record in records:
        own = record.text("id")
        first = cards.get(own)
        if first is not None and first.where is not None:
            what = f"there is a card '{own}' already ({first.where.file}:{first.where.line})"
            reading.fault(record.at("id"), what, "give one of the two another id")
        elif own:
            cards[own] = _card(record, book, reading)
    return cards


def _in_files(base: Path, name: str, group: Group, reading: Reading) -> Iterator[Record]:
    folder = base / name
    paths = sorted(folder.iterdir()) if folder.is_dir() else []
    for path in paths:
        if path.suffix not in ENDINGS or path.name.startswith("."):
            continue
        root, problems = read_tree(path, shown(path, base))
        reading.problems += problems
        for node in root.items if isinstance(root, Items) else [root]:
            record = group.read(node, reading) if node is not None else None
            if record is not None:
                yield record


def _card(record: Record, book: Book | None, reading: Reading) -> Card:
    facts: dict[str, str] = {}
    for check, node in record.by_name("facts").items():
        answer = _fact(check, node, book, reading)
        if answer is not None:
            facts[answer[0]] = answer[1]
    return Card(
        record.text("id"),
        record.text("name"),
        facts,
        record.text("marking"),
        record.text("note"),
        record.node.where,
    )


def _fact(name: str, node: Node, book: Book | None, reading: Reading) -> tuple[str, str] | None:
    text = written(node)
    if book is None:
        return name, text
    check = book.checks.get(book.renamed.get(name, name))
    if check is None:
        near = nearest(name, book.checks)
        reading.fault(node, f"there is no check '{name}'", "", near)
        return None
    try:
        return check.id, read_answer(check, text, numbered=False)
    except AnswerError as error:
        reading.fault(node, error.what, error.mend, error.near)
        return None
