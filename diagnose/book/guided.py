"""Guided cards: a job that faults come from, told step by step to somebody who does it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from diagnose.book.model import Where


@dataclass(frozen=True)
class CardStep:
    """One step: what to do, why, how to see that it is done; its cautions come before it."""

    do: str
    why: str
    check_by: str
    cautions: tuple[str, ...] = ()
    source: str = ""


@dataclass(frozen=True)
class GuidedCard:
    """A job from beginning to proof, with when it is the right one and when it is not."""

    id: str
    name: str
    use_when: tuple[str, ...]
    not_when: tuple[str, ...]
    minutes_first_time: float
    minutes_practised: float
    steps: tuple[CardStep, ...]
    proof: str
    sources: tuple[str, ...]
    tools: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    experiment_for: tuple[str, ...] = ()  # mechanisms that it shows in a lesson
    see: tuple[str, ...] = ()  # experiment: what is seen, and what it shows
    never: tuple[str, ...] = ()  # experiment: what must not be done
    replaces: tuple[str, ...] = ()
    where: Where | None = None

    @property
    def is_experiment(self) -> bool:
        """True for a card that shows a mechanism in a lesson and mends nothing."""
        return bool(self.experiment_for)

    @property
    def cautions(self) -> tuple[str, ...]:
        """Every caution of its steps, once each, as they come."""
        return tuple(dict.fromkeys(c for step in self.steps for c in step.cautions))
