"""How each check would be answered with one cause there and nothing else known.

A row is the chance of each answer with that cause alone present, its circumstances unknown; two
causes whose rows differ nowhere cannot be told apart by looking. Total variation, half the sum
of the differences of the two rows, says how far a check separates a pair.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from diagnose.book.model import Book, Cause, Check, Confirm
from diagnose.reasoning.ground import Vector, cause_links

Row = tuple[float, ...]
Confirms = Mapping[str, tuple[str, Confirm]]
FAR = 0.3  # total variation at which two causes are told apart by a check
QUICK = 20.0  # minutes of a check that counts as quick


@dataclass(frozen=True)
class Signature:
    """By check: the chance of each answer with this cause there, where it is not as without."""

    cause: str
    rows: Mapping[str, Row]


def signatures(book: Book) -> dict[str, Signature]:
    """The signature of every cause."""
    confirms = _confirms(book)
    bare = {c.id: _row(book, c, {}, None, confirms) for c in book.checks.values()}
    return {
        cause.id: Signature(cause.id, dict(_rows(book, cause, confirms, bare)))
        for cause in book.causes.values()
    }


def apart(one: Row, other: Row) -> float:
    """Total variation of two rows: 0 alike, 1 never the same answer."""
    return sum(abs(a - b) for a, b in zip(one, other, strict=True)) / 2.0


def separation(book: Book, one: Signature, other: Signature) -> list[tuple[float, Check]]:
    """How far each check separates two causes, the best first, quicker ones first among equals."""
    found = []
    for name in one.rows.keys() | other.rows.keys():
        check = book.checks[name]
        here = one.rows.get(name) or plain(book, check)
        there = other.rows.get(name) or plain(book, check)
        found.append((apart(here, there), check))
    found.sort(key=lambda pair: (-round(pair[0], 6), pair[1].minutes, pair[1].id))
    return found


def plain(book: Book, check: Check) -> Row:
    """The chance of each answer of a check with no cause there."""
    return _row(book, check, {}, None, _confirms(book))


def signs_of(book: Book, check: Check) -> list[str]:
    """The signs a check can settle."""
    named = [*check.settles, *(f for o in check.options for f in o.means)]
    if check.reports is not None:
        named.append(check.reports.finding)
    known = [f for f in dict.fromkeys(named) if f in book.findings]
    return [f for f in known if book.findings[f].kind == "sign"]


def circumstances_of(book: Book, check: Check) -> list[str]:
    """The circumstances a check can settle, and the check's own fact."""
    named = [*check.settles, *(f for o in check.options for f in o.means)]
    known = [f for f in dict.fromkeys(named) if f in book.findings]
    return [check.id, *(f for f in known if book.findings[f].kind == "circumstance")]


def _confirms(book: Book) -> dict[str, tuple[str, Confirm]]:
    """By check: the cause it reports, and how far it can be trusted."""
    return {f.check: (c.id, f) for c in book.causes.values() for f in c.be_sure}


def _rows(
    book: Book, cause: Cause, confirms: Confirms, bare: Mapping[str, Row]
) -> Iterator[tuple[str, Row]]:
    links = cause_links(book, cause)
    for check in book.checks.values():
        row = _row(book, check, links, cause, confirms)
        if apart(row, bare[check.id]) > 1e-9:
            yield check.id, row


def _row(
    book: Book,
    check: Check,
    links: Mapping[str, Vector],
    cause: Cause | None,
    confirms: Confirms,
) -> Row:
    if check.id in confirms:
        owner, confirm = confirms[check.id]
        here = cause is not None and cause.id == owner
        yes = confirm.right_when_there if here else 1.0 - confirm.right_when_not
        return (1.0 - yes, yes)
    signs = signs_of(book, check)
    if not signs:
        return _by_circumstance(check, cause)
    row = _with(book, signs[0], links)
    if check.reports is not None:
        seen = 1.0 - row[0]
        said = seen * check.reports.right_when_there
        said += (1.0 - seen) * (1.0 - check.reports.right_when_not)
        return (1.0 - said, said)
    if len(signs) == 1:
        return row
    return tuple(x for s in signs for x in _with(book, s, links))


def _with(book: Book, sign: str, links: Mapping[str, Vector]) -> Row:
    rest = [v.without_cause or 0.0 for v in book.findings[sign].values[1:]]
    state = (1.0 - sum(rest), *rest)
    step = links.get(sign)
    if step is None:
        return state
    row, below_state, below_step = [], 0.0, 0.0
    for stood, proposed in zip(state, step, strict=True):
        upto_state, upto_step = below_state + stood, below_step + proposed
        row.append(upto_state * upto_step - below_state * below_step)
        below_state, below_step = upto_state, upto_step
    return tuple(row)


def _by_circumstance(check: Check, cause: Cause | None) -> Row:
    """Answers weighed by what each does to the odds of the cause, all alike likely before."""
    weights = []
    for option in check.options:
        facts = {check.id: option.id, **option.means}
        weight = 1.0
        for shift in cause.more_likely_when if cause else ():
            tests = shift.when.tests
            if tests and all(t.how == "is" and facts.get(t.fact) in t.words for t in tests):
                weight *= shift.factor
        for gate in cause.possible_when if cause else ():
            told = [t for t in gate.when.tests if t.how == "is" and t.fact in facts]
            if any(facts[t.fact] not in t.words for t in told):
                weight = 0.0
        weights.append(weight)
    total = sum(weights)
    return tuple(w / total for w in weights) if total else tuple(1.0 for _ in weights)
