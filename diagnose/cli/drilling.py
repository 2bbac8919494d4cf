"""The learner at the terminal: lines read and understood, moves made, what was seen told."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from diagnose.book.model import Book
    from diagnose.cli.room import Room
    from diagnose.drill.draw import Wish
    from diagnose.drill.drawn import Drill
    from diagnose.drill.game import Game
    from diagnose.view.drill import DebriefView, Move

Read = Callable[[], str]
Say = Callable[[str], None]


def play(room: Room, drill: Drill, learner: str, read: Read, say: Say) -> Game:
    """Play a drill to its end; where the lines end, help is called."""
    from diagnose.drill.game import Game
    from diagnose.drill.story import opening
    from diagnose.view.drill_text import opening_text

    game = Game(room.book, drill, room.units)
    desk = Desk(game, say)
    say(opening_text(opening(room.book, drill, learner, room.units)))
    while not game.over:
        try:
            desk.understand(read())
        except EOFError:
            say("No more lines: help is called.")
            game.give_up()
    return game


class Desk:
    """One learner's lines at one game."""

    def __init__(self, game: Game, say: Say) -> None:
        from diagnose.drill.bearing import causes_of, checks_for

        self.game, self.say = game, say
        self.book: Book = game.book
        self.checks = checks_for(game.book, game.drill)
        self.causes = causes_of(game.book, game.drill.complaint)

    def understand(self, line: str) -> None:
        """One line; a slip is explained and costs nothing."""
        words = " ".join(line.split())
        first, _, rest = words.partition(" ")
        known = {
            "g": self._safety, "s": self._stop, "stop": self._stop, "n": self._seen,
            "h": self._hint, "hint": self._hint, "q": self._give_up, "?": self._help,
        }  # fmt: skip
        if not words:
            return
        if words.lower() in known:
            known[words.lower()]()
        elif first.lower() == "l":
            self._list(rest.lower())
        elif first.lower() in ("c", "f"):
            self._name(rest)
        else:
            for part in [p.strip() for p in words.split(",") if p.strip()]:
                self._ask(part)

    def _tell(self, move: Move, spent: float | None = None) -> None:
        from diagnose.view.drill_text import move_text

        self.say(move_text(move, self.game.minutes if spent is None else spent))

    def _safety(self) -> None:
        spent = self.game.minutes
        moves = self.game.safety()
        for move in moves:
            spent += move.minutes
            self._tell(move, spent)
        if not moves:
            self.say("Every safety question is answered.")

    def _stop(self) -> None:
        self._tell(self.game.stop())

    def _seen(self) -> None:
        from diagnose.view.drill_text import seen_text

        self.say(seen_text(self.game.moves, self.game.minutes))

    def _hint(self) -> None:
        from diagnose.drill.hints import next_hint

        self._tell(self.game.hint(next_hint(self.game)))

    def _give_up(self) -> None:
        self._tell(self.game.give_up())

    def _help(self) -> None:
        from diagnose.view.drill_text import KEYS

        self.say("\n".join(KEYS))

    def _list(self, place: str) -> None:
        from diagnose.drill.bearing import PLACES, lines
        from diagnose.view.drill_text import checks_text

        found = lines(self.book, self.checks, self.game.asked)
        if place and place not in PLACES:
            self.say(f"There is no place '{place}'; the places are: {', '.join(PLACES)}.")
            return
        self.say(checks_text([c for c in found if c.place == place or not place]))

    def _ask(self, words: str) -> None:
        from diagnose.drill.finding import check_named, checks_meant

        if words.isdecimal():
            if not 1 <= int(words) <= len(self.checks):
                self.say(f"There is no check {words}; they go from 1 to {len(self.checks)}.")
                return
            self._tell(self.game.ask(self.checks[int(words) - 1]))
            return
        named = check_named(self.book, words)
        found = (named,) if named else checks_meant(self.book, words, self.checks)
        found = found or checks_meant(self.book, words, self.book.checks)
        if len(found) == 1:
            self._tell(self.game.ask(found[0]))
        elif found:
            self.say("Which one?\n" + "\n".join(self._line(n) for n in found))
        else:
            self.say(f"No check is known as '{words}'. l lists them, ? says what can be typed.")

    def _line(self, name: str) -> str:
        number = self.checks.index(name) + 1 if name in self.checks else 0
        return f"{number or name:>5}  {self.book.checks[name].name}"

    def _name(self, words: str) -> None:
        from diagnose.drill.finding import causes_meant
        from diagnose.view.drill_text import causes_text

        if not words:
            self.say(causes_text([self.book.causes[c].name for c in self.causes]))
            return
        if words.isdecimal():
            if not 1 <= int(words) <= len(self.causes):
                self.say(f"There is no cause {words}; they go from 1 to {len(self.causes)}.")
                return
            self._tell(self.game.attempt(self.causes[int(words) - 1]))
            return
        found = causes_meant(self.book, words, self.causes)
        if len(found) == 1:
            self._tell(self.game.attempt(found[0]))
        elif found:
            names = [f"{self.causes.index(n) + 1:>5}  {self.book.causes[n].name}" for n in found]
            self.say("Which one? c and its number.\n" + "\n".join(names))
        else:
            self.say(f"No cause of this complaint is known as '{words}'. c lists them.")


