"""A new check of the shop, with the sign it settles."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from typing import Any

from diagnose.book.model import Book
from diagnose.book.slug import free_id, free_slug
from diagnose.shop.draft import Draft, page, to_fill

SOURCE = "common-practice"
PLACES = ("history", "part", "wheel", "machine", "bench")


@dataclass(frozen=True)
class OwnSign:
    """A sign in words and the question that finds it, answered yes or no.

    `wheel` is stopped, turning, or "" when it does not matter.
    """

    words: str
    ask: str = ""
    help: str = ""
    minutes: float = 2.0
    place: str = "machine"
    wheel: str = "stopped"
    cautions: tuple[str, ...] = ()
    id: str = ""
    check: str = ""

    def named(self, taken: Collection[str]) -> OwnSign:
        """With ids for the sign and its check that are not taken."""
        sign = self.id or free_slug(self.words, taken, "new-sign")
        check = self.check or free_id(f"{sign}-look", {*taken, sign})
        return replace(self, id=sign, check=check)


def check_rows(sign: OwnSign) -> dict[str, Any]:
    """The check of the sign."""
    rows: dict[str, Any] = {
        "id": sign.check,
        "name": sign.words,
        "kind": "one",
        "ask": sign.ask or f"Is it so: {sign.words}?",
        "help": sign.help or to_fill("in one sentence, how to find the answer"),
        "minutes": f"{sign.minutes:g}",
        "options": [
            {"id": "no", "say": "no, nothing of the kind", "means": {sign.id: "no"}},
            {"id": "yes", "say": f"yes: {sign.words}", "means": {sign.id: "yes"}},
        ],
        "settles": [sign.id],
        "place": sign.place,
        "source": SOURCE,
    }
    if sign.wheel:
        rows["needs"] = [f"wheel-{sign.wheel}"]
    if sign.cautions:
        rows["cautions"] = list(sign.cautions)
    return rows


def sign_rows(sign: OwnSign) -> dict[str, Any]:
    """The sign itself: seldom there with nothing wrong."""
    return {
        "id": sign.id,
        "name": sign.words,
        "kind": "sign",
        "without_cause": "almost never",
        "source": SOURCE,
    }


def check_draft(sign: OwnSign, book: Book, taken: Collection[str]) -> Draft:
    """The files of a new check: the check and, when it is new, its sign."""
    known = sign.id in book.findings
    named = sign.named(taken)
    name, text = page("check", check_rows(named), named.place)
    files = {name: text}
    if not known:
        name, text = page("finding", sign_rows(named), "")
        files[name] = text
    return Draft(named.check, files)
