"""What a person beside the machine may know already: the looks whose answers would tell most.

What was seen or tried before the first question costs no minutes, so it is taken first: the looks
that tell most together make a list, and the person says which of them were made. Before a first fix
that is not likely enough they are looked through once more.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace

from diagnose.book.model import Book, Check
from diagnose.case.entries import UNASKED, UNKNOWN, Entry
from diagnose.reasoning.gates import askable
from diagnose.reasoning.next_check import value_all
from diagnose.reasoning.policy import FIRM
from diagnose.reasoning.reason import Reasoned
from diagnose.reasoning.together import most_together

LISTS = 3  # lists shown before the first question, each going by what those before it told
LONGEST = 12  # looks on a list
SHORTEST = 5  # looks fewer than which make no list: they are asked one at a time
VALUED = 40  # looks valued exactly for a list
TELLS = 0.01  # bits a look must tell to stand on a list
ADDS = 1e-4  # bits it must add to those above it


@dataclass(frozen=True)
class Telling:
    """How far the lists of one sitting have come.

    `shown`: lists before the first question; `listed`: the looks that stood on any; `ended`: the
    list before the first fix was shown.
    """

    shown: int = 0
    listed: frozenset[str] = frozenset()
    ended: bool = False

    def at_last(self, reasoned: Reasoned) -> bool:
        """True when the list before the first fix is due."""
        return bool(self.listed) and not self.ended and last_chance(reasoned)

    def due(self, reasoned: Reasoned) -> bool:
        """True when a list comes next; a stop or hold that stands comes before it."""
        return not reasoned.read.stops and (self.shown < LISTS or self.at_last(reasoned))

    def after(self, reasoned: Reasoned, looks: Collection[Check], told: bool) -> Telling:
        """As it stands once a list was shown; who `told` nothing of it is shown no other yet."""
        return Telling(
            self.shown + 1 if told else LISTS,
            self.listed | {look.id for look in looks},
            self.ended or self.at_last(reasoned),
        )


def last_chance(reasoned: Reasoned) -> bool:
    """True when a first fix is about to be named, or none, and what is known could change it."""
    step = reasoned.step
    if step.kind not in ("fix", "stuck") or not reasoned.read.safe:
        return False
    if reasoned.read.gathered.read.tried:
        return False
    fixes, now = reasoned.fixes.ids, reasoned.valued.now
    return step.kind == "stuck" or float(now[fixes.index(step.name)]) < FIRM


def left_out(book: Book, looks: Collection[Check], told: Collection[str]) -> tuple[Entry, ...]:
    """What was left out of a list on which other looks were `told`: "don't know", unasked.

    Only what is remembered or not, such as how it came: nobody asks for it once more. What needs
    a look or a trial is still asked, and so is what another question hangs on.
    """
    if not told:
        return ()
    hung_on = {fact for check in book.checks.values() for fact in check.asked_when.facts}
    past = [c for c in looks if c.place == "history" and not c.trial and c.id not in hung_on]
    return tuple(Entry("answer", c.id, UNKNOWN, UNASKED) for c in past if c.id not in told)


def looks_to_tell(
    reasoned: Reasoned, shown: Collection[str] = (), once_more: bool = False
) -> tuple[Check, ...]:
    """The checks of one list, the most telling first; none when there are too few for a list.

    Only those with one answer out of several, not `shown` before, that hang on no other question
    and guard against no danger: what clears a danger is looked at when it is asked. `once_more`:
    what was left out of a list may stand on this one.
    """
    read = reasoned.read
    gathered = read.gathered
    if once_more:
        out = {e.name for e in read.case.entries if e.left_out}
        gathered = replace(gathered, unknown=gathered.unknown - out)
    book, guards = read.book, {s.asked_by for s in read.book.stops.values()}
    free = [
        replace(check, minutes=0.0, preparation_minutes=0.0)
        for check in askable(book, gathered, read.facts, read.case.tools)
        if check.kind == "one" and check.id not in guards and check.id not in shown
    ]
    valued = value_all(
        book, reasoned.network, free, read.facts, reasoned.fixes,
        belief=reasoned.belief, most=VALUED,
    )  # fmt: skip
    telling = [c for c in valued.candidates if c.gain >= TELLS and not c.first_ask]
    chosen = most_together(telling, valued.now, LONGEST, ADDS)
    return tuple(book.checks[name] for name in chosen) if len(chosen) >= SHORTEST else ()
