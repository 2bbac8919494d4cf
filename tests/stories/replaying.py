"""Play the stories with the answers that players took from the facts alone.

A player who has seen neither the knowledge nor the true cause went through every question that
could be asked and wrote down what the facts of a story answer (`answers/NN.yaml`). The interview is
then played with them: of the lists of what may be known already the player tells what the facts
tell; of the questions, what the facts do not tell is "don't know". It ends, as README.md says, when
a fix is named, when a stop leaves nothing to look at, or when no question is left.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import yaml

from diagnose.book.model import Book, Check
from diagnose.case.entries import UNASKED, UNKNOWN, Case, Entry
from diagnose.reasoning.belief import Impossible
from diagnose.reasoning.reason import Reasoned, reason
from diagnose.reasoning.telling import Telling, left_out, looks_to_tell

HERE = Path(__file__).parent
ANSWERS = HERE / "answers"
LIST = "a list"
LONGEST = 60  # entries of one play; more means that it runs in a circle


@dataclass(frozen=True)
class Place:
    """Where one of the true causes stood at the end; place 0 when the list does not have it."""

    cause: str
    place: int
    share: float


@dataclass(frozen=True)
class Told:
    """How a story went. `kind` is what it has to show: causes, a hazard alone, or no cause here.

    `questions` counts a list of what may be known as one; `told` are the looks told from them.
    """

    number: str
    kind: str
    places: tuple[Place, ...]
    questions: int
    told: int
    unknown: int
    minutes: float
    stops: tuple[str, ...]
    end: str
    none: float
    first: str

    @property
    def best(self) -> int:
        """The place of the true cause that stood highest; 99 when none is in the list."""
        return min((p.place for p in self.places if p.place), default=99)


def judged() -> dict[str, dict[str, Any]]:
    """For each story the causes of the book that are right, and the stops that are."""
    text = (HERE / "judged.yaml").read_text("utf-8")
    loaded: dict[str, dict[str, Any]] = yaml.safe_load(text)
    return loaded


def sheet(number: str) -> dict[str, Any]:
    """What the player of a story wrote down."""
    loaded: dict[str, Any] = yaml.safe_load((ANSWERS / f"{number}.yaml").read_text("utf-8"))
    return loaded


def play(
    book: Book,
    number: str,
    written: dict[str, Any] | None = None,
    seen: Callable[[Reasoned], None] = lambda _: None,
) -> Told:
    """One story from its complaint to the first thing to try, with its sheet or another.

    `seen` is given every state on the way.
    """
    written = written or sheet(number)
    answers = written["answers"] or {}
    case = Case(f"story {number}", tuple(written["complaints"]))
    stops: list[str] = []
    safety = {s.asked_by for s in book.stops.values()}
    asked: list[str] = []
    telling = Telling()
    while True:
        told = reason(book, case)
        seen(told)
        stops += [h.stop.id for h in told.read.stops if h.stop.id not in stops]
        if telling.due(told):
            looks = looks_to_tell(told, telling.listed)
            before = len(case.entries)
            known = [c for c in looks if c.id in answers]
            for entry in left_out(book, looks, {c.id for c in known}):
                case = case.with_entry(entry)
            case = _tell(book, case, known, answers)
            telling = telling.after(told, looks, len(case.entries) > before)
            asked += [LIST] * bool(looks)
            continue
        if told.step.kind not in ("ask", "safety") or len(case.entries) >= LONGEST:
            return _told(
                book, number, case, told, tuple(stops), [a for a in asked if a not in safety]
            )
        asked.append(told.step.name)
        plainly = told.step.name in safety  # dangers are not answered with "I think so"
        check = book.checks[told.step.name]
        case = case.with_entry(_entry(check, answers, plainly))


def _tell(book: Book, case: Case, looks: list[Check], answers: dict[str, Any]) -> Case:
    """The case with what is known of a list, as the interview takes it: one after the other."""
    for check in looks:
        longer = case.with_entry(replace(_entry(check, answers), how=UNASKED))
        try:
            reason(book, longer)
        except Impossible:
            continue
        case = longer
    return case


def _entry(check: Check, answers: dict[str, Any], plainly: bool = False) -> Entry:
    if check.id not in answers:
        return Entry("answer", check.id, UNKNOWN)
    value = answers[check.id]
    if isinstance(value, list):
        ticked = [str(one).rstrip("? ") for one in value]
        return Entry("answer", check.id, ", ".join(ticked) or "none")
    text = str(value)
    how = "measured" if check.kind == "number" else "said"
    return Entry("answer", check.id, text.rstrip("? "), how, plainly or not text.endswith("?"))


def _told(
    book: Book, number: str, case: Case, told: Reasoned, stops: tuple[str, ...], asked: list[str]
) -> Told:
    right = judged()[number]
    ranked = [(r.cause, r.acts) for r in told.belief.ranked]
    places = tuple(_place(ranked, tuple(one)) for one in right.get("causes", ()))
    unknown = sum(e.value == UNKNOWN for e in case.entries if e.name in asked)
    minutes = sum(book.checks[n].minutes for n in asked if n != LIST)
    unasked = sum(e.how == UNASKED and not e.left_out for e in case.entries)
    kind = "causes" if places else right["kind"]
    return Told(number, kind, places, len(asked), unasked, unknown, minutes, stops,
                f"{told.step.kind} {told.step.name}", told.belief.none, ranked[0][0])  # fmt: skip


def _place(ranked: list[tuple[str, float]], names: tuple[str, ...]) -> Place:
    for i, (cause, share) in enumerate(ranked, start=1):
        if cause in names:
            return Place(cause, i, share)
    return Place(names[0], 0, 0.0)
