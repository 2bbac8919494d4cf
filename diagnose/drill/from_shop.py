"""Drills drawn from the shop's own closed cases: what was answered stands, names are taken out."""

from __future__ import annotations

import random
from collections.abc import Sequence

from diagnose.book.model import Book
from diagnose.case.entries import UNKNOWN, Case, read_entries
from diagnose.drill.draw import Wish
from diagnose.reasoning.ground import ground


def usable(book: Book, cases: Sequence[Case]) -> list[Case]:
    """Closed cases that one cause of the book cured, and whose complaint it makes."""
    links = ground(book).links
    return [
        c
        for c in cases
        if c.closed is not None
        and len(c.closed.cured_by) == 1
        and c.closed.cured_by[0] in book.causes
        and any(s in links[c.closed.cured_by[0]] for s in c.complaint)
    ]


def wish_from(book: Book, cases: Sequence[Case], seed: int, level: int) -> Wish:
    """A wish for a case like one of these. Raises LookupError when none can be used.

    Only answers are taken over: no title, part, machine, note or date comes along.
    """
    able = usable(book, cases)
    if not able:
        raise LookupError(
            "no closed case of this shop can be drilled: close some with diagnose close"
        )
    case = random.Random(f"closed {seed}").choice(able)
    assert case.closed is not None
    cause = case.closed.cured_by[0]
    complaints = [s for s in case.complaint if s in ground(book).links[cause]]
    first = {s.check: s.value for s in reversed(read_entries(case).answers)}
    fixed = {
        n: v
        for n, v in first.items()
        if n in book.checks and v != UNKNOWN and not _about_hazards(book, n)
    }
    return Wish(
        level, frozenset((cause,)), frozenset(complaints[:1]), fixed, from_shop=True
    )  # fmt: skip


def _about_hazards(book: Book, name: str) -> bool:
    check = book.checks[name]
    return check.kind in ("any", "file") or any(o.raises for o in check.options)
