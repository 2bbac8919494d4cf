"""A guided card explained: when it is the right job, its steps with the cares before them."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from diagnose.book.guided import CardStep, GuidedCard
from diagnose.book.model import Book
from diagnose.view.explain_parts import Parts, sourced
from diagnose.view.result import minutes

CARD_HEADINGS = (
    "What it shows",
    "When to use it",
    "When not to",
    "What must not be done",
    "What it takes",
    "Before anything turns",
    "Steps",
    "What to see",
    "Proof",
    "Named by",
    "Sources",
)
SHOWS, WHEN, NOT, NEVER, TAKES, BEFORE, STEPS, SEEN, PROOF, NAMED, SOURCES = CARD_HEADINGS
CARE, WHY, CHECK = "Take care: ", "Why: ", "Check: "


@dataclass(frozen=True)
class StepView:
    """One step of a card, its cares first."""

    number: int
    take_care: tuple[str, ...]
    do: str
    why: str
    check_by: str
    source: str

    @property
    def lines(self) -> list[str]:
        """The step as it is read out: cares, what to do and why, how it is seen to be done."""
        return [
            *(f"{CARE}{care}" for care in self.take_care),
            f"{self.number}. {_stop(self.do)}",
            f"{WHY}{_stop(self.why)}",
            f"{CHECK}{_stop(self.check_by)} ({self.source})",
        ]


def about_card(book: Book, name: str) -> Parts:
    """A card: when, when not, what it takes, the steps in order, the proof."""
    card = book.cards[name]
    shown = [m for m in card.experiment_for if m in book.mechanisms]
    lines = [line for step in card_steps(book, name) for line in step.lines]
    return {
        SHOWS: [f"{book.mechanisms[m].name}: {book.mechanisms[m].explain}" for m in shown],
        NEVER: list(card.never),
        BEFORE: _gate(book, card) if shown else [],
        SEEN: list(card.see),
        WHEN: list(card.use_when),
        NOT: list(card.not_when),
        TAKES: _takes(card),
        STEPS: lines,
        PROOF: [card.proof],
        NAMED: _naming(book, name),
        SOURCES: sourced(book, [*card.sources, *(s.source for s in card.steps)]),
    }


def card_steps(book: Book, name: str) -> tuple[StepView, ...]:
    """The steps of a card; none for anything that is no card."""
    card = book.cards.get(name)
    return tuple(_step(book, n, s) for n, s in enumerate(card.steps, 1)) if card else ()


def _step(book: Book, number: int, step: CardStep) -> StepView:
    cares = tuple(book.cautions[c].say for c in step.cautions if c in book.cautions)
    source = book.sources.get(step.source)
    standing = source.standing if source else "common practice"
    return StepView(number, cares, step.do, step.why, step.check_by, standing)


def _takes(card: GuidedCard) -> list[str]:
    cost = (
        f"{minutes(card.minutes_practised)} practised, {minutes(card.minutes_first_time)} at first"
    )
    needs = ", ".join(n.replace("-", " ") for n in card.needs)
    tools = ", ".join(t.replace("-", " ") for t in card.tools)
    return [cost, f"Tools: {tools}" if tools else "", f"The machine: {needs}" if needs else ""]


def _gate(book: Book, card: GuidedCard) -> list[str]:
    """The safety questions, for an experiment that starts the wheel."""
    if "wheel-turning" not in card.needs:
        return []
    asked = Counter(s.asked_by for s in book.stops.values() if s.kind == "stop")
    gates = sorted(name for name, stops in asked.items() if stops > 1)
    return [f"{book.checks[g].ask} (diagnose explain {g})" for g in gates if g in book.checks] + [
        "A yes or a don't know ends the lesson until it is cleared."
    ]


def _naming(book: Book, name: str) -> list[str]:
    causes = [c.name for c in book.causes.values() if name in c.fix.cards]
    symptoms = [s.name for s in book.symptoms.values() if name in s.cards]
    stops = [s.name for s in book.stops.values() if name in s.cards]
    return [*symptoms, *causes, *stops]


def bullet(line: str) -> str:
    """The sign a line of a card is printed behind."""
    if line.startswith(CARE):
        return "  ! "
    if line.startswith((WHY, CHECK)):
        return "       "
    return "  " if line[:1].isdigit() else "  - "


def _stop(text: str) -> str:
    return text if text.endswith((".", "?", "!")) else f"{text}."
