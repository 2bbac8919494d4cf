"""Names of places in a page, each used once, and the links to them."""

from __future__ import annotations

import dataclasses
import re

from diagnose.view.result import EntryView, ResultView, SourceView
from diagnose.view.review import ReviewView
from diagnose.view.walk import sources_in


@dataclasses.dataclass(frozen=True)
class Link:
    """A link inside the page: where it goes and what it says."""

    anchor: str
    words: str


class Anchors:
    """The places of one page: causes, entries and sources."""

    def __init__(self, view: ResultView | ReviewView) -> None:
        self._taken: set[str] = set()
        causes = view.causes if isinstance(view, ResultView) else ()
        self.causes = [self._new("cause", c.id) for c in causes]
        self.entries = [self._new("answer", f"{e.number}-{e.check}") for e in view.entries]
        self._views = view.entries
        self.sources = tuple(dict.fromkeys(sources_in(view)))

    def _new(self, kind: str, name: str) -> str:
        slug = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")[:60]
        anchor = f"{kind}-{slug}" if slug else kind
        tries = 1
        while anchor in self._taken:
            tries += 1
            anchor = f"{kind}-{slug}-{tries}"
        self._taken.add(anchor)
        return anchor

    def place(self, entry: EntryView) -> str:
        """The anchor of an answer."""
        at = next(n for n, e in enumerate(self._views) if e is entry)
        return self.entries[at]

    def answers(self, checks: tuple[str, ...], numbers: tuple[int, ...] = ()) -> list[Link]:
        """Links to the answers of these checks, or of these numbers; what is not there is left out.

        A check answered more than once links to the answers with the numbers given, if any.
        """
        pairs = list(zip(self.entries, self._views, strict=True))
        found = [(a, e) for a, e in pairs if e.check in checks]
        exact = [(a, e) for a, e in found if e.number in numbers]
        if not found:
            exact = [(a, e) for a, e in pairs if e.number in numbers]
        return [Link(a, entry_words(e)) for a, e in exact or found]

    def question(self, check: str) -> str:
        """How a check was asked; its id when it was not."""
        return next((e.ask for e in self._views if e.check == check), check)

    def source_number(self, source: SourceView) -> int:
        """The number of a source in the list at the end, from 1."""
        return self.sources.index(source) + 1


def entry_words(entry: EntryView) -> str:
    """How an answer is called where it is linked to."""
    return f"answer {entry.number}" if entry.number else "from the set-up"
