"""A new cause of the shop, from a few answers or from a closed case."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from typing import Any

from diagnose.book.model import YES, Book
from diagnose.book.slug import free_slug
from diagnose.case.entries import UNKNOWN, Case, read_entries
from diagnose.shop.draft import Draft, ids_of, page, to_fill
from diagnose.shop.draft_check import OwnSign, check_rows, sign_rows

SOURCE = "common-practice"
OFTEN_ENOUGH = ("often", "usually", "very likely", "almost always", "always")
# the care that a state of the machine asks for, where the book has it
CARES = {"power-locked-out": "lock-out-first", "wheel-turning": "stand-aside-at-start"}
EMPTY = "answers: {}"  # as the file writes an example without answers
SEEN_HERE = "seen in our own shop"


@dataclass(frozen=True)
class NewCause:
    """What a person says of a new cause; empty fields become places to fill.

    `shows` is (finding, value, how often) with "" for a word chosen by the rate of the sign.
    `answers` fill the example; `own` is a sign that only this cause shows, with its question.
    """

    name: str
    room: str = "machine"
    summary: str = ""
    symptoms: tuple[str, ...] = ()
    shows: tuple[tuple[str, str, str], ...] = ()
    how_common: str = "occasional"
    fix: str = ""
    minutes: float | None = None
    steps: tuple[str, ...] = ()
    proof: str = ""
    look_alikes: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    through: tuple[str, ...] = ()
    because: str = ""
    answers: Mapping[str, str] = field(default_factory=dict)
    own: OwnSign | None = None
    id: str = ""


def from_case(case: Case, book: Book) -> NewCause:
    """A new cause with what a closed case says of it; its signs and its answers.

    Nothing of the case that names the part, the machine or the people goes along.
    """
    closed = case.closed
    told = {s.check: s.value for s in read_entries(case).answers if s.value != UNKNOWN}
    answers = {name: value for name, value in told.items() if _tells(book, name)}
    return NewCause(
        name=closed.something_new if closed else "",
        symptoms=case.complaint,
        shows=_signs(book, answers),
        fix=closed.done if closed else "",
        minutes=closed.minutes if closed else None,
        proof=closed.proved if closed else "",
        because=SEEN_HERE,
        answers=answers,
    )


def _tells(book: Book, name: str) -> bool:
    check = book.checks.get(name)
    if check is None or check.kind == "file":
        return False
    return not any(o.raises or o.clears for o in check.options)


def _signs(book: Book, answers: Mapping[str, str]) -> tuple[tuple[str, str, str], ...]:
    found: dict[str, tuple[str, str, str]] = {}
    for name, value in answers.items():
        check = book.checks[name]
        for option in (p.strip() for p in value.split(",")):
            means = check.by_option[option].means if option in check.by_option else {}
            for sign, word in means.items():
                finding = book.findings[sign]
                if finding.kind == "sign" and word != finding.value_ids[0]:
                    found[sign] = (sign, word, "")
    return tuple(found.values())


def cause_draft(told: NewCause, book: Book) -> Draft:
    """The files of a new cause: the cause, and the sign of its own with its question."""
    taken = ids_of(book)
    own = told.id or free_slug(told.name, taken, "new-cause")
    files: dict[str, str] = {}
    sign = told.own.named({*taken, own}) if told.own else None
    name, text = page("cause", _rows(own, told, book, sign), told.room)
    files[name] = text.replace(EMPTY, f"{EMPTY}  # {to_fill('a check, and what it found')}")
    if sign is not None:
        for kind, rows, inside in (
            ("check", check_rows(sign), sign.place),
            ("finding", sign_rows(sign), ""),
        ):
            name, text = page(kind, rows, inside)
            files[name] = text
    return Draft(own, files)


def _rows(own: str, told: NewCause, book: Book, sign: OwnSign | None) -> dict[str, Any]:
    minutes = f"{told.minutes:g}" if told.minutes else "30"
    rows: dict[str, Any] = {
        "id": own,
        "name": told.name,
        "summary": told.summary or to_fill("in one plain sentence, why it makes the fault"),
        "status": "draft",
        "how_common": told.how_common,
        "shows": _shows(told, book, sign),
        "fix": {
            "do": told.fix or to_fill("the fix in one line"),
            "minutes": {"first_time": minutes, "practised": minutes},
            "cures": "usually",
            "steps": list(told.steps) or [told.fix or to_fill("the first step")],
            "proof": told.proof or to_fill("what the next part must show"),
        },
        "look_alikes": list(told.look_alikes) or _rivals(told, book),
        "sources": [SOURCE],
        "examples": _examples(own, told, book, sign),
        "note": f"A draft; {SEEN_HERE}.",
    }
    if told.needs:
        rows["fix"]["needs"] = list(told.needs)
    if told.through:
        why = told.because or to_fill("why")
        rows["leads_through"] = [
            {"to": name, "because": why, "source": SOURCE} for name in told.through
        ]
    cautions = dict.fromkeys((*told.cautions, *(CARES[n] for n in told.needs if n in CARES)))
    known = [name for name in cautions if name in book.cautions]
    if known:
        rows["cautions"] = known
    return rows


def _shows(told: NewCause, book: Book, sign: OwnSign | None) -> list[dict[str, str]]:
    because = told.because or to_fill("why")
    rows = []
    wanted = [(s, YES, "") for s in told.symptoms] + list(told.shows)
    for finding, value, word in wanted:
        row = {"finding": finding}
        if value != YES:
            row["is"] = value
        row |= {"how_often": word or _word(book, finding, value), "because": because}
        rows.append({**row, "source": SOURCE})
    if sign is not None:
        rows.append({"finding": sign.id, "how_often": "almost always", "because": because,
                     "source": SOURCE})  # fmt: skip
    return rows


def _word(book: Book, finding: str, value: str) -> str:
    """The least word of the scale that lies well above how often the sign shows by itself."""
    known = book.findings.get(finding)
    by_value = {v.id: v.without_cause or 0.0 for v in known.values} if known else {}
    floor = 2 * by_value.get(value, 0.0)
    scale = book.words.how_often
    return next((w for w in OFTEN_ENOUGH[1:] if scale.get(w, 0.0) > floor), OFTEN_ENOUGH[-1])


def roads(book: Book, symptom: str) -> list[str]:
    """The mechanisms that lead to a symptom, the nearest first."""
    found: list[str] = []
    wanted = {symptom}
    while wanted:
        nearer = [
            m.id
            for m in sorted(book.mechanisms.values(), key=lambda m: m.id)
            if m.id not in found and any(arrow.to in wanted for arrow in m.leads_to)
        ]
        found += nearer
        wanted = set(nearer)
    return found


def _rivals(told: NewCause, book: Book) -> list[str]:
    """The causes that show most of the same: taken for this one."""
    mine = {*told.symptoms, *(f for f, _, _ in told.shows)}
    shared = {c.id: len(mine & {link.finding for link in c.shows}) for c in book.causes.values()}
    best = sorted(shared, key=lambda name: (-shared[name], -book.causes[name].prior, name))
    return [name for name in best if shared[name]][:2] or best[:1]


def _examples(own: str, told: NewCause, book: Book, sign: OwnSign | None) -> list[dict[str, Any]]:
    answers = dict(told.answers) or _answers(book, told.shows)
    against = _without_signs(book, answers)
    if sign is not None:
        answers[sign.check] = "yes"
        against[sign.check] = "no"
    against = against or _of_another(book, list(told.look_alikes) or _rivals(told, book))
    complaint = list(told.symptoms[:1])
    return [
        {"title": "as we saw it here", "complaint": complaint, "answers": answers, "first": own},
        {
            "title": "the same complaint, and what speaks for another cause",
            "complaint": complaint,
            "answers": against,
            "not_first": own,
        },
    ]


def _without_signs(book: Book, answers: Mapping[str, str]) -> dict[str, str]:
    """The answers that tell a sign, each turned into the one that the sign is not there."""
    found: dict[str, str] = {}
    for name, value in answers.items():
        options = book.checks[name].by_option
        said = [options[p.strip()].means for p in value.split(",") if p.strip() in options]
        signs = {s for means in said for s, v in means.items() if v != _plain(book, s)}
        for option in options.values():
            means = option.means
            if signs and signs <= means.keys() and all(means[s] == _plain(book, s) for s in signs):
                found[name] = option.id
                break
    return found


def _plain(book: Book, sign: str) -> str:
    """The value of a sign that says nothing is wrong."""
    return book.findings[sign].value_ids[0]


def _of_another(book: Book, rivals: Collection[str]) -> dict[str, str]:
    """The answer that tells the strongest sign of the first rival that has one; else nothing."""
    for name in rivals:
        links = [k for k in book.causes[name].shows if k.finding not in book.symptoms]
        for link in sorted(links, key=lambda k: -k.how_often):
            found = _answers(book, [(link.finding, link.value, "")])
            if found:
                return found
    return {}


def _answers(book: Book, shows: Collection[tuple[str, str, str]]) -> dict[str, str]:
    """For each sign the answer that tells it, where a check has one."""
    found: dict[str, str] = {}
    for sign, value, _ in shows:
        for check in sorted(book.checks.values(), key=lambda c: (c.minutes, c.id)):
            options = [o.id for o in check.options if o.means.get(sign) == value]
            if options and check.id not in found:
                found[check.id] = options[0]
                break
    return found
