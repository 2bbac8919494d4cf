"""Cards and healthy records made from options, or from a few questions at a terminal."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from diagnose.cli.asking import Asker, ask_through
from diagnose.cli.card_facts import facts_in_words, told_already, words_in_marking
from diagnose.cli.console import at_a_terminal, say, tell
from diagnose.cli.exits import DONE, leave
from diagnose.cli.room import Room, open_room
from diagnose.cli.settings import Settings
from diagnose.cli.source import entry_typed, fault

if TYPE_CHECKING:
    from diagnose.book.model import Book
    from diagnose.shop.card_text import Kept
    from diagnose.shop.cards import Card

FOLDER = {"machine": "machines", "wheel": "wheels"}


def make_card(
    where: Settings, kind: str, name: str, facts: Sequence[str], words: Mapping[str, str]
) -> None:
    """A new card, or changes to one. Raises BookError."""
    from diagnose.book.shapes import ID, ID_MEND
    from diagnose.shop.card_text import find_card
    from diagnose.shop.cards import Card

    if name and not ID.match(name):
        raise fault(f"'{name}' cannot be an id", ID_MEND)
    room = open_room(where)
    old = find_card(where.shop, FOLDER[kind], name) if name else None
    given = {key: " ".join(text.split()) for key, text in words.items() if text}
    if not given and not facts and at_a_terminal():
        leave(ask_through(lambda asker: _asked(asker, room, kind, name, old)))
    before = old.card if old else Card(name, "")
    if not name:
        raise fault(f"the {kind} has no id", f"diagnose shop {kind} ID --name ...")
    told = {e.name: e.value for e in (entry_typed(text, room.book) for text in facts)}
    meant = facts_in_words(kind, given, room.book)
    card = replace(
        before,
        name=given.pop("name", "") or before.name or name.replace("-", " "),
        note=given.pop("note", "") or before.note,
        words=_in_order(kind, {**before.words, **given}),
        facts={**before.facts, **meant, **told},
    )
    if meant:
        say(_understood(room.book, meant))
    _put(room, kind, card, old)


def _in_order(kind: str, words: Mapping[str, str]) -> dict[str, str]:
    from diagnose.shop.fields import MACHINE_WORDS, WHEEL_WORDS

    fields = MACHINE_WORDS if kind == "machine" else WHEEL_WORDS
    return {name: words[name] for name in fields if words.get(name)}


def _put(room: Room, kind: str, card: Card, old: Kept | None) -> None:
    from diagnose.shop.card_text import put_card

    path = put_card(room.folder, FOLDER[kind], card, old)
    tell(path.as_posix())
    if kind == "machine" and old is None:
        say(f"While it grinds well: diagnose shop good {card.id} -f dress-seconds=8s")
    say("Next: diagnose shop wheel" if kind == "machine" else "Next: diagnose ask")


def _asked(asker: Asker, room: Room, kind: str, name: str, old: Kept | None) -> int:
    from diagnose.book.slug import free_slug
    from diagnose.shop.cards import Card
    from diagnose.shop.fields import MACHINE_WORDS, WHEEL_WORDS

    card = old.card if old else Card(name, "")
    must = "Type a few words: grinder by the north wall"
    called = asker.words(f"What do you call the {kind}?", must=must, now=card.name)
    cards = room.shop.machines if kind == "machine" else room.shop.wheels
    own = name or free_slug(called, cards, kind)
    questions = MACHINE_WORDS if kind == "machine" else WHEEL_WORDS
    words: dict[str, str] = {}
    for key, question in questions.items():
        now = card.words.get(key, "")
        if now or key not in words_in_marking(kind, words.get("marking", "")):
            words[key] = asker.words(question, now=now)
    new_words = {key: text for key, text in words.items() if text != card.words.get(key, "")}
    meant = facts_in_words(kind, new_words, room.book)
    facts = {**card.facts, **meant}
    if meant:
        asker.say("\n" + _understood(room.book, meant))
    told = told_already(meant)
    for check in sorted(room.book.checks.values(), key=lambda c: c.id):
        # what is left out here, hazards too, is asked in the interview
        if check.standing == kind and check.id not in told:
            answer = asker.answer(check, facts.get(check.id, ""))
            if answer:
                facts[check.id] = answer
    note = asker.words("Anything else to remember?", now=card.note)
    new = replace(card, id=own, name=called, words=_in_order(kind, words), facts=facts, note=note)
    _put(room, kind, new, old)
    return DONE


def _understood(book: Book, facts: Mapping[str, str]) -> str:
    """What the words of a card were taken to say, a line each."""
    from diagnose.view.folding import wrapped

    lines = ["From what you wrote, and not asked again:"]
    for name, value in facts.items():
        check = book.checks[name]
        said = check.by_option[value].say if value in check.by_option else value
        lines.append(wrapped(f"{check.name}: {said}", 4, "  - "))
    return "\n".join(lines)


def make_healthy(
    where: Settings,
    machine_id: str,
    wheel: str,
    date: str,
    facts: Sequence[str],
    readings: Sequence[str],
    note: str,
) -> None:
    """A healthy record. Raises BookError."""
    from diagnose.book.day import MEND, day_of
    from diagnose.book.near import listed, nearest
    from diagnose.shop.card_text import put_healthy
    from diagnose.shop.healthy import Healthy

    room = open_room(where)
    for kind, name, cards in (
        ("machine", machine_id, room.shop.machines),
        ("wheel", wheel, room.shop.wheels),
    ):
        if name and name not in cards:
            mend = f"the shop has: {listed(cards)}" if cards else f"diagnose shop {kind} {name}"
            raise fault(f"the shop has no {kind} '{name}'", mend, nearest(name, cards))
    day = day_of(date) if date else datetime.date.today()
    if day is None:
        raise fault(f"'{date}' is no day", MEND)
    told = {e.name: e.value for e in (entry_typed(text, room.book) for text in facts)}
    named = readings_typed(readings)
    if not told and not named:
        mend = "give -f CHECK=VALUE or -r NAME=VALUE: -f dress-seconds=8s -r block-finish=0.3um"
        raise fault("nothing is said of how it grinds", mend)
    record = Healthy(machine_id, day.isoformat(), wheel, told, named, " ".join(note.split()))
    tell(put_healthy(room.folder, record).as_posix())


def readings_typed(texts: Sequence[str]) -> dict[str, str]:
    """NAME=VALUE texts by name. Raises BookError for one that is none."""
    from diagnose.book.slug import slug

    found: dict[str, str] = {}
    for text in texts:
        name, equals, value = text.partition("=")
        if not equals or not slug(name) or not value.strip():
            raise fault(f"'{text}' is no reading", "write it as NAME=VALUE: block-finish=0.3um")
        found[slug(name)] = " ".join(value.split())
    return found
