"""A drilled case: what is hidden, what every check would show, and what the story tells."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from diagnose.case.entries import Case, Entry
from diagnose.drill.hazards import Planted


@dataclass(frozen=True)
class Drill:
    """One case to practise on.

    `cause` made the complaint alone. `answers` hold what each check that makes sense here would
    say, as an entry would; `given` is told in the story. `before` and `after` are the log-odds
    that the tool's own reasoning gives the cause on the complaint alone and on all findings.
    """

    seed: int
    level: int
    complaint: str
    cause: str
    answers: Mapping[str, str]
    given: Mapping[str, str]
    signs: Mapping[str, str]
    hazard: Planted | None
    before: float
    after: float
    bar_rate: float | None = None  # Hz
    thin: bool = False
    from_shop: bool = False
    known: frozenset[str] = field(default_factory=frozenset)  # answers that a closed case gave

    @property
    def untypical(self) -> bool:
        """True when all the findings together speak less for the cause than the complaint did."""
        return self.after < self.before

    def case(self, entries: tuple[Entry, ...] = ()) -> Case:
        """The case as it stands after these entries."""
        return Case(f"drill {self.seed}", (self.complaint,), entries, given=self.given)

    def full_case(self) -> Case:
        """The case with every check made."""
        made = sorted(n for n in self.answers if n not in self.given)
        return self.case(tuple(Entry("answer", n, self.answers[n]) for n in made))
