"""The parts of an explanation, by kind: heading -> lines."""

from __future__ import annotations

from collections.abc import Iterable

from diagnose.book.advice import Aid
from diagnose.book.model import Arrow, Book, Cause, Check, Mechanism
from diagnose.view.result import minutes, percent

Parts = dict[str, list[str]]

SEE, WHY, SURE, DO, CARE, ALIKE, SOURCES = (
    "What you see",
    "Why it happens",
    "How to be sure",
    "Do this",
    "Take care",
    "Known look-alikes",
    "Sources",
)


def sourced(book: Book, names: Iterable[str]) -> list[str]:
    """Each source once, with its standing."""
    shown = []
    for name in dict.fromkeys(n for n in names if n):
        source = book.sources.get(name)
        shown.append(f"{source.title} ({source.standing})" if source else name)
    return shown or ["common practice, no source"]


def label(book: Book, name: str) -> str:
    """The plain name of anything; the id when it has none."""
    for shelf in (book.causes, book.symptoms, book.mechanisms, book.findings, book.checks):
        if name in shelf:
            return str(shelf[name].name)
    return name


def _value(book: Book, finding: str, value: str) -> str:
    found = book.findings[finding]
    words = next((v.name for v in found.values if v.id == value), value)
    return found.name if value == "yes" else f"{found.name}: {words}"


def _settling(book: Book, findings: Iterable[str]) -> list[Check]:
    wanted = set(findings)
    return [
        c
        for c in book.checks.values()
        if wanted & {*c.settles, *(f for o in c.options for f in o.means)}
        or (c.reports is not None and c.reports.finding in wanted)
    ]


def _asks(checks: Iterable[Check]) -> list[str]:
    return [f"{c.ask} ({minutes(c.minutes)}; check {c.id})" for c in checks]


def _cautions(book: Book, names: Iterable[str]) -> list[str]:
    return [book.cautions[n].say for n in dict.fromkeys(names) if n in book.cautions]


def _aids(aids: Iterable[Aid]) -> list[str]:
    return [f"To go on tonight: {a.do} ({a.because})" for a in aids]


def _cards(book: Book, names: Iterable[str]) -> list[str]:
    return [
        f"Guided card: diagnose explain {n} ({book.cards[n].name})"
        for n in names
        if n in book.cards
    ]


def about_cause(book: Book, name: str) -> Parts:
    """A cause: signs, chain, checks, fix, cautions, look-alikes, sources."""
    cause = book.causes[name]
    sure = [
        f"{book.checks[c.check].ask} The answer that speaks for it: {c.option}."
        for c in cause.be_sure
        if c.check in book.checks
    ]
    links = sorted(cause.shows, key=lambda link: -link.how_often)
    return {
        SEE: [f"{_value(book, k.finding, k.value)} ({k.word}): {k.because}" for k in links],
        WHY: [cause.summary, *_chains(book, cause), *_gates(cause)],
        SURE: sure + _asks(_settling(book, [k.finding for k in links])),
        DO: _fix(cause) + _cards(book, cause.fix.cards) + _aids(cause.first_aid),
        CARE: _cautions(book, cause.cautions),
        ALIKE: [label(book, n) for n in cause.look_alikes],
        SOURCES: sourced(book, [*cause.sources, *(k.source for k in links)]),
    }


def _chains(book: Book, cause: Cause) -> list[str]:
    from diagnose.reasoning.graph import chain, symptoms_reached

    lines = []
    for symptom in symptoms_reached(book, cause.id):
        path = chain(book, cause.id, (symptom,))
        if path is not None:
            steps = [f"{label(book, a.to)} ({a.because})" for a in path.arrows]
            lines.append(" -> ".join([cause.name, *steps]))
    return lines


def _gates(cause: Cause) -> list[str]:
    return [f"Ruled out when not so: {g.because}" for g in cause.possible_when]


def _fix(cause: Cause) -> list[str]:
    fix = cause.fix
    cost = f"{minutes(fix.minutes_practised)} practised, {minutes(fix.minutes_first_time)} at first"
    lines = [f"{fix.do} ({cost})"]
    lines += [f"{n}. {step}" for n, step in enumerate(fix.steps, 1)]
    lines += [f"Proof: {fix.proof}"] if fix.proof else []
    return lines + ([f"Call someone: {fix.call_someone}"] if fix.call_someone else [])


def _showing(book: Book, finding: str) -> list[str]:
    links = [
        (k.how_often, c.name, k.word, k.value)
        for c in book.causes.values()
        for k in c.shows
        if k.finding == finding
    ]
    ordered = sorted(links, key=lambda row: (-row[0], row[1]))
    words = {v.id: v.name for v in book.findings[finding].values}
    return [
        f"{name} ({word})" if value == "yes" else f"{name} ({word}: {words.get(value, value)})"
        for _, name, word, value in ordered
    ]


