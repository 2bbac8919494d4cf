"""The shop folder, its cases and its own knowledge as text and as data."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from diagnose.book.model import Book
from diagnose.shop.cards import Card, Shop
from diagnose.shop.closed import Cases, Kept
from diagnose.view.earlier import cured_words
from diagnose.view.folding import wrapped
from diagnose.view.result import minutes


def shop_text(shop: Shop, cases: Cases, book: Book) -> str:
    """What the shop folder holds."""
    lines = [f"{shop.name or 'Your shop'} ({shop.folder.as_posix() if shop.folder else ''})"]
    for what, cards in (("Machines", shop.machines), ("Wheels", shop.wheels)):
        lines.append(f"{what}: {len(cards)}")
        lines += [_card(card, shop) for card in cards.values()]
    if shop.tools is not None:
        lines.append(wrapped(f"Tools and instruments: {', '.join(shop.tools) or 'none'}", 4))
    own = [k for k in cases.closed if not k.pack]
    lines.append(f"Cases: {len(cases.open)} open, {len(own)} closed")
    lines += own_lines(book)
    return "\n".join(lines)


def _card(card: Card, shop: Shop) -> str:
    good = shop.healthy.get(card.id)
    tail = f"; ground well on {good.date}" if good else ""
    told = "; ".join(v for k, v in card.words.items() if k in ("marking", "adapter", "mounted"))
    return wrapped(f"{card.id}: {card.name}{f' ({told})' if told else ''}{tail}", 6, "  - ")


def own_lines(book: Book) -> list[str]:
    """The shop's own entries; those that stand in place of a shipped one with their reason."""
    if not book.own:
        return ["Knowledge of your own or taken in: none yet"]
    lines = [f"Knowledge of your own or taken in: {len(book.own)} entries"]
    for name in sorted(book.own):
        cause = book.causes.get(name)
        tail = f" ({book.origin(name)}{f', {cause.status}' if cause else ''})"
        why = book.overridden.get(name)
        over = f", in place of the shipped one: {why}" if why else ""
        lines.append(wrapped(f"{name}{tail}{over}", 6, "  - "))
    return lines


def case_lines(kept: Kept, book: Book) -> list[str]:
    """One case of the list."""
    case, closed = kept.case, kept.case.closed
    places = (case.machine and f"on {case.machine}", case.wheel and f"with {case.wheel}")
    where = " ".join(place for place in places if place)
    head = f"{kept.date or 'open':<11} {case.title}"
    lines = [wrapped(head + (f" ({where})" if where else ""), 12)]
    names = "; ".join(book.symptoms[s].name for s in case.complaint)
    if names != case.title:
        lines.append(wrapped(f"complaint: {names}", 12, " " * 12))
    if closed is not None:
        took = f", {minutes(closed.minutes)}" if closed.minutes else ""
        lines.append(wrapped(f"it was: {cured_words(book, closed)}{took}", 12, " " * 12))
        for label in ("done", "proved", "note"):
            if getattr(closed, label):
                lines.append(wrapped(f"{label}: {getattr(closed, label)}", 12, " " * 12))
    pack = f" (pack {kept.pack})" if kept.pack else ""
    lines.append(f"            {kept.path.as_posix()}{pack}")
    return lines


def cases_text(cases: Iterable[Kept], book: Book) -> str:
    """A list of cases."""
    return "\n".join(line for kept in cases for line in case_lines(kept, book))


def cases_json(cases: Iterable[Kept], book: Book) -> dict[str, Any]:
    """A list of cases as data."""
    return {"schema": 1, "cases": [_case(kept, book) for kept in cases]}


def _case(kept: Kept, book: Book) -> dict[str, Any]:
    case, closed = kept.case, kept.case.closed
    body: dict[str, Any] = {
        "case": kept.path.as_posix(),
        "title": case.title,
        "complaint": list(case.complaint),
        "machine": case.machine,
        "wheel": case.wheel,
        "part": case.part,
        "pack": kept.pack,
        "closed": None,
    }
    if closed is not None:
        body["closed"] = {
            "date": closed.date,
            "cured_by": list(closed.cured_by),
            "something_new": closed.something_new,
            "cured": closed.cured,
            "words": cured_words(book, closed),
            "done": closed.done,
            "minutes": closed.minutes,
            "proved": closed.proved,
            "note": closed.note,
            "pictures": list(closed.pictures),
        }
    return body
