"""Ways to go about a case, each played to the cure on the same hidden truth.

A question costs a minute of attention besides its own minutes. A fix that works takes its cause
away; the complaint is gone when nothing that made it is left. When no fix is worth its minutes
help is called (the last resort), and the case ends. Safety questions are left out: they are asked
whatever the policy.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from diagnose.book.model import Book, Check
from diagnose.reasoning.ahead import ATTENTION
from diagnose.reasoning.fixes import LAST_RESORT, FixTable
from diagnose.reasoning.next_check import Candidate, Valued, _minutes
from diagnose.reasoning.policy import ENOUGH, Step, _fix_or_stuck, before_help, decide
from diagnose.reasoning.reason import acting
from tests.bench.states import Key, States, scaled
from tests.bench.world import World, reports_on, sign_of

LIKELY = 0.5  # a fix as likely as not, where the plain policies stop asking
PATIENCE = 40  # fixes after which anyone calls for help

Choose = Callable[["Player", Key, int], Step]


@dataclass(frozen=True)
class Played:
    """How one case went: minutes to the cure, questions asked, fixes tried, help called."""

    minutes: float
    questions: int
    fixes: int
    helped: bool


class Player:
    """Plays worlds with the states of one book, checks priced at `times` their minutes."""

    def __init__(self, book: Book, states: States, times: float = 1.0, cap: int = ENOUGH) -> None:
        self.book, self.states, self.times, self.cap = book, states, times, cap
        self._steps: dict[tuple[str, Key], Step] = {}
        self.draw = random.Random(0)

    def play(self, world: World, name: str) -> Played:
        """One case with one policy."""
        self.draw = random.Random(repr(sorted(world.answers.items())))
        answers: dict[str, str] = {}
        tried: list[tuple[str, str]] = []
        left = set(world.makers)
        # the lists that open every interview find nothing tried, and are paid for all the same
        lists = [c for c in self.book.checks.values() if c.opens and c.kind == "any"]
        asked = len(lists) if name == "ours" else 0
        minutes = sum(self.times * c.minutes + ATTENTION for c in lists) if asked else 0.0
        while True:
            key = (world.complaint, tuple(sorted(answers.items())), tuple(tried))
            step = self._step(name, key, asked)
            if step.kind == "ask":
                minutes += self._price(step.name, key)
                answers[step.name] = world.answers[step.name]
                asked += 1
                continue
            if step.kind != "fix" or len(tried) >= PATIENCE:
                return Played(minutes + LAST_RESORT, asked, len(tried), True)
            fixes = self.states.state(key).fixes
            minutes += float(fixes.minutes[fixes.ids.index(step.name)])
            outcome = _try(self.book, world, step.name, left)
            tried.append((step.name, outcome))
            if not left:
                return Played(minutes, asked, len(tried), False)

    def questions(self, world: World, name: str) -> Key:
        """What is known when the policy first stops asking."""
        answers: dict[str, str] = {}
        while True:
            key: Key = (world.complaint, tuple(sorted(answers.items())), ())
            step = self._step(name, key, len(answers))
            if step.kind != "ask" or step.name not in world.answers:
                return key
            answers[step.name] = world.answers[step.name]

    def _price(self, check: str, key: Key) -> float:
        facts = self.states.state(key).facts
        own = _minutes(self.book, self.book.checks[check], facts, frozenset(), ())
        return self.times * own + ATTENTION

    def _step(self, name: str, key: Key, asked: int) -> Step:
        if name == "random":
            return POLICIES[name](self, key, asked)
        if (name, key) not in self._steps:
            self._steps[name, key] = POLICIES[name](self, key, asked)
        return self._steps[name, key]

    def at_work(self, key: Key) -> dict[str, float]:
        """For each fix the chance that something it mends acts."""
        state = self.states.state(key)
        return state.fixes.at_work(acting(state.network, self.states.belief(key)))

    def valued(self, key: Key) -> tuple[Valued, FixTable]:
        return scaled(self.states.valued(key), self.times), self.states.state(key).fixes


def _try(book: Book, world: World, fix: str, left: set[str]) -> str:
    mended = {c for c in left if c in book.causes and book.causes[c].fix.id == fix}
    if not world.works[fix] or not mended:
        return "same"
    left -= mended
    return "better"


def bound(book: Book, world: World) -> float:
    """Minutes of one who knows all: the fixes that are needed, or the last resort at once."""
    if world.makers - set(book.causes):
        return LAST_RESORT
    fixes = {book.causes[c].fix.id: book.causes[c].fix for c in world.makers}
    if not all(world.works[f] for f in fixes):
        return LAST_RESORT
    return min(LAST_RESORT, sum(max(1.0, f.minutes_first_time) for f in fixes.values()))


# --- the policies -----------------------------------------------------------------------------


def _ours(player: Player, key: Key, asked: int) -> Step:
    return _decided(player, key, asked, [c for c in player.states.state(key).checks if c.opens])


def _unopened(player: Player, key: Key, asked: int) -> Step:
    """Ours without the questions that open every interview: what those cost and bring here."""
    return _decided(player, key, asked, ())


def _decided(player: Player, key: Key, asked: int, opening: Sequence[Check]) -> Step:
    valued, fixes = player.valued(key)
    asked = ENOUGH if asked >= player.cap else min(asked, ENOUGH - 1)
    firsts = player.book.symptoms[key[0]].first_questions
    step = decide(
        player.book, valued, fixes, safe=True, safety=(), first_questions=firsts, asked=asked,
        opening=opening, known=asked, tried=bool(key[2]),
    )  # fmt: skip
    return before_help(step, valued, fixes, player.at_work(key))


def _fix(valued: Valued, fixes: FixTable) -> Step:
    order = fixes.order(valued.now)
    return _fix_or_stuck(valued, fixes, order[0] if order else None)


def _least_minutes(player: Player, key: Key, asked: int) -> Step:
    valued, fixes = player.valued(key)
    best = min(valued.candidates, key=lambda c: (_ask_cost(c), c.check), default=None)
    if best is None or asked >= player.cap or _ask_cost(best) >= valued.cost_now:
        return _fix(valued, fixes)
    return _ask(best)


def _gain(player: Player, key: Key, asked: int) -> Step:
    """Gain of information a minute until one fix is as likely as not, then the fixes."""
    valued, fixes = player.valued(key)
    best = max(valued.candidates, key=lambda c: (c.rate, c.check), default=None)
    if best is None or asked >= player.cap or max(valued.now[: len(fixes.ids)]) >= LIKELY:
        return _fix(valued, fixes)
    return _ask(best)


def _checklist(player: Player, key: Key, asked: int) -> Step:
    """The first questions of the complaint, then the checks of its family, quickest first."""
    firsts = player.book.symptoms[key[0]].first_questions
    return _listed(player, key, asked, sorted_checks(player, key, firsts))


def _random(player: Player, key: Key, asked: int) -> Step:
    names = sorted_checks(player, key, ())
    player.draw.shuffle(names)
    return _listed(player, key, asked, names)


def _listed(player: Player, key: Key, asked: int, names: Sequence[str]) -> Step:
    valued, fixes = player.states.now(key), player.states.state(key).fixes
    likely = max(valued.now[: len(fixes.ids)]) >= LIKELY
    if not names or asked >= player.cap or likely or key[2]:
        return _fix(valued, fixes)
    return Step("ask", names[0], "it is next on the list")


def sorted_checks(player: Player, key: Key, firsts: Sequence[str]) -> list[str]:
    """The checks that bear on the causes of the complaint, the first questions, then quickest."""
    book, state = player.book, player.states.state(key)
    able = [n for n in state.network.nodes if key[0] in n.links]
    causes = {n.id for n in able}
    signs = {s for n in able for s in n.links}
    moving = {f for c in causes for s in book.causes[c].more_likely_when for f in s.when.facts}

    def bears(name: str) -> bool:
        check = book.checks[name]
        report = reports_on(book, check)
        sign = sign_of(book, check)
        if report is not None:
            return report[0] in causes
        return sign in signs if sign else bool(moving & {name, *check.settles})

    names = [c.id for c in state.checks if bears(c.id)]
    return sorted(names, key=lambda n: (n not in firsts, book.checks[n].minutes, n))


def _fixes_only(player: Player, key: Key, asked: int) -> Step:  # noqa: ARG001 - a policy's form
    return _fix(player.states.now(key), player.states.state(key).fixes)


def _ask_cost(candidate: Candidate) -> float:
    return candidate.minutes + ATTENTION + candidate.cost_after


def _ask(candidate: Candidate) -> Step:
    name = candidate.first_ask[0] if candidate.first_ask else candidate.check
    return Step("ask", name, "", candidate)


POLICIES: dict[str, Choose] = {
    "ours": _ours,
    "ours without its opening": _unopened,
    "least expected minutes": _least_minutes,
    "gain per minute": _gain,
    "fixed checklist": _checklist,
    "fixes by p/C, no questions": _fixes_only,
    "random questions": _random,
}
OMNISCIENT = "omniscient bound"
