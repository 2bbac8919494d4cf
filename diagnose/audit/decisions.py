"""Which checks and which causes change a decision: the fix that is tried first.

A check changes a decision when some answer of it that is not far-fetched (a chance of 2 % or
more) brings another fix first. Looked for in every complaint alone, then, for the checks left,
in the middle of every example: with its answers given but for that check.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import combinations, islice

from diagnose.audit.examples import case_of
from diagnose.audit.separation import nearest_pairs
from diagnose.audit.study import Study
from diagnose.book.model import Book, Cause, Example, Link, Rule
from diagnose.book.strengths import NotAbove, TooMuch
from diagnose.case.entries import Case
from diagnose.reasoning.belief import Impossible, believe
from diagnose.reasoning.fixes import fix_table
from diagnose.reasoning.gates import askable
from diagnose.reasoning.ground import cause_links
from diagnose.reasoning.next_check import value_all
from diagnose.reasoning.reason import read_case
from diagnose.reasoning.trials import network_of

LIKELY = 0.02  # chance of an answer below which it is far-fetched
NEAREST = 10  # pairs told apart least that are tried as one


@dataclass(frozen=True)
class Merging:
    """What merging `other` into `one` would change: of how many decisions, and which."""

    one: str
    other: str
    because: str
    decisions: int
    changed: tuple[str, ...]


def idle_checks(study: Study) -> list[str]:
    """Checks that never change which fix is first.

    Left out are those not meant to: about dangers, or giving a fact to a rule, to another check
    or to the advice on the part.
    """
    book = study.book
    inputs = {f for r in book.rules.values() for f in _inputs(r)}
    inputs |= {f for c in book.checks.values() for f in c.asked_when.facts}
    inputs |= {f for s in book.symptoms.values() for a in s.the_part for f in a.when.facts}
    left = {c.id for c in book.checks.values() if not _about_danger(book, c.id)} - inputs
    for symptom in sorted(book.symptoms):
        left -= _deciding(book, Case(symptom, (symptom,), ()), left)
    for _, example in _examples(book):
        if not left:
            break
        given = set(example.answers)
        wanted = left & (given | {n for c in given for n in book.checks[c].together_with})
        for check in sorted(wanted):
            answers = {k: v for k, v in example.answers.items() if k != check}
            left -= _deciding(book, case_of(replace(example, answers=answers)), {check})
        left -= _deciding(book, case_of(example), left)
    return sorted(left)


def _inputs(rule: Rule) -> Iterator[str]:
    yield from rule.when.facts
    yield from (f for then in rule.then for f in then.condition.facts)
    yield from rule.work_out.inputs.values() if rule.work_out else ()


def _about_danger(book: Book, check: str) -> bool:
    asked = book.checks[check]
    danger = any(o.raises or o.clears for o in asked.options)
    return danger or asked.gate or any(s.asked_by == check for s in book.stops.values())


def _deciding(book: Book, case: Case, wanted: Iterable[str]) -> set[str]:
    """Which of the checks would, answered now, bring another fix first."""
    read = read_case(book, case)
    network, _ = network_of(book, case.complaint, read.gathered, read.deduced)
    fixes = fix_table(book, network, {}, False)
    names = set(wanted)
    checks = [c for c in askable(book, read.gathered, read.facts) if c.id in names]
    try:
        valued = value_all(book, network, checks, read.facts, fixes)
    except (Impossible, ZeroDivisionError):
        return set()
    first = fixes.order(valued.now)[:1]
    return {
        candidate.check
        for candidate in valued.candidates
        for outcome in candidate.outcomes
        if outcome.chance >= LIKELY and fixes.order(outcome.shares)[:1] != first
    }


def mergings(study: Study, most: int = 20) -> list[Merging]:
    """Pairs that might be one: with the same fix, or those told apart least by a quick check."""
    return [merging(study.book, *pair) for pair in islice(_candidates(study), most)]


def _candidates(study: Study) -> Iterator[tuple[str, str, str]]:
    causes = sorted(study.book.causes.values(), key=lambda c: c.id)
    for one, other in combinations(causes, 2):
        if one.fix.id == other.fix.id:
            yield one.id, other.id, "they end in the same fix"
    for pair in nearest_pairs(study)[:NEAREST]:
        yield pair.one, pair.other, f"told apart least: {pair.best or 'no check'} ({pair.far:.2f})"


def merging(book: Book, one: str, other: str, because: str = "") -> Merging:
    """Compare the first fix with and without `other` merged into `one`, in every example of
    either and every complaint that either shows."""
    merged = _merged(book, one, other)
    cases = [
        case_of(example)
        for cause, example in _examples(book)
        if cause.id in (one, other) or {example.first, example.not_first} & {one, other}
    ]
    shown = {k.finding for c in (one, other) for k in book.causes[c].shows} & set(book.symptoms)
    cases += [Case(f"{symptom} alone", (symptom,), ()) for symptom in sorted(shown)]
    theirs, ours = book.causes[other].fix.id, book.causes[one].fix.id
    changed = []
    for case in cases:
        before, after = _first_fix(book, case), _first_fix(merged, case)
        if (before if before != theirs else theirs) != after and not (before == ours == after):
            changed.append(f"{case.title}: {before} before, {after} after")
    return Merging(one, other, because, len(cases), tuple(changed))


def _merged(book: Book, one: str, other: str) -> Book:
    kept, gone = book.causes[one], book.causes[other]
    signs = dict.fromkeys(k.finding for c in (kept, gone) for k in c.shows)
    shows = tuple(k for sign in signs for k in _both_show(book, kept, gone, sign))
    prior = min(0.5, kept.prior + gone.prior)
    both = replace(kept, prior=prior, shows=shows)
    causes = {name: c for name, c in book.causes.items() if name != other}
    return replace(book, causes={**causes, one: both})


def _both_show(book: Book, kept: Cause, gone: Cause, sign: str) -> tuple[Link, ...]:
    """The stronger link to each value of a sign; those of one cause where all leave no room."""
    mine, theirs = ([k for k in c.shows if k.finding == sign] for c in (kept, gone))
    strongest: dict[str, Link] = {}
    for link in (*mine, *theirs):
        if link.value not in strongest or strongest[link.value].how_often < link.how_often:
            strongest[link.value] = link
    together = tuple(strongest.values())
    try:
        cause_links(book, replace(kept, shows=together))
    except (NotAbove, TooMuch):
        return tuple(mine or theirs)
    return together


def _first_fix(book: Book, case: Case) -> str:
    read = read_case(book, case)
    network, _ = network_of(book, case.complaint, read.gathered, read.deduced)
    try:
        belief = believe(network)
    except Impossible:
        return "nothing"
    top = belief.ranked[0]
    return book.causes[top.cause].fix.id


def _examples(book: Book) -> Iterator[tuple[Cause, Example]]:
    for cause in sorted(book.causes.values(), key=lambda c: c.id):
        for example in cause.examples:
            yield cause, example
