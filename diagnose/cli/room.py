"""What every command works in: the knowledge, the shop folder, and a case reasoned about."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from diagnose.cli.console import say
from diagnose.cli.settings import Settings

if TYPE_CHECKING:
    from diagnose.book.model import Book
    from diagnose.case.entries import Case
    from diagnose.reasoning.reason import Reasoned
    from diagnose.shop.cards import Shop
    from diagnose.view.result import ResultView


@dataclass(frozen=True)
class Room:
    """The book and the shop of one run, and the units to show."""

    book: Book
    shop: Shop
    folder: Path
    units: str

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
        return reason(self.book, case, self.cards(case))

    def view(self, case: Case, *, full: bool = True) -> ResultView:
        """The view of a case. Raises as `reasoned` does."""
        from diagnose.view.build import view_of

        return view_of(self.reasoned(case), full=full, units=self.units)


def open_room(settings: Settings) -> Room:
    """Read the knowledge and the shop folder; what is at fault in the shop is named and left out.

    Raises BookError when the shipped knowledge cannot be read.
    """
    from diagnose.book.loader import load_book
    from diagnose.book.locate import knowledge_folder
    from diagnose.book.problems import BookError
    from diagnose.shop.cards import load_shop

    own = settings.shop / "knowledge"
    shipped = knowledge_folder()
    try:
        book = load_book(shipped, [own] if own.is_dir() else [])
    except BookError as error:
        book = load_book(shipped)
        say(f"Left out the shop's own knowledge, which has faults:\n{error}\n")
    shop = load_shop(settings.shop, book)
    for problem in shop.problems:
        say(f"Left out of the shop folder: {problem.render()}")
    return Room(book, shop, settings.shop, settings.units)
