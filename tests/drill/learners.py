"""Simulated learners: one who asks anything, one with a list, one who asks what tells most.

All name the cause they believe in once it is as likely as not, or when they have asked enough,
and go on with the next one when it was not that. `skips_safety` never asks a safety question.
"""

from __future__ import annotations

import random
from collections.abc import Callable

from diagnose.book.model import Book
from diagnose.drill.bearing import causes_of, checks_for
from diagnose.drill.belief_in import belief_of
from diagnose.drill.clock import guards
from diagnose.drill.drawn import Drill
from diagnose.drill.game import Game
from diagnose.reasoning.belief import Impossible
from diagnose.reasoning.fixes import fix_table
from diagnose.reasoning.gates import RAISED, turns
from diagnose.reasoning.next_check import value_all
from diagnose.reasoning.trials import network_of

SURE, ENOUGH, TRIES = 0.5, 8, 6

Choose = Callable[[Game, list[str], random.Random], str]


def play(book: Book, drill: Drill, choose: Choose, skips_safety: bool = False) -> Game:
    """One learner at one case, to the cure or to the call for help."""
    game, draw = Game(book, drill), random.Random(f"learner {drill.seed}")
    names = [n for n in checks_for(book, drill) if not guards(book, book.checks[n])]
    asked = 0
    while not game.over:
        _safe(game, skips_safety)
        open_ = [n for n in names if n not in game.asked]
        name = choose(game, open_, draw) if open_ and asked < ENOUGH and not _sure(game) else ""
        if name:
            asked += 1
            if turns(book.checks[name]):
                _safe(game, skips_safety)
            game.ask(name)
        else:
            _name_one(game)
    return game


def at_random(_game: Game, open_: list[str], draw: random.Random) -> str:
    """Any check of the list."""
    return draw.choice(open_)


def by_the_list(game: Game, open_: list[str], _draw: random.Random) -> str:
    """The first questions of the complaint, then whatever is quickest."""
    firsts = game.book.symptoms[game.drill.complaint].first_questions
    return min(open_, key=lambda n: (n not in firsts, game.book.checks[n].minutes, n))


def what_tells_most(game: Game, open_: list[str], _draw: random.Random) -> str:
    """The check that tells most a minute; none when no check tells anything."""
    book, read = game.book, game.read
    network, _ = network_of(book, read.case.complaint, read.gathered, read.deduced)
    fixes = fix_table(book, network, {}, False)
    checks = [book.checks[n] for n in open_]
    belief = belief_of(book, read)
    valued = value_all(book, network, checks, read.facts, fixes, belief=belief)
    best = max(valued.candidates, key=lambda c: (c.rate, c.check), default=None)
    return best.check if best is not None else ""


def _safe(game: Game, skips: bool) -> None:
    if skips:
        return
    while not game.read.safe or game.read.stops:
        if any(h.state == RAISED for h in game.read.hazards):
            game.stop()
        elif not game.safety():
            return


def _believed(game: Game) -> list[tuple[float, str]]:
    try:
        ranked = belief_of(game.book, game.read).ranked
    except Impossible:
        return []
    able = set(causes_of(game.book, game.drill.complaint)) - set(game.wrong)
    return [(r.acts, r.cause) for r in ranked if r.cause in able]


def _sure(game: Game) -> bool:
    return bool(game.wrong) or any(acts >= SURE for acts, _ in _believed(game)[:1])


def _name_one(game: Game) -> None:
    believed = _believed(game)
    if len(game.wrong) >= TRIES or not believed:
        game.give_up()
    else:
        game.attempt(believed[0][1])
