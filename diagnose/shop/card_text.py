"""Cards and records of the shop as the text of their files, and writing them.

A file that a person wrote is never rewritten: only a card whose text is still as it was written
from here is changed in place.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from diagnose.book.problems import BookError, Problem
from diagnose.book.shapes import Reading
from diagnose.book.writing import write_new, write_whole
from diagnose.book.yaml_nodes import read_tree
from diagnose.case.case_text import yaml_text
from diagnose.shop.cards import Card, card_of
from diagnose.shop.fields import MACHINE, WHEEL
from diagnose.shop.folders import FOLDERS, HEALTHY, MACHINES, WHEELS
from diagnose.shop.healthy import Healthy

FORMS = {MACHINES: MACHINE, WHEELS: WHEEL}


def card_text(card: Card) -> str:
    """The card as YAML that is read back to the same card."""
    rows: dict[str, Any] = {"id": card.id, "name": card.name, **card.words}
    if card.facts:
        rows["facts"] = dict(card.facts)
    if card.note:
        rows["note"] = card.note
    return yaml_text(rows)


@dataclass(frozen=True)
class Kept:
    """A card and its file; `ours` when the file is as it was written from here."""

    card: Card
    path: Path
    ours: bool


def find_card(shop: Path, folder: str, name: str) -> Kept | None:
    """The card file `folder/name.yaml`; None when there is none. Raises BookError for faults."""
    path = shop / folder / f"{name}.yaml"
    if not path.exists():
        return None
    reading = Reading()
    root, problems = read_tree(path)
    record = FORMS[folder].read(root, reading) if root is not None else None
    problems += reading.problems
    if problems or record is None:
        raise BookError(problems or [Problem(path.as_posix(), 0, 0, "this file is empty")])
    card = card_of(record, None, reading)
    return Kept(card, path, path.read_text(encoding="utf-8-sig") == card_text(card))


def put_card(shop: Path, folder: str, card: Card, old: Kept | None) -> Path:
    """Write a new card, or the changed one of a file that is as it was written from here.

    Raises BookError when the file was written by hand, or another has just made it.
    """
    path = shop / folder / f"{card.id}.yaml"
    if old is None:
        if not write_new(path, card_text(card)):
            raise BookError([_there(path, "there is a card of that name already")])
        return path
    if not old.ours:
        raise BookError([_there(old.path, "this card was written by hand and stays as it is")])
    write_whole(path, card_text(card))
    return path


def _there(path: Path, what: str) -> Problem:
    return Problem(path.as_posix(), 0, 0, what, "change it in an editor")


def put_healthy(shop: Path, record: Healthy) -> Path:
    """Write a healthy record to a file of its own; earlier ones stay. Raises BookError."""
    rows: dict[str, Any] = {"machine": record.machine, "date": record.date}
    if record.wheel:
        rows["wheel"] = record.wheel
    for name in ("answers", "readings"):
        if getattr(record, name):
            rows[name] = dict(getattr(record, name))
    if record.note:
        rows["note"] = record.note
    return put_new(shop / HEALTHY, f"{record.machine}-{record.date}", yaml_text(rows))


def put_new(folder: Path, stem: str, text: str) -> Path:
    """Write a text to a new file of the folder, numbered when the name is taken; its path."""
    number, path = 1, folder / f"{stem}.yaml"
    while not write_new(path, text):
        number += 1
        path = folder / f"{stem}-{number}.yaml"
    return path


def new_shop(folder: Path, name: str, tools: tuple[str, ...], instruments: tuple[str, ...]) -> Path:
    """Make a shop folder with its rooms and shop.yaml; its path.

    Raises BookError when there is a shop.yaml already, or the place cannot be written.
    """
    rows: dict[str, Any] = {"name": name}
    if tools:
        rows["tools"] = list(tools)
    if instruments:
        rows["instruments"] = list(instruments)
    if not write_new(folder / "shop.yaml", yaml_text(rows)):
        raise BookError([_there(folder / "shop.yaml", "there is a shop here already")])
    for room in FOLDERS:
        # git and synced folders forget a folder with nothing in it
        write_new(folder / room / ".keep", "")
    return folder / "shop.yaml"