def about_symptom(book: Book, name: str) -> Parts:
    """A complaint: how it looks, what makes it, what to ask first, what to do with the part."""
    symptom = book.symptoms[name]
    kin = [s.name for s in book.symptoms.values() if s.family == symptom.family and s.id != name]
    words = f"People say: {', '.join(symptom.in_words)}." if symptom.in_words else ""
    return {
        SEE: [symptom.looks_like, words],
        WHY: _showing(book, name),
        SURE: _asks(book.checks[c] for c in symptom.first_questions if c in book.checks),
        DO: [f"The part: {a.say}" for a in symptom.the_part]
        + _aids(symptom.first_aid)
        + _cards(book, symptom.cards),
        CARE: _cautions(book, (c for a in symptom.first_aid for c in a.cautions)),
        ALIKE: kin,
        SOURCES: sourced(book, symptom.sources),
    }


def about_mechanism(book: Book, name: str) -> Parts:
    """A step between cause and symptom."""
    mechanism = book.mechanisms[name]
    before = [
        thing.name
        for shelf in (book.causes, book.mechanisms)
        for thing in shelf.values()
        if any(a.to == name for a in _arrows(thing))
    ]
    return {
        SEE: [f"{label(book, a.to)}: {a.because}" for a in mechanism.leads_to],
        WHY: [mechanism.explain, *(f"It comes from: {n}" for n in before)],
        SOURCES: sourced(book, [mechanism.source, *(a.source for a in mechanism.leads_to)]),
    }


def _arrows(thing: Cause | Mechanism) -> tuple[Arrow, ...]:
    return thing.leads_through if isinstance(thing, Cause) else thing.leads_to


def about_check(book: Book, name: str) -> Parts:
    """A check: what is asked, what it tells, how it is done."""
    check = book.checks[name]
    tells = dict.fromkeys([*check.settles, *(f for o in check.options for f in o.means)])
    guards = [s.name for s in book.stops.values() if s.asked_by == name]
    needs = [t.replace("-", " ") for t in (*check.needs, *check.tools)]
    return {
        SEE: [check.ask, *(f"{o.id}: {o.say}" for o in check.options)],
        WHY: [f"It tells: {label(book, t)}" for t in tells]
        + [f"It guards against: {g}" for g in guards],
        SURE: [check.proves, f"Without the tool: {check.no_instrument}"]
        if check.no_instrument
        else [check.proves],
        DO: [check.help, f"It takes {minutes(check.minutes)}."]
        + ([f"Needs: {', '.join(needs)}."] if needs else [])
        + ([f"Write it so: {check.example}"] if check.example else []),
        CARE: _cautions(book, check.cautions),
        SOURCES: sourced(book, [check.source]),
    }


def about_stop(book: Book, name: str) -> Parts:
    """A hazard: what is wrong, what finds it, what to do first, what clears it."""
    stop = book.stops[name]
    raised = [
        f"{check.ask} '{option.say}'"
        for check in book.checks.values()
        for option in check.options
        if name in option.raises
    ]
    raised += [r.because for r in book.rules.values() if any(c.stop == name for c in r.then)]
    return {
        SEE: [stop.what_is_wrong],
        WHY: [f"It comes up at: {text}" for text in raised],
        SURE: _asks([book.checks[stop.asked_by]] if stop.asked_by in book.checks else []),
        DO: [*stop.do_first, f"Cleared when: {stop.cleared_when}", *_cards(book, stop.cards)],
        CARE: ["Nothing that needs the wheel turning is offered until it is cleared."]
        if stop.kind == "stop"
        else ["The part is put aside; the search for the cause goes on."],
        SOURCES: sourced(book, [stop.source, *stop.sources]),
    }


def about_finding(book: Book, name: str) -> Parts:
    """A sign or circumstance: its values, the causes that show it, the checks that settle it."""
    finding = book.findings[name]
    return {
        SEE: [finding.name, *(f"{v.id}: {v.name}" for v in finding.values if v.id != "no")],
        WHY: _showing(book, name),
        SURE: _asks(_settling(book, [name])),
        SOURCES: sourced(book, [finding.source]),
    }


def about_caution(book: Book, name: str) -> Parts:
    """A care, and where it is given."""
    caution = book.cautions[name]
    used = [c.name for c in book.causes.values() if name in c.cautions]
    used += [c.name for c in book.checks.values() if name in c.cautions]
    used += [c.name for c in book.cards.values() if name in c.cautions]
    return {
        WHY: [f"It is said before: {n}" for n in used],
        CARE: [caution.say],
        SOURCES: sourced(book, [caution.source]),
    }


def scales(book: Book) -> dict[str, str]:
    """The words of the scales and what each means."""
    words = book.words
    often = {w: f"about {percent(p)} of the time" for w, p in words.how_often.items()}
    common = {
        w: f"acts in about {percent(p)} of the complaints of its family"
        for w, p in words.how_common.items()
    }
    change = {w: f"multiplies the odds of a cause by {f:g}" for w, f in words.change.items()}
    return often | common | change


def about_word(book: Book, name: str) -> Parts:
    """A word of the scales."""
    return {SEE: [f"'{name}': {scales(book)[name]}"], SOURCES: ["our own scale (words.yaml)"]}
