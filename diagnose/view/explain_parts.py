"""The parts of an explanation, by kind: heading -> lines."""

from __future__ import annotations

from collections.abc import Iterable

from diagnose.book.advice import Aid
from diagnose.book.model import Book, Cause, Check, Symptom
from diagnose.view.result import minutes

Parts = dict[str, list[str]]
NOTHING_TURNS = "Nothing turns and nothing comes apart for this; keep away from a turning wheel."
BY_STATE = {
    "wheel-turning": "The wheel turns: answer the safety questions first, then stand aside.",
    "power-locked-out": "The power is locked out for this, and stays so until hands are away.",
    "wheel-stopped": "The wheel stands still for this. A coasting wheel makes no sound.",
    "magnet-off": "Let the magnet go only when wheel and table stand still.",
    "part-off-the-chuck": "Take the part off only when wheel and table stand still.",
}

SEE, WHY, SURE, DO, CARE, ALIKE, SOURCES = (
    "What you see",
    "Why it happens",
    "How to be sure",
    "Do this",
    "Take care",
    "Known look-alikes",
    "Sources",
)
HEADINGS_OF_A_CAUSE = (SEE, WHY, SURE, DO, CARE, ALIKE, SOURCES)
WHERE, NEAR, NEXT, LESSON = (
    "Where it is said",
    "Other looks at the same thing",
    "Read next",
    "Show it in a lesson",
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
    shelves = (book.causes, book.symptoms, book.mechanisms, book.findings, book.checks)
    for shelf in (*shelves, book.stops, book.cards, book.terms):
        if name in shelf:
            return str(shelf[name].name)
    return name


def _value(book: Book, finding: str, value: str) -> str:
    found = book.findings[finding]
    words = next((v.name for v in found.values if v.id == value), value)
    return found.name if value == "yes" else f"{found.name}: {words}"


def settling(book: Book, findings: Iterable[str]) -> list[Check]:
    """The checks that can settle or report any of these findings."""
    wanted = set(findings)
    return [
        c
        for c in book.checks.values()
        if wanted & {*c.settles, *(f for o in c.options for f in o.means)}
        or (c.reports is not None and c.reports.finding in wanted)
    ]


def asks(checks: Iterable[Check]) -> list[str]:
    """What each check asks, with its minutes and its id."""
    return [f"{c.ask} ({minutes(c.minutes)}; check {c.id})" for c in checks]


def cautions(book: Book, names: Iterable[str]) -> list[str]:
    """What each care says, once each."""
    return [book.cautions[n].say for n in dict.fromkeys(names) if n in book.cautions]


def cares(book: Book, names: Iterable[str], needs: Iterable[str]) -> list[str]:
    """What the state of the machine asks for, then the cautions."""
    states = [say for state, say in BY_STATE.items() if state in set(needs)]
    return [*states, *cautions(book, names)] or [NOTHING_TURNS]


def _aids(aids: Iterable[Aid]) -> list[str]:
    return [f"To go on tonight: {a.do} ({a.because})" for a in aids]


def cards(book: Book, names: Iterable[str]) -> list[str]:
    """Where each guided card is found."""
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
        SURE: sure + asks(settling(book, [k.finding for k in links])),
        DO: _fix(cause) + cards(book, cause.fix.cards) + _aids(cause.first_aid),
        CARE: cares(book, cause.cautions, cause.fix.needs),
        ALIKE: [label(book, n) for n in cause.look_alikes],
        SOURCES: sourced(book, [*cause.sources, *(k.source for k in links)]),
    }


def _chains(book: Book, cause: Cause) -> list[str]:
    """The roads to the complaints that the cause shows, and to no other."""
    from diagnose.reasoning.graph import chains, complaints_shown

    lines = []
    for path in chains(book, cause.id, complaints_shown(book, cause.id)):
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


MOST = 6  # cares of the likeliest causes that are worth reading before anything is done


def _cares_of(book: Book, symptom: Symptom) -> list[str]:
    """Cares of first aid, then those of the causes that show it most often."""
    own = [c for a in symptom.first_aid for c in a.cautions]
    links = [
        (-k.how_often, c.id)
        for c in book.causes.values()
        for k in c.shows
        if k.finding == symptom.id
    ]
    rest = [c for _, cause in sorted(links) for c in book.causes[cause].cautions]
    return cautions(book, [*own, *list(dict.fromkeys(rest))[:MOST]])


def _kin(book: Book, symptom: Symptom) -> list[str]:
    """The complaints of the same family, then those that share most of its causes."""
    from diagnose.reasoning.graph import causes_showing

    own = set(causes_showing(book, symptom.id))
    others = [s for s in book.symptoms.values() if s.id != symptom.id]
    family = [s.name for s in others if s.family == symptom.family]
    shared = {s.name: len(own & set(causes_showing(book, s.id))) for s in others}
    near = sorted((n for n in shared if shared[n]), key=lambda n: (-shared[n], n))
    return list(dict.fromkeys([*family, *near[:4]]))


def about_symptom(book: Book, name: str) -> Parts:
    """A complaint: how it looks, what makes it, what to ask first, what to do with the part."""
    symptom = book.symptoms[name]
    words = f"People say: {', '.join(symptom.in_words)}." if symptom.in_words else ""
    return {
        SEE: [symptom.looks_like, words],
        WHY: _showing(book, name),
        SURE: asks(book.checks[c] for c in symptom.first_questions if c in book.checks),
        DO: [f"The part: {a.say}" for a in symptom.the_part]
        + _aids(symptom.first_aid)
        + cards(book, symptom.cards),
        CARE: _cares_of(book, symptom),
        ALIKE: _kin(book, symptom),
        SOURCES: sourced(book, symptom.sources),
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
        SURE: asks([book.checks[stop.asked_by]] if stop.asked_by in book.checks else []),
        DO: [*stop.do_first, f"Cleared when: {stop.cleared_when}", *cards(book, stop.cards)],
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
        SURE: asks(settling(book, [name])),
        SOURCES: sourced(book, [finding.source]),
    }
