"""Playing a drill: what the learner does, what there is to see, what it costs, whether it was safe.

The learner's checks are entries of a real case, so that the product's own gates say whether the
wheel may turn. Nothing warns: the learner must ask, see what is wrong, and say stop.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from diagnose.book.model import Book
from diagnose.case.entries import UNKNOWN, Entry
from diagnose.drill.clock import Clock, guards
from diagnose.drill.drawn import Drill
from diagnose.drill.hazards import all_is_well
from diagnose.drill.quick import read_quickly
from diagnose.drill.showing import GONE, answer_of, gone, in_words
from diagnose.reasoning.gates import RAISED, Hazard, safety_checks, turns
from diagnose.reasoning.reason import Read
from diagnose.view.drill import ASK, GIVE_UP, HINT, SAFETY, STOP, TRY, Move

FALSE_ALARM = "Nothing that you have seen so far stops you. Ask the safety questions first."
PUT_RIGHT = "put right before going on"


def put_right(book: Book, drill: Drill, standing: Sequence[Hazard]) -> list[Entry]:
    """The entries that say that these are put right, and the question of the hazard asked again."""
    entries = [Entry("cleared", h.stop.id, PUT_RIGHT) for h in standing]
    if drill.hazard is not None:
        check = book.checks[drill.hazard.check]
        entries.append(Entry("answer", check.id, all_is_well(check)))
    return entries


@dataclass
class Game:
    """One learner at one case."""

    book: Book
    drill: Drill
    units: str = "metric"
    moves: list[Move] = field(default_factory=list)
    entries: list[Entry] = field(default_factory=list)
    over: bool = False
    solved: bool = False
    gave_up: bool = False
    turned_unsafe: bool = False  # something turned, or the job was closed, with a hazard open
    caught: bool = False  # the planted hazard, by the learner
    hints: int = 0

    def __post_init__(self) -> None:
        self.clock = Clock(self.book)
        self._read: tuple[int, Read] | None = None

    @property
    def read(self) -> Read:
        """The case as the learner knows it."""
        if self._read is None or self._read[0] != len(self.entries):
            made = read_quickly(self.book, self.drill.case(tuple(self.entries)))
            self._read = (len(self.entries), made)
        return self._read[1]

    @property
    def minutes(self) -> float:
        """Minutes spent so far."""
        return self.clock.spent

    @property
    def wrong(self) -> tuple[str, ...]:
        """The causes tried in vain, in order."""
        return tuple(m.name for m in self.moves if m.kind == TRY and not m.right)

    @property
    def missed(self) -> bool:
        """True when the planted hazard was not caught before something turned."""
        return self.drill.hazard is not None and not self.caught

    @property
    def asked(self) -> frozenset[str]:
        """Checks made, those of the story too."""
        return frozenset(self.read.gathered.told) | self.read.gathered.unknown

    # moves ------------------------------------------------------------------------------------

    def ask(self, name: str) -> Move:
        """Make a check."""
        check, read = self.book.checks[name], self.read
        if name not in self.drill.answers:
            return self._free(name, "there is nothing of the kind to look at in this case")
        known = read.gathered.told.get(name)
        again = name in self.drill.given or (known is not None and not self._stale(name))
        if again:
            said = in_words(check, self.drill.answers[name], self.units)
            where = "told in the story" if name in self.drill.given else "seen already"
            return self._free(name, f"{said} ({where})")
        return self._made(name, SAFETY if guards(self.book, check) else ASK)

    def safety(self) -> list[Move]:
        """Ask every safety question that is open, one after the other."""
        done: list[Move] = []
        while True:
            read = self.read
            later = frozenset(m.name for m in done)
            open_ = safety_checks(self.book, read.hazards, read.gathered, later)
            able = [c for c in open_ if c.id in self.drill.answers]
            if not able:
                return done
            done.append(self._made(able[0].id, SAFETY))

    def stop(self) -> Move:
        """Say stop: something seen is a hazard. What stands is then put right."""
        standing = [h for h in self.read.hazards if h.state == RAISED]
        if not standing:
            return self._keep(Move(STOP, "", "Stop", FALSE_ALARM, free=True))
        if self.drill.hazard is not None and not self.turned_unsafe:
            self.caught = True
        names = "; ".join(h.stop.name for h in standing)
        first = " ".join(step for h in standing for step in h.stop.do_first)
        before = len(self.entries)
        self.entries += put_right(self.book, self.drill, standing)
        seen = f"Right: {names}." if self.caught else f"Too late, but right: {names}."
        return self._keep(Move(STOP, standing[0].stop.id, "Stop", seen, note=first, entries=before))

    def attempt(self, cause: str) -> Move:
        """Name a cause, and do its cure."""
        read, fix = self.read, self.book.causes[cause].fix
        unsafe = not read.safe or bool(read.stops)
        self.turned_unsafe |= unsafe
        right = fix.id == self.book.causes[self.drill.cause].fix.id
        minutes = self.clock.fix(fix)
        before = len(self.entries)
        if right:
            self.over = self.solved = True
            seen = "The complaint is gone, and stays gone."
        else:
            self.entries.append(Entry("tried", cause, outcome="same"))
            seen = "Done, and the part comes out just the same."
        ask = f"{self.book.causes[cause].name}: {fix.do}"
        move = Move(TRY, cause, ask, seen, minutes, turning=True, unsafe=unsafe, right=right,
                    entries=before)  # fmt: skip
        return self._keep(move)

    def hint(self, text: str) -> Move:
        """Take a hint, which costs points, no minutes."""
        self.hints += 1
        return self._keep(Move(HINT, "", "Hint", text, entries=len(self.entries)))

    def give_up(self) -> Move:
        """Call for help."""
        self.over = self.gave_up = True
        minutes = self.clock.call_for_help()
        return self._keep(
            Move(GIVE_UP, "", "Help is called", "", minutes, entries=len(self.entries))
        )

    # ------------------------------------------------------------------------------------------

    def _stale(self, name: str) -> bool:
        from diagnose.reasoning.facts import stale

        return stale(self.book.checks[name], self.read.gathered)

    def _made(self, name: str, kind: str) -> Move:
        check, read = self.book.checks[name], self.read
        unsafe = turns(check) and (not read.safe or bool(read.stops))
        self.turned_unsafe |= unsafe
        answer = answer_of(self.drill, check, read.gathered, bool(read.gathered.read.cleared))
        wiped = answer == UNKNOWN and gone(check, read.gathered)
        said = GONE if wiped else in_words(check, answer, self.units)
        before = len(self.entries)
        self.entries.append(Entry("answer", name, answer, "measured"))
        minutes = self.clock.check(check)
        move = Move(kind, name, check.ask, said, minutes, turning=turns(check), unsafe=unsafe,
                    entries=before)  # fmt: skip
        return self._keep(move)

    def _free(self, name: str, seen: str) -> Move:
        return Move(ASK, name, self.book.checks[name].ask, seen, free=True)

    def _keep(self, move: Move) -> Move:
        self.moves.append(move)
        return move
