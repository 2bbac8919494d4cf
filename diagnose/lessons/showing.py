"""What was learned, as one view; text and JSON both print it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass
from typing import Any

from diagnose.book.model import Book
from diagnose.lessons.apply import current
from diagnose.lessons.model import Lessons, NoLink, Refused, Share, Strength
from diagnose.view.folding import wrapped

MOVED_TOO = (
    "The book weighs as much as ten cases. A cause that your other complaints name often, or "
    "seldom, moves a little where no case names it."
)
SMALL = 0.03  # a change below this, of a number no case speaks of, is folded into one line


@dataclass(frozen=True)
class RowView:
    """One adjusted number: chances from 0 to 1, before and after; `so` of `cases` cases.

    `odds` is the factor on the odds of a cause, None for a sign. `note` says why a number does
    not count at present.
    """

    cause: str
    name: str
    finding: str
    value: str
    so: int
    cases: int
    before: float
    after: float
    odds: float | None
    note: str = ""

    @property
    def minor(self) -> bool:
        """True for a cause that no case names and that hardly moves."""
        return self.so == 0 and self.odds is not None and abs(self.after - self.before) < SMALL


@dataclass(frozen=True)
class GroupView:
    """The numbers learned for one thing, with what they are for in words."""

    kind: str  # shares | signs
    complaint: tuple[str, ...]
    machine: str
    title: str
    rows: tuple[RowView, ...]


@dataclass(frozen=True)
class LessonsView:
    """Everything the shop learned, what was refused, and what could not be learned."""

    learned: str
    cases: int
    since: int  # cured cases closed since, not yet learned from
    typical_before: float
    typical_after: float
    groups: tuple[GroupView, ...]
    refused: tuple[str, ...]
    no_links: tuple[str, ...]


def view_of(lessons: Lessons, book: Book, cured: int) -> LessonsView:
    """The view of the lessons in force; `cured` is the number of cured cases in the shop now."""
    shares: dict[tuple[tuple[str, ...], str], list[Share]] = {}
    for share in lessons.shares:
        shares.setdefault((share.complaint, share.machine), []).append(share)
    signs: dict[tuple[str, str], list[Strength]] = {}
    for strength in lessons.strengths:
        signs.setdefault((strength.cause, strength.machine), []).append(strength)
    groups = [_shares(book, *key, rows) for key, rows in shares.items() if key[0]]
    groups += [_shares(book, *key, rows) for key, rows in shares.items() if not key[0]]
    groups += [_signs(book, *key, rows) for key, rows in sorted(signs.items())]
    return LessonsView(
        lessons.date,
        lessons.cases,
        max(0, cured - lessons.cases),
        lessons.typical_before,
        lessons.typical_after,
        tuple(groups),
        tuple(_refused(book, r) for r in lessons.refused),
        tuple(_no_link(book, n) for n in lessons.no_links),
    )


def _shares(book: Book, complaint: tuple[str, ...], machine: str, rows: list[Share]) -> GroupView:
    what = _complaint(book, complaint) if complaint else "any complaint without cases of its own"
    title = f"{what}{f', on {machine}' if machine else ''}: what it was"
    ranked = sorted(rows, key=lambda s: (-s.acted, -abs(s.after - s.before), s.cause))
    return GroupView(
        "shares",
        complaint,
        machine,
        title,
        tuple(
            RowView(s.cause, _cause(book, s.cause), "", "", s.acted, s.cases, s.before, s.after,
                    s.odds, _gone(book, s.cause))
            for s in ranked
        ),
    )  # fmt: skip


def _signs(book: Book, cause: str, machine: str, rows: list[Strength]) -> GroupView:
    where = f", on {machine}" if machine else ""
    title = f"{_cause(book, cause)}{where}: how often these showed"
    found = []
    for s in sorted(rows, key=lambda s: (-abs(s.after - s.before), s.finding, s.value)):
        sign = book.findings.get(s.finding)
        said = next((v.name for v in sign.values if v.id == s.value), s.value) if sign else s.value
        name = sign.name if sign and said == "yes" else said if sign else s.finding
        found.append(
            RowView(cause, name, s.finding, s.value, s.seen, s.cases, s.before, s.after, None,
                    _stale(book, s))
        )  # fmt: skip
    return GroupView("signs", (), machine, title, tuple(found))


def _gone(book: Book, cause: str) -> str:
    return "" if cause in book.causes else "the book knows this cause no more"


def _stale(book: Book, strength: Strength) -> str:
    cause = book.causes.get(strength.cause)
    if cause is None:
        return _gone(book, strength.cause)
    for link in cause.shows:
        if (link.finding, link.value) == (strength.finding, strength.value):
            fresh = current(link, strength)
            return "" if fresh else "the book has changed here since and counts; learn again"
    return "the book no longer lets the cause show it"


def _refused(book: Book, refused: Refused) -> str:
    where = f" on {refused.machine}" if refused.machine else ""
    what = (
        f"new shares for {_complaint(book, refused.what)}{where}"
        if refused.kind == "complaint"
        else f"new strengths of the signs of {', '.join(_cause(book, c) for c in refused.what)}"
    )
    return (
        f"{what}: what really cured {_cases(refused.cases)} would show with a chance of "
        f"{100 * refused.after:.1f} % instead of {100 * refused.before:.1f} %"
    )


def _no_link(book: Book, none: NoLink) -> str:
    where = f"{_cases(none.cases)} of {_complaint(book, none.complaint)}"
    return f"{_cause(book, none.cause)}: named in {where}, which the book does not let it show"


def _cause(book: Book, cause: str) -> str:
    return book.causes[cause].name if cause in book.causes else cause


def _complaint(book: Book, complaint: Iterable[str]) -> str:
    return " with ".join(book.symptoms[s].name if s in book.symptoms else s for s in complaint)


def _cases(number: int) -> str:
    return f"{number} {'case' if number == 1 else 'cases'}"


def percent(chance: float) -> str:
    """A chance in percent, with a decimal below ten."""
    return f"{100 * chance:.1f} %" if chance < 0.0995 else f"{100 * chance:.0f} %"


def lessons_text(view: LessonsView, *, every: bool = False) -> str:
    """The view as text; small changes that no case speaks of are one line, unless `every`."""
    if not view.cases:
        return "Nothing is learned yet: the book's own numbers count.\n" + _since(view)
    lines = [wrapped(f"Learned on {view.learned} from {_cases(view.cases)}. {_typical(view)}")]
    lines.append(wrapped(MOVED_TOO))
    lines.append(_since(view))
    for group in view.groups:
        shown = [r for r in group.rows if every or not r.minor]
        if shown:
            lines += ["", wrapped(group.title[:1].upper() + group.title[1:])]
        lines += [_row(r) for r in shown]
        rest = [r for r in group.rows if r not in shown]
        if rest and shown:
            lines.append(wrapped(_folded(rest), 4, "  - "))
    lines += _listed("Refused, because earlier cases would be ranked worse", view.refused)
    lines += _listed("Not learned: write the link in your own knowledge first", view.no_links)
    return "\n".join(lines)


def _typical(view: LessonsView) -> str:
    """What the learning does to the cases it came from, in words."""
    one = view.cases == 1
    these, it = ("that case", "it") if one else ("those cases", "each of them")
    usual = "" if one else ", typically"
    now, book = percent(view.typical_after), percent(view.typical_before)
    return (
        f"Ranked again with what was known before anything was tried, {these} would show what "
        f"really cured {it} with a chance of {now}{usual}; with the numbers of the book alone it "
        f"would be {book}. The higher, the sooner the right cause is looked at."
    )


def _folded(rows: Sequence[RowView]) -> str:
    """The causes that hardly moved, in one line; their chances are not added up: several can act
    together."""
    up = sum(1 for r in rows if r.after > r.before)
    most = max(abs(r.after - r.before) for r in rows)
    ways = [f"{n} {way}" for n, way in ((up, "up"), (len(rows) - up, "down")) if n]
    others = "one more cause" if len(rows) == 1 else f"{len(rows)} more causes"
    return (
        f"{others} that no case names moved a little: {' and '.join(ways)}, none by more than "
        f"{max(100 * most, 0.1):.1f} in 100 (--all lists them)"
    )


def _since(view: LessonsView) -> str:
    if not view.since:
        return "Every cured case is counted." if view.cases else "No cured case is closed yet."
    return f"{_cases(view.since)} more to learn from: diagnose lessons learn"


def _row(row: RowView) -> str:
    counted = f"{row.so} of {_cases(row.cases)}"
    note = f" ({row.note})" if row.note else ""
    change = f"{percent(row.before)} -> {percent(row.after)}"
    return wrapped(f"{row.name}: {change}, {counted}{note}", 4, "  - ")


def _listed(title: str, lines: tuple[str, ...]) -> list[str]:
    return ["", f"{title}:", *(wrapped(line, 4, "  - ") for line in lines)] if lines else []


def lessons_json(view: LessonsView) -> dict[str, Any]:
    """The view as data."""
    return {"schema": 1, **asdict(view)}
