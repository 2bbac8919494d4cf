"""What every command works in: the knowledge, the shop folder, and a case reasoned about."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from diagnose.cli.console import say
from diagnose.cli.settings import Settings

if TYPE_CHECKING:
    from diagnose.book.model import Book
    from diagnose.book.problems import Problem
    from diagnose.case.entries import Case
    from diagnose.lessons.model import Lessons
    from diagnose.reasoning.reason import Reasoned
    from diagnose.shop.cards import Shop
    from diagnose.view.result import DiffersView, EarlierView, ResultView


@dataclass(frozen=True)
class Room:
    """The book and the shop of one run, what the shop learned, and the units to show."""

    book: Book
    shop: Shop
    folder: Path
    units: str
    lessons: Lessons
    own_books: dict[tuple[tuple[str, ...], str], Book] = field(default_factory=dict)

    def book_for(self, case: Case) -> Book:
        """The book with the lessons of the shop for the complaint and the machine of a case."""
        from diagnose.lessons.apply import with_lessons

        key = tuple(sorted(case.complaint)), case.machine
        if key not in self.own_books:
            self.own_books[key] = with_lessons(self.book, self.lessons, *key)
        return self.own_books[key]

    def cards(self, case: Case) -> Mapping[str, str]:
        """Facts of the machine and wheel cards the case names.

        Raises BookError when the shop has no such card.
        """
        return self.shop.facts_for(case)

    def reasoned(self, case: Case) -> Reasoned:
        """The whole pipe for a case. Raises belief.Impossible, BookError."""
        from dataclasses import replace

        from diagnose.reasoning.reason import reason

        if case.tools is None and self.shop.tools is not None:
            case = replace(case, tools=self.shop.tools)
        return reason(self.book_for(case), case, self.cards(case))

    def view(self, case: Case, *, full: bool = True) -> ResultView:
        """The view of a case. Raises as `reasoned` does."""
        from dataclasses import replace

        from diagnose.view.build import view_of

        reasoned = self.reasoned(case)
        view = view_of(reasoned, full=full, units=self.units)
        if reasoned.read.book is not self.book:
            learned = "your shop's closed cases are counted in: diagnose lessons"
            view = replace(view, notes=(*view.notes, learned))
        return replace(view, earlier=self.earlier(case), differs=self.differs(reasoned))

    @staticmethod
    def left_out(problems: Iterable[Problem]) -> None:
        """Name what was left out of the shop folder, and why."""
        for problem in problems:
            say(f"Left out of the shop folder: {problem.render()}")

    def earlier(self, case: Case) -> tuple[EarlierView, ...]:
        """Earlier closed cases of the shop that are like this one."""
        import datetime

        from diagnose.shop.closed import closed_cases
        from diagnose.shop.similar import similar
        from diagnose.view.earlier import earlier_views

        if not case.complaint:
            return ()
        # only cases in which one of the complaints is named can be alike
        closed, _ = closed_cases(self.folder, self.book, case.complaint)
        found = similar(case, self.book, closed)
        return earlier_views(self.book, found, datetime.date.today())

    def differs(self, reasoned: Reasoned) -> tuple[DiffersView, ...]:
        """What is not as it was when the machine of the case ground well."""
        from diagnose.shop.healthy import differences
        from diagnose.view.earlier import differs_views

        case = reasoned.read.case
        told = {name: fact.text for name, fact in reasoned.read.gathered.told.items()}
        good = self.shop.healthy.get(case.machine)
        return differs_views(differences(good, told, case.now, self.book))


def open_room(settings: Settings) -> Room:
    """Read the knowledge and the shop folder; what is at fault in the shop is named and left out.

    Raises BookError when the shipped knowledge cannot be read.
    """
    from diagnose.book.locate import knowledge_folder
    from diagnose.lessons.files import load_lessons
    from diagnose.shop.cards import load_shop
    from diagnose.shop.knowledge import load_with_own

    book, problems = load_with_own(knowledge_folder(), settings.shop)
    for problem in problems:
        say(f"Left out of the shop's own knowledge: {problem.render()}")
    shop = load_shop(settings.shop, book)
    Room.left_out(shop.problems)
    lessons, faults = load_lessons(settings.shop, book)
    Room.left_out(faults)
    return Room(book, shop, settings.shop, settings.units, lessons)
