"""Two causes side by side, and the one look that decides between them, worked out from the book.

A look decides by how differently it comes out: half the sum of the differences of the chances of
its answers (0 alike, 1 never alike), less a little for every minute it takes.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from itertools import pairwise

from diagnose.book.model import Book, Check
from diagnose.drill.signs import reports_on, signs_of
from diagnose.reasoning.ground import Vector, ground
from diagnose.view.drill import SideBySide
from diagnose.view.parts import source_view

A_MINUTE = 0.006  # of difference
LEAST = 0.25  # difference from which a look is worth naming


@dataclass(frozen=True)
class Look:
    """One check and how it comes out for two causes; each outcome with its chance."""

    check: str
    apart: float
    one: tuple[str, float]
    other: tuple[str, float]
    because: str
    source: str


def deciding_look(
    book: Book, one: str, other: str, among: Collection[str] | None = None
) -> Look | None:
    """The look that tells two causes apart for its minutes, or None when the book has none.

    `among`: the checks that make sense here; None for all.
    """
    looks = [
        look
        for check in sorted(book.checks.values(), key=lambda c: c.id)
        if among is None or check.id in among
        if (look := _look(book, check, one, other)) is not None
    ]

    def worth(look: Look) -> tuple[float, float, str]:
        check = book.checks[look.check]
        minutes = check.minutes + sum(book.checks[n].minutes for n in check.together_with)
        # of readings made together the one that takes longest is the one to name
        return look.apart - A_MINUTE * minutes, check.minutes, check.id

    return max((k for k in looks if k.apart >= LEAST), key=worth, default=None)


def side_by_side(
    book: Book, one: str, other: str, among: Collection[str] | None = None
) -> SideBySide | None:
    """The view of two causes with the look between them."""
    look = deciding_look(book, one, other, among)
    if look is None:
        return None
    check = book.checks[look.check]
    return SideBySide(
        book.causes[one].name, book.causes[other].name, look.because, check.ask, check.minutes,
        look.one[0], look.other[0], source_view(book, look.source),
    )  # fmt: skip


def shown_by(book: Book, cause: str, sign: str) -> Vector:
    """P(each value of a sign | this cause and nothing else), background included."""
    known = ground(book)
    background = known.backgrounds[sign]
    link = known.links[cause].get(sign)
    if link is None:
        return background
    upto = [0.0]
    for k in range(len(background)):
        upto.append(sum(background[: k + 1]) * sum(link[: k + 1]))
    return tuple(b - a for a, b in pairwise(upto))


def _look(book: Book, check: Check, one: str, other: str) -> Look | None:
    reports = {c.id: r for c, r in reports_on(book, check)}
    if reports:
        if one in reports and other in reports:
            return None
        mine = one if one in reports else other if other in reports else ""
        if not mine:
            return None
        r = reports[mine]
        apart = r.right_when_there + r.right_when_not - 1.0
        yes = check.by_option[r.option].say
        no = next((o.say for o in check.options if o.id != r.option), "nothing of the kind")
        says = ((yes, r.right_when_there), (no, r.right_when_not))
        first, second = says if mine == one else says[::-1]
        return Look(check.id, apart, first, second, book.causes[mine].summary, check.source)
    signs = [s for s in signs_of(book, check) if s not in book.symptoms]
    if not signs:
        return None
    return _sign_look(book, check, signs[0], one, other)


def _sign_look(book: Book, check: Check, sign: str, one: str, other: str) -> Look:
    a, b = shown_by(book, one, sign), shown_by(book, other, sign)
    apart = 0.5 * sum(abs(p - q) for p, q in zip(a, b, strict=True))
    most_a = max(range(len(a)), key=lambda k: a[k] - b[k])
    most_b = max(range(len(a)), key=lambda k: b[k] - a[k])
    names = [_said(check, sign, v.id, v.name) for v in book.findings[sign].values]
    because = _because(book, sign, (one, other))
    return Look(
        check.id,
        apart,
        (names[most_a], a[most_a]),
        (names[most_b], b[most_b]),
        because,
        check.source,
    )


def _said(check: Check, sign: str, value: str, name: str) -> str:
    says = [o.say for o in check.options if o.means.get(sign) == value]
    return says[0] if says else name


def _because(book: Book, sign: str, causes: Sequence[str]) -> str:
    found = [k.because for c in causes for k in book.causes[c].shows if k.finding == sign]
    return found[0] if found else ""