def narrowed(book: Book, wish: Wish, family: str | None, complaint: str | None) -> Wish:
    """The wish within a family of complaints or causes, and a complaint. Raises BookError."""
    from diagnose.book.complaints import symptoms_meant
    from diagnose.book.near import listed, nearest
    from diagnose.cli.source import fault
    from diagnose.drill.hints import family_of

    if family is not None:
        word = "-".join(family.lower().split())
        symptoms = frozenset(s.id for s in book.symptoms.values() if s.family == word)
        causes = frozenset(n for n in book.causes if family_of(book, n) == word)
        if symptoms:
            wish = replace(wish, complaints=symptoms)
        elif causes:
            wish = replace(wish, causes=causes & wish.causes if wish.causes else causes)
        else:
            every = {s.family for s in book.symptoms.values()}
            every |= {family_of(book, n) for n in book.causes}
            near = nearest(word, sorted(every))
            mend = f"the families are: {listed(sorted(every), 40)}"
            raise fault(f"there is no family '{family}'", "" if near else mend, near)
    if complaint is not None:
        meant = symptoms_meant(complaint, book)
        if not meant:
            near = nearest("-".join(complaint.lower().split()), book.symptoms)
            raise fault(f"no complaint is known as '{complaint}'", "", near)
        wish = replace(wish, complaints=frozenset(meant))
    return wish


def closed_wish(room: Room, seed: int, level: int) -> Wish:
    """A wish drawn from the closed cases of the shop. Raises BookError when there is none."""
    from diagnose.cli.source import fault
    from diagnose.drill.from_shop import wish_from
    from diagnose.shop.closed import closed_cases

    kept, problems = closed_cases(room.folder, room.book)
    room.left_out(problems)
    try:
        return wish_from(room.book, [k.case for k in kept], seed, level)
    except LookupError as error:
        raise fault(str(error.args[0])) from None


def keep_done(room: Room, game: Game, view: DebriefView, learner: str) -> None:
    """Add the drill to what the shop keeps of the learner. Raises BookError."""
    from diagnose.drill.progress import Done, keep

    drill = game.drill
    done = Done(
        drill.seed, drill.level, datetime.date.today().isoformat(), drill.complaint, drill.cause,
        game.wrong, view.passed, view.score, round(game.minutes, 1), game.hints,
        drill.hazard.stop if drill.hazard else "", game.caught, drill.from_shop,
    )  # fmt: skip
    keep(room.folder, learner, done)
