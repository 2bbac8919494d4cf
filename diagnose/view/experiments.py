"""The experiments for a lesson: what each shows, what it takes, whether the wheel turns."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.book.model import Book
from diagnose.view.folding import wrapped
from diagnose.view.result import minutes


@dataclass(frozen=True)
class ExperimentView:
    """One experiment of the list; minutes are those of a practised hand."""

    id: str
    name: str
    shows: tuple[str, ...]
    minutes: float
    wheel: str  # "wheel turning" | "wheel stopped" | "no machine"


def experiments(book: Book) -> tuple[ExperimentView, ...]:
    """Every experiment, those without a machine first, those that turn the wheel last."""
    found = [
        ExperimentView(
            card.id,
            card.name,
            tuple(book.mechanisms[m].name for m in card.experiment_for if m in book.mechanisms),
            card.minutes_practised,
            _wheel(card.needs),
        )
        for card in book.cards.values()
        if card.is_experiment
    ]
    order = ("no machine", "wheel stopped", "wheel turning")
    return tuple(sorted(found, key=lambda e: (order.index(e.wheel), e.minutes, e.id)))


def _wheel(needs: tuple[str, ...]) -> str:
    if "wheel-turning" in needs:
        return "wheel turning"
    return "wheel stopped" if needs else "no machine"


def experiments_text(found: tuple[ExperimentView, ...]) -> str:
    """The list for a terminal."""
    lines = []
    for wheel in dict.fromkeys(e.wheel for e in found):
        lines += ["", wheel.upper()]
        for e in found:
            if e.wheel == wheel:
                told = f"{e.name} ({minutes(e.minutes)}): {'; '.join(e.shows)}"
                lines += [wrapped(told, 4, "  - "), f"    diagnose explain {e.id}"]
    end = "--page FILE writes one as a sheet to print."
    return "\n".join([*lines[1:], "", end]) if found else "The book has no experiments."
