"""From one knowledge to another: what is said otherwise, how examples and cases move."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from diagnose.audit.examples import case_of
from diagnose.audit.otherwise import Said
from diagnose.audit.shelves import SHELVES
from diagnose.audit.told import corrected
from diagnose.audit.walking import bare
from diagnose.book.answers import UNKNOWN, AnswerError, read_answer
from diagnose.book.model import Book
from diagnose.case.entries import Case, Entry
from diagnose.reasoning.belief import Impossible, believe
from diagnose.reasoning.reason import read_case
from diagnose.reasoning.trials import network_of

MOVED = 0.05  # change of a chance that is shown though no rank changed


@dataclass(frozen=True)
class Stand:
    """How one case stands in one knowledge: rank and chance of the cause looked at, who is first.

    Rank 0: the cause is ruled out or not in the book; `note` says what could not be used.
    """

    rank: int
    chance: float
    first: str
    note: str = ""


@dataclass(frozen=True)
class Move:
    """One example, case or closed case, before and after. verdict: better | worse | moved | same.

    An example with `not_first`, and a case whose cure nobody knows, is looked at by what stands
    first.
    """

    kind: str  # example | case | closed case
    title: str
    cause: str
    wanted: str  # first | not first | cured | ""
    before: Stand
    after: Stand
    verdict: str


@dataclass(frozen=True)
class Comparison:
    """What is said otherwise and where; by kind, ids that came, went, or read otherwise (a
    borrowed fix, a word of the scale); the moves."""

    old: str
    new: str
    changes: Mapping[str, Mapping[str, tuple[str, ...]]]
    moves: tuple[Move, ...]
    said: tuple[Said, ...] = ()

    def count(self, verdict: str) -> int:
        """How many moved so."""
        return sum(m.verdict == verdict for m in self.moves)


def compare(
    old: Book,
    new: Book,
    cases: Iterable[Case] = (),
    closed: Iterable[Case] = (),
    said: Iterable[Said] = (),
) -> Comparison:
    """Rank everything in both books. Examples of either book are put to both; `said` is what
    their folders say otherwise (`otherwise.said_otherwise`)."""
    moves = [*_of_examples(old, new)]
    moves += [_move(old, new, "case", c.title, "", "", c) for c in cases]
    for case in closed:
        for cause in case.closed.cured_by if case.closed else ():
            moves.append(_move(old, new, "closed case", case.title, cause, "cured", case))
    order = ("worse", "better", "moved", "same")
    moves.sort(key=lambda m: (order.index(m.verdict), m.kind, m.cause, m.title))
    return Comparison(old.version, new.version, changes(old, new), tuple(moves), tuple(said))


def changes(old: Book, new: Book) -> dict[str, dict[str, tuple[str, ...]]]:
    """By kind: what is new, gone or changed; kinds without a change are left out."""
    found: dict[str, dict[str, tuple[str, ...]]] = {}
    for kind, shelf in SHELVES.items():
        before, after = getattr(old, shelf), getattr(new, shelf)
        kinds = {
            "new": tuple(sorted(after.keys() - before.keys())),
            "gone": tuple(sorted(before.keys() - after.keys())),
            "changed": tuple(
                sorted(n for n in before.keys() & after.keys() if bare(before[n]) != bare(after[n]))
            ),
        }
        told = {name: ids for name, ids in kinds.items() if ids}
        if told:
            found[kind] = told
    return found


def _of_examples(old: Book, new: Book) -> Iterator[Move]:
    seen: set[tuple[str, str]] = set()
    for book in (new, old):
        for cause in book.causes.values():
            for example in cause.examples:
                key = new.renamed.get(cause.id, cause.id), example.title
                if key in seen:
                    continue
                seen.add(key)
                wanted = "first" if example.first else "not first"
                name = example.first or example.not_first
                yield _move(old, new, "example", example.title, name, wanted, case_of(example))


def _move(old: Book, new: Book, kind: str, title: str, cause: str, wanted: str, case: Case) -> Move:
    before, after = stand(old, case, cause), stand(new, case, cause)
    return Move(kind, title, cause, wanted, before, after, _verdict(wanted, cause, before, after))


def _verdict(wanted: str, cause: str, before: Stand, after: Stand) -> str:
    if wanted == "not first":
        was, now = before.rank != 1, after.rank != 1
        if was != now:
            return "better" if now else "worse"
        return "same" if before.first == after.first else "moved"
    if not cause:
        shifted = abs(before.chance - after.chance) >= MOVED
        return "moved" if before.first != after.first or shifted else "same"
    far = 10_000
    if (before.rank or far) != (after.rank or far):
        return "better" if (after.rank or far) < (before.rank or far) else "worse"
    return "moved" if abs(before.chance - after.chance) >= MOVED else "same"


def stand(book: Book, case: Case, cause: str = "") -> Stand:
    """How a case stands in a book; what the book does not know of it is left out and said."""
    usable, notes = _usable(book, case)
    if usable is None:
        return Stand(0, 0.0, "", "no complaint that this knowledge has")
    read = read_case(book, usable)
    try:
        network, _ = network_of(book, usable.complaint, read.gathered, read.deduced)
        ranked = believe(network).ranked
    except Impossible:
        return Stand(0, 0.0, "", "its answers cannot all be true together")
    names = [r.cause for r in ranked]
    wanted = book.renamed.get(cause, cause) or names[0]
    rank = names.index(wanted) + 1 if wanted in names else 0
    chance = ranked[rank - 1].acts if rank else 0.0
    return Stand(rank, chance, names[0], "; ".join(notes))


def _usable(book: Book, case: Case) -> tuple[Case | None, list[str]]:
    complaint = tuple(
        dict.fromkeys(
            now for s in case.complaint if (now := book.renamed.get(s, s)) in book.symptoms
        )
    )
    if not complaint:
        return None, []
    notes: list[str] = []
    entries: list[Entry] = []
    for entry in corrected(case.entries):
        name = book.renamed.get(entry.name, entry.name)
        if entry.kind == "answer" and not _answers(book, name, entry.value):
            notes.append(f"without the answer to {entry.name}")
        elif entry.kind == "tried" and name not in {**book.causes, **book.checks}:
            notes.append(f"without trying {entry.name}")
        elif entry.kind in ("answer", "tried"):
            entries.append(replace(entry, name=name))
    return Case(case.title, complaint, tuple(entries)), notes


def _answers(book: Book, check: str, value: str) -> bool:
    known = book.checks.get(check)
    if known is None:
        return False
    try:
        return value == UNKNOWN or bool(read_answer(known, value, numbered=False))
    except AnswerError:
        return False
