"""A check and a care explained: what it tells, how it is done, what to mind."""

from __future__ import annotations

from diagnose.book.model import Book, Check, Rule, Symptom
from diagnose.view.explain_parts import (
    CARE,
    DO,
    NEAR,
    SEE,
    SOURCES,
    SURE,
    WHERE,
    WHY,
    Parts,
    cares,
    label,
    settling,
    sourced,
)
from diagnose.view.result import minutes, percent

UNSURE = "Not sure? 'Don't know' counts for nothing, 'I think so' counts with doubt."


def about_check(book: Book, name: str) -> Parts:
    """A check: what is asked, what it tells, how it is done."""
    check = book.checks[name]
    tells = _tells(check)
    guards = [s.name for s in book.stops.values() if s.asked_by == name]
    needs = [t.replace("-", " ") for t in (*check.needs, *check.tools)]
    return {
        SEE: [check.ask, *(f"{o.id}: {o.say}" for o in check.options)],
        WHY: _why(book, check, tells) + [f"It guards against: {g}" for g in guards],
        SURE: _sure(check),
        DO: [check.help, f"It takes {minutes(check.minutes)}."]
        + ([f"Needs: {', '.join(needs)}."] if needs else [])
        + ([f"Write it so: {check.example}"] if check.example else []),
        CARE: cares(book, check.cautions, check.needs),
        NEAR: [c.name for c in settling(book, tells) if c.id != name],
        SOURCES: sourced(book, [check.source]),
    }


def _tells(check: Check) -> list[str]:
    named = [*check.settles, *(f for o in check.options for f in o.means)]
    named += [check.reports.finding] if check.reports else []
    return list(dict.fromkeys(named))


def _why(book: Book, check: Check, tells: list[str]) -> list[str]:
    lines = [f"It tells: {label(book, t)}" for t in tells]
    lines += [
        f"It reports: {c.name}"
        for c in book.causes.values()
        if any(sure.check == check.id for sure in c.be_sure)
    ]
    rules = [r for r in book.rules.values() if _uses(r, check.id)]
    lines += [f"It is used for: {r.name} ({r.because})" for r in rules[:6]]
    weighed = [
        c.name
        for c in book.causes.values()
        if any(check.id in s.when.facts for s in c.more_likely_when)
        or any(check.id in g.when.facts for g in c.possible_when)
    ]
    lines += [f"It changes the odds of: {', '.join(weighed[:8])}"] if weighed else []
    parts = [s.name for s in book.symptoms.values() if _decides_the_part(s, check.id)]
    lines += [f"It decides what becomes of the part: {', '.join(parts)}"] if parts else []
    hang = [c.name for c in book.checks.values() if check.id in c.asked_when.facts]
    return lines + ([f"On it hang the questions: {', '.join(hang[:8])}"] if hang else [])


def _decides_the_part(symptom: Symptom, fact: str) -> bool:
    return any(fact in advice.when.facts for advice in symptom.the_part)


def _uses(rule: Rule, fact: str) -> bool:
    worked = rule.work_out
    return fact in rule.when.facts or (worked is not None and fact in worked.inputs.values())


def _sure(check: Check) -> list[str]:
    lines = [check.proves]
    if check.reports is not None:
        lines.append(f"Right when it is so: {percent(check.reports.right_when_there)} of the time")
    if check.no_instrument:
        lines.append(f"Without the tool: {check.no_instrument}")
    if check.spoiled_by:
        gone = ", ".join(t.replace("-", " ") for t in check.spoiled_by)
        lines.append(f"What it saw is gone after: {gone}. Look again then.")
    return [*lines, UNSURE]


def about_caution(book: Book, name: str) -> Parts:
    """A care, what happens without it, and where it is given."""
    caution = book.cautions[name]
    used = [c.name for c in book.causes.values() if name in c.cautions]
    used += [c.name for c in book.checks.values() if name in c.cautions]
    used += [c.name for c in book.cards.values() if name in c.cautions]
    used += [f"first aid: {s.name}" for s in book.symptoms.values() if _aids(s, name)]
    used += [r.name for r in book.rules.values() if any(t.caution == name for t in r.then)]
    return {
        CARE: [caution.say],
        WHY: [caution.because],
        WHERE: [f"It is said before: {n}" for n in used],
        SOURCES: sourced(book, [caution.source]),
    }


def _aids(symptom: Symptom, caution: str) -> bool:
    return any(caution in a.cautions for a in symptom.first_aid)
