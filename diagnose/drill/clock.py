"""What a step costs in minutes, the same for the learner and for the tool."""

from __future__ import annotations

from diagnose.book.model import Book, Check, Fix
from diagnose.reasoning.ahead import ATTENTION
from diagnose.reasoning.fixes import LAST_RESORT, minutes_of

CALLED = LAST_RESORT  # minutes when help is called in the end


def guards(book: Book, check: Check) -> bool:
    """True for a check that guards against a hazard: it costs its own minutes only."""
    return any(stop.asked_by == check.id for stop in book.stops.values())


class Clock:
    """Minutes spent; a preparation (the cover off) is paid once until something is changed."""

    def __init__(self, book: Book) -> None:
        self.book = book
        self.spent = 0.0
        self._prepared: set[str] = set()

    def price(self, check: Check) -> float:
        """Minutes of a check now."""
        minutes = check.minutes + (0.0 if guards(self.book, check) else ATTENTION)
        if check.shares_preparation and check.shares_preparation not in self._prepared:
            minutes += check.preparation_minutes
        return minutes

    def check(self, check: Check) -> float:
        """Pay for a check."""
        minutes = self.price(check)
        if check.shares_preparation:
            self._prepared.add(check.shares_preparation)
        self.spent += minutes
        return minutes

    def fix(self, fix: Fix) -> float:
        """Pay for a cure, done for the first time."""
        minutes = max(1.0, minutes_of(fix, False))
        self._prepared.clear()
        self.spent += minutes
        return minutes

    def call_for_help(self) -> float:
        """Pay for the last resort."""
        self.spent += CALLED
        return CALLED
