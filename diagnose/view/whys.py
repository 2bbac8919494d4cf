"""HOW a finding came about, WHY NOT a cause, WHAT IF an answer were other: as text."""

from __future__ import annotations

from dataclasses import replace

from diagnose.case.entries import Case, Entry
from diagnose.reasoning.explain import account, how, sources_of
from diagnose.reasoning.reason import Reasoned
from diagnose.view.folding import wrapped
from diagnose.view.parts import name_of, outcomes_of
from diagnose.view.result import percent

MOST = 5


class NotKnown(ValueError):
    """The name asked about is not in this case; `known` are the names that are."""

    def __init__(self, what: str, known: tuple[str, ...]) -> None:
        super().__init__(what)
        self.known = known


def how_text(reasoned: Reasoned, finding: str) -> str:
    """The chain that concluded a finding: the answers it stands on, then each rule.

    Raises NotKnown when the case has no such finding.
    """
    book, read = reasoned.read.book, reasoned.read
    steps = how(reasoned, finding)
    checks = sources_of(reasoned, finding)
    if not steps and not checks:
        known = tuple(sorted(set(read.facts) & set(book.findings)))
        raise NotKnown(f"nothing said here concludes '{finding}'", known)
    lines = [f"HOW {name_of(book, finding)}"]
    for check in checks:
        told = read.gathered.told[check]
        lines.append(wrapped(f"{book.checks[check].name}: {told.text} ({told.how})", 4, "  - "))
    for step in steps:
        rule = book.rules[step.rule]
        made = f"{name_of(book, step.concluded)} {step.value}".strip()
        sure = "" if step.degree > 0.99 else f" ({percent(step.degree)} sure)"
        lines.append(wrapped(f"{rule.name}: {made}{sure}, because {rule.because}", 4, "  > "))
    return "\n".join(lines) + "\n"


def why_not_text(reasoned: Reasoned, cause: str) -> str:
    """Why a cause is not higher: ruled out, or what speaks against it and what could raise it.

    Raises NotKnown for a cause the book does not have.
    """
    book = reasoned.read.book
    if cause not in book.causes:
        raise NotKnown(f"there is no cause '{cause}'", tuple(sorted(book.causes)))
    lines = [f"WHY NOT {book.causes[cause].name}"]
    out = next((r for r in reasoned.ruled_out if r.cause == cause), None)
    ranked = reasoned.belief.of(cause)
    if out is not None or ranked is None:
        lines.append(wrapped(f"ruled out: {out.because if out else 'not possible here'}", 2))
        return "\n".join(lines) + "\n"
    linked = {link.finding for link in book.causes[cause].shows}
    if not linked & set(reasoned.network.complaint):
        lines.append("  it cannot make this complaint, though it may be there")
        return "\n".join(lines) + "\n"
    place = [r.cause for r in reasoned.belief.ranked].index(cause) + 1
    lines.append(f"  it stands at number {place} with {percent(ranked.acts)}")
    told = account(reasoned, [cause])[0]
    for share in told.shares:
        if abs(share.weight) > 0.02:
            word = "for" if share.weight > 0 else "against"
            text = f"{name_of(book, share.item.name)}: {share.item.said}".rstrip(": ")
            lines.append(wrapped(f"{word} {share.weight:+.1f}  {text}", 4, "  - "))
    lines += _could_raise(reasoned, cause)
    return "\n".join(lines) + "\n"


def what_if_text(before: Reasoned, after: Reasoned, check: str, value: str) -> str:
    """The top of the list as it is and as it would be with the other answer."""
    book = before.read.book
    lines = [f"WHAT IF {book.checks[check].name} were {value}"]
    names = [r.cause for r in after.belief.ranked[:MOST]]
    names += [r.cause for r in before.belief.ranked[:MOST] if r.cause not in names]
    for name in names:
        old, new = before.belief.of(name), after.belief.of(name)
        was, is_ = (percent(r.acts) if r else "ruled out" for r in (old, new))
        if was != is_ or name in names[:3]:
            lines.append(wrapped(f"{book.causes[name].name}: {was} -> {is_}", 4, "  - "))
    none = (percent(before.belief.none), percent(after.belief.none))
    lines.append(f"  - none of these: {none[0]} -> {none[1]}")
    return "\n".join(lines) + "\n"


def with_answer(case: Case, check: str, value: str) -> Case:
    """The case with another answer to one check, wherever it was answered."""
    kept = tuple(
        e for e in case.entries if not (e.kind in ("answer", "correct") and e.name == check)
    )
    given = {k: v for k, v in case.given.items() if k != check}
    return replace(case, entries=(*kept, Entry("answer", check, value)), given=given)


def _could_raise(reasoned: Reasoned, cause: str) -> list[str]:
    book = reasoned.read.book
    name = book.causes[cause].name
    lines = []
    for candidate in sorted(reasoned.valued.candidates, key=lambda c: (-c.rate, c.check)):
        for outcome in outcomes_of(reasoned, candidate):
            if outcome.top == name:
                ask = book.checks[candidate.check].ask
                text = f"would come first if: {ask} -> {outcome.answer} ({percent(outcome.chance)})"
                lines.append(wrapped(text, 4, "  ? "))
    return lines[:3]
