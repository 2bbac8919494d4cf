"""What the person who sets the job up can choose, and whether another choice would be better.

A note is worth its line only when it changes what a person does. The size and history of a part
and the build of a machine are brought along; a step, a setting or a wheel is chosen. Of a choice
with several answers each may make something likelier (dry heats, wet must reach the contact): it
is a fault of the set-up only when another answer would weigh less, all causes taken together.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping

from diagnose.book.conditions import FactValue, holds
from diagnose.book.model import Book, Cause, Check
from diagnose.reasoning.network import Network, impossible, prior_of
from diagnose.reasoning.reason import Read
from diagnose.review.reasons import raising_facts, stands_on

# what the part is; nobody chooses it at the machine
PART = frozenset(
    {"work-material", "part-length", "part-base", "part-thickness", "bow-before", "how-hardened",
     "metal-beside-the-opening", "metals-under-the-wheel", "skin-of-the-work", "stock-state",
     "stock-to-come-off", "temper-record"}
)  # fmt: skip
BETTER = 0.02  # chance x harm that another answer must save to be worth a word


def told_for(book: Book, read: Read, cause: Cause) -> tuple[str, ...]:
    """The checks whose answers make the cause likelier: by circumstance, or by looking at it."""
    told = read.gathered.told
    raised = [f for f in stands_on(read, raising_facts(book, read, cause)) if f in told]
    seen = [c.check for c in cause.be_sure
            if c.check in told and told[c.check].value == c.option]  # fmt: skip
    return tuple(dict.fromkeys((*raised, *seen)))


def chosen(book: Book, checks: Collection[str]) -> tuple[str, ...]:
    """Those of the checks that the person can choose: not what the part or the machine is."""
    return tuple(c for c in checks if c not in PART and book.checks[c].standing != "machine")


def better_there_is(book: Book, read: Read, network: Network, check: str,
                    harm: Mapping[str, float]) -> bool:  # fmt: skip
    """True when another answer of the check would weigh less. `harm`: by cause, chance x harm."""
    asked, told = book.checks[check], read.gathered.told[check].value
    if asked.kind != "one" or not asked.options or not isinstance(told, str):
        return asked.kind == "any"
    ways = [o.id for o in asked.options]
    if _speaks_against(book, read.facts, check, told):
        return True
    if len(ways) == 2 and any(_speaks_against(book, read.facts, check, w) for w in ways):
        return False
    weights = {o.id: _weight(book, read, network, asked, o.id, harm) for o in asked.options}
    return weights[told] - min(weights.values()) >= BETTER


def _speaks_against(book: Book, facts: Mapping[str, FactValue], check: str, answer: str) -> bool:
    """True when a cause has a circumstance for just such a job that this answer completes.

    What is said of thin work weighs more than what is said of all work.
    """
    there = {**facts, check: answer}
    return any(
        shift.factor > 1.0
        and check in shift.when.facts
        and len(shift.when.facts) > 1
        and holds(shift.when, there) == 1.0
        and not impossible(cause, there)
        for cause in book.causes.values()
        for shift in cause.more_likely_when
    )


def neutral(book: Book, check: str) -> bool:
    """True for a question each of whose answers makes some cause likelier: wet or dry."""
    options = book.checks[check].options
    raising = {
        word
        for cause in book.causes.values()
        for shift in cause.more_likely_when
        if shift.factor > 1.0
        for test in shift.when.tests
        if test.fact == check
        for word in test.words
    }
    return bool(options) and all(o.id in raising or o.raises for o in options)


def _weight(book: Book, read: Read, network: Network, check: Check, answer: str,
            harm: Mapping[str, float]) -> float:  # fmt: skip
    """Chance x harm of all causes with this answer, all else as it is told."""
    facts = _with(read.facts, check, answer)
    total = 0.0
    for node in network.nodes:
        cause = book.causes[node.id]
        if node.id not in harm or impossible(cause, facts):
            continue
        there, absent = node.there, node.absent
        for confirm in cause.be_sure:
            if confirm.check == check.id:
                yes = confirm.option == answer
                there = confirm.right_when_there if yes else 1.0 - confirm.right_when_there
                absent = 1.0 - confirm.right_when_not if yes else confirm.right_when_not
        likely = prior_of(book, cause, facts) * there
        total += harm[node.id] * likely / (likely + (1.0 - prior_of(book, cause, facts)) * absent)
    return total


def _with(facts: Mapping[str, FactValue], check: Check, answer: str) -> dict[str, FactValue]:
    """The facts with another answer, and with what that answer means by itself."""
    out = {k: v for k, v in facts.items() if not any(k in o.means for o in check.options)}
    out[check.id] = answer
    return out | dict(check.by_option[answer].means)
