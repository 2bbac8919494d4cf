"""Set-up and history of a drilled case: answers as usual as they are, and as the cause makes them.

An answer is drawn with P(answer | this cause made the complaint and nothing else did): how usual
it is, times the odds it gives the cause, times the chance that no other cause joins in.
"""

from __future__ import annotations

import random
from collections.abc import Mapping

from diagnose.book.conditions import FactValue
from diagnose.book.model import Book, Check, Option
from diagnose.drill.usual import weight
from diagnose.reasoning.forward import deduce_in_turn
from diagnose.reasoning.ground import ground, offered
from diagnose.reasoning.network import impossible, prior_of

FEW = 1e-9
FIRST = ("work-material", "drive", "wet-or-dry", "wheel-abrasive")  # the rest hangs on these


def circumstance_checks(book: Book) -> list[Check]:
    """Checks answered in words that settle no sign and report on no cause, the first ones first."""
    confirms = ground(book).confirms
    found = [
        c
        for c in book.checks.values()
        if c.kind == "one" and c.id not in confirms and not _settles_a_sign(book, c)
    ]
    order = {name: n for n, name in enumerate(FIRST)}
    return sorted(found, key=lambda c: (order.get(c.id, len(order)), c.id))


def matters(book: Book, cause: str) -> frozenset[str]:
    """Every fact on which the odds of a cause hang, through rules too."""
    wanted = set(ground(book).hangs[cause])
    wanted |= {f for gate in book.causes[cause].possible_when for f in gate.when.facts}
    needed, growing = ground(book).needed, True
    while growing:
        growing = False
        for rule in book.rules.values():
            if wanted & set(offered(rule)) and not needed[rule.id] <= wanted:
                wanted |= needed[rule.id]
                growing = True
    return frozenset(wanted)


def draw_words(
    draw: random.Random, book: Book, cause: str, complaint: str, fixed: Mapping[str, str]
) -> dict[str, str]:
    """An answer for each circumstance that is asked in words; `fixed` answers stand."""
    words: dict[str, str] = {}
    checks = circumstance_checks(book)
    # what is fixed is known before anything is drawn
    for check in checks:
        if fixed.get(check.id) in check.by_option:
            words[check.id] = fixed[check.id]
    hangs = matters(book, cause)
    for check in checks:
        if check.id in words:
            continue
        options = [o for o in check.options if not o.raises] or list(check.options)
        weights = [
            weight(check.id, o.id, words) * _likely(book, cause, complaint, words, check, o, hangs)
            for o in options
        ]
        pick = draw.choices(options, weights)[0] if sum(weights) > FEW else draw.choice(options)
        words[check.id] = pick.id
    return words


def facts_of(book: Book, words: Mapping[str, str], complaint: str) -> dict[str, FactValue]:
    """Answers and what they mean by themselves, no rule run."""
    facts: dict[str, FactValue] = {complaint: "yes"}
    for name, value in words.items():
        facts[name] = value
        option = book.checks[name].by_option.get(value)
        facts.update(option.means if option else {})
    return facts


def _likely(
    book: Book,
    cause: str,
    complaint: str,
    words: Mapping[str, str],
    check: Check,
    option: Option,
    hangs: frozenset[str],
) -> float:
    """How far an answer speaks for this cause alone, up to a factor shared by all answers."""
    own = {check.id, *(f for o in check.options for f in o.means)}
    facts = facts_of(book, {**words, check.id: option.id}, complaint)
    odds = 1.0
    if own & hangs:
        if not own & ground(book).hangs[cause]:
            deduced = deduce_in_turn(book, facts)
            surest = {f: max(v, key=lambda k: (v[k], k)) for f, v in deduced.words.items()}
            facts = {**surest, **facts}
        odds = _odds(book, cause, facts)
    return odds * _others_quiet(book, cause, complaint, own, facts)


def _others_quiet(
    book: Book, cause: str, complaint: str, own: set[str], facts: Mapping[str, FactValue]
) -> float:
    """The chance that no cause that hangs on this check makes the complaint besides."""
    known = ground(book)
    quiet = 1.0
    for other in {c for f in own for c in known.hung.get(f, ())} - {cause}:
        link = known.links[other].get(complaint)
        if link is not None:
            quiet *= 1.0 - _chance(book, other, facts) * (1.0 - link[0])
    return quiet


def _chance(book: Book, cause: str, facts: Mapping[str, FactValue]) -> float:
    found = book.causes[cause]
    return 0.0 if impossible(found, facts) is not None else prior_of(book, found, facts)


def _odds(book: Book, cause: str, facts: Mapping[str, FactValue]) -> float:
    p = _chance(book, cause, facts)
    return p / (1.0 - p)


def _settles_a_sign(book: Book, check: Check) -> bool:
    named = {*check.settles, *(f for o in check.options for f in o.means)}
    return any(book.findings[f].kind == "sign" for f in named if f in book.findings)
