"""What is said after a drill: the hazard first, then cause and effect, minutes, and every step."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from diagnose.book.model import Book
from diagnose.drill.belief_in import belief_of, log_odds
from diagnose.drill.clock import guards
from diagnose.drill.game import Game
from diagnose.drill.par import (
    Played,
    Proof,
    best_possible,
    most_telling,
    shortest_proof,
    tool_plays,
)
from diagnose.drill.quick import read_quickly
from diagnose.drill.scoring import passed, reasons, score
from diagnose.drill.showing import in_words, wheel_words
from diagnose.drill.side_by_side import deciding_look, side_by_side
from diagnose.drill.story import opening, story
from diagnose.reasoning.belief import Impossible
from diagnose.reasoning.graph import chain
from diagnose.reasoning.next_check import Candidate, value_all
from diagnose.reasoning.reason import reason_from
from diagnose.view.drill import (
    ASK,
    GIVE_UP,
    HINT,
    SAFETY,
    STOP,
    TRY,
    DebriefView,
    HazardView,
    MinutesRow,
    Move,
    SideBySide,
    StepView,
)
from diagnose.view.parts import caution_view, name_of, source_view
from diagnose.view.result import ArrowView, percent
from diagnose.view.walk import sources_in

HARDLY = 0.1  # log-odds below which a step told next to nothing
CLEARLY = 1.5  # times the value a minute from which another step would have told more
MOST_PAIRS = 3


def debrief(game: Game, learner: str = "") -> DebriefView:
    """Everything about a drill that is over."""
    book, drill = game.book, game.drill
    cause = book.causes[drill.cause]
    tool, best = tool_plays(book, drill), best_possible(book, drill)
    proof = shortest_proof(book, drill)
    opened = opening(book, drill, learner, game.units)
    steps, twice = _steps(game)
    view = DebriefView(
        title=opened.title, seed=drill.seed, level=drill.level, learner=learner,
        version=book.version, first=_first(game), passed=passed(game), score=score(game, best),
        why=reasons(game), hazard=_hazard(game), story=story(book, drill, game.units),
        complaint=book.symptoms[drill.complaint].name, cause=cause.name, summary=cause.summary,
        chain=_chain(book, drill.cause, drill.complaint), fix=cause.fix.do, proof=cause.fix.proof,
        cautions=tuple(caution_view(book, c) for c in cause.cautions),
        untypical=drill.untypical, typical=_typical(game),
        minutes=_minutes(game, tool, best, proof), steps=steps,
        tool_way=tuple(book.checks[n].ask for n in tool.asked)
        + tuple(f"then: {book.causes[n].fix.do}" for n in tool.tried),
        proof_way=tuple(_proved(game, n) for n in proof.checks) if proof else (),
        missed_most=_missed_most(game),
        look_alikes=_pairs(
            game, tuple(n for n in cause.look_alikes if n not in game.wrong)
        ),
        swapped=_pairs(game, game.wrong),
        next_time=_next_time(game, twice, tool), sources=(),
    )  # fmt: skip
    own = tuple(source_view(book, s) for s in cause.sources)
    return replace(view, sources=tuple(dict.fromkeys((*own, *sources_in(view)))))


def _first(game: Game) -> str:
    hazard = game.drill.hazard
    if hazard is not None and game.missed:
        name = game.book.stops[hazard.stop].name
        shown = hazard.check in {m.name for m in game.moves}
        how = "You were shown it and went on." if shown else "You did not ask."
        return f"A hazard was there, and you did not stop: {name}. {how} This can hurt somebody."
    if game.turned_unsafe:
        return (
            "The wheel turned before every safety question was answered - or answered again after "
            f"the wheel was off or something was changed. {_how_missed(game)} Nothing happened "
            "this time. That is luck: every fourth case has a hazard."
        )
    if passed(game):
        return "Passed."
    return "Not passed this time; look at the steps below."


def _hazard(game: Game) -> HazardView | None:
    planted, book = game.drill.hazard, game.book
    if planted is None:
        return None
    stop, check = book.stops[planted.stop], book.checks[planted.check]
    said = in_words(check, planted.option)
    how = "You saw it and stopped in time." if game.caught else _how_missed(game)
    return HazardView(
        stop.name, stop.what_is_wrong, stop.do_first, check.ask, said, game.caught, how,
        source_view(book, stop.source),
    )  # fmt: skip


def _how_missed(game: Game) -> str:
    turned = next((m for m in game.moves if m.unsafe), None)
    if turned is None:
        return "You never said stop."
    what = "closing the job" if turned.kind == TRY else f"'{turned.ask}'"
    return f"The first step that turned the wheel with it open: {what}."


def _chain(book: Book, cause: str, complaint: str) -> tuple[ArrowView, ...]:
    path = chain(book, cause, (complaint,))
    if path is None:
        links = [k for k in book.causes[cause].shows if k.finding == complaint]
        said = links[0].because if links else "it makes this complaint"
        return (ArrowView(book.causes[cause].name, book.symptoms[complaint].name, said),)
    out, here = [], cause
    for arrow in path.arrows:
        out.append(ArrowView(name_of(book, here), name_of(book, arrow.to), arrow.because))
        here = arrow.to
    return tuple(out)


def _typical(game: Game) -> str:
    drill = game.drill
    before, after = percent(_chance(drill.before)), percent(_chance(drill.after))
    if drill.untypical:
        return (
            f"Untypical: its signs mislead. With every check made the tool itself suspects this "
            f"cause less ({after}) than on the complaint alone ({before})."
        )
    return (
        f"On the complaint alone the tool suspects this cause at {before}; with every check made "
        f"at {after}."
    )


def _minutes(game: Game, tool: Played, best: float, proof: Proof | None) -> tuple[MinutesRow, ...]:
    ended = "to the cure" if game.solved else "and help was called" if game.gave_up else "so far"
    rows = [
        MinutesRow("you", game.minutes, ended),
        MinutesRow(
            "the tool, asking as it always asks",
            tool.minutes,
            "and help was called" if tool.helped else f"to the cure, {len(tool.asked)} questions",
        ),
    ]
    if proof is not None:
        count = len(proof.checks)
        rows.append(
            MinutesRow(
                "the shortest proof found in this case",
                proof.minutes,
                f"safety, {count} check{'s' if count != 1 else ''}, the cure",
            )
        )
    rows.append(MinutesRow("best possible", best, "safety and the cure, knowing the cause"))
    return tuple(rows)


def _proved(game: Game, name: str) -> str:
    check = game.book.checks[name]
    return f"{check.ask} - {in_words(check, game.drill.answers[name], game.units)}"


# --- the steps --------------------------------------------------------------------------------


def _steps(game: Game) -> tuple[tuple[StepView, ...], int]:
    """Each step with what it told; and how many told next to nothing."""
    out: list[StepView] = []
    idle = 0
    for move in _together([m for m in game.moves if not m.free]):
        step = _step(game, len(out) + 1, move)
        idle += step.counts and abs(step.share) < HARDLY
        out.append(step)
    return tuple(out), idle


def _together(moves: Sequence[Move]) -> list[Move]:
    """The moves, safety questions asked one after the other as one."""
    out: list[Move] = []
    for move in moves:
        if move.kind == SAFETY and out and out[-1].kind == SAFETY:
            seen = "; ".join(dict.fromkeys((*out[-1].seen.split("; "), move.seen)))
            minutes = out[-1].minutes + move.minutes
            out[-1] = replace(out[-1], ask="The safety questions:", seen=seen, minutes=minutes)
        else:
            out.append(move)
    return out


def _step(game: Game, number: int, move: Move) -> StepView:
    book = game.book
    wheel = wheel_words(book.checks[move.name]) if move.name in book.checks else ""
    seen = f"{move.seen} {move.note}".strip()
    plain = StepView(number, move.ask, seen, move.minutes, wheel, "", 0.0, 0.0, counts=False)
    if move.kind == STOP:
        return replace(plain, told="stopped for a hazard")
    if move.kind == HINT:
        return replace(plain, told="a hint")
    if move.kind == GIVE_UP:
        return replace(plain, told="")
    if move.kind == TRY:
        return replace(plain, told="that was it" if move.right else _in_vain(game, move))
    if move.kind != ASK:
        return replace(plain, told="asked for safety")
    before, after = _suspected(game, move.entries), _suspected(game, move.entries + 1)
    share = after - before
    better = _better(game, move)
    return replace(
        plain, told=_told(share), share=share, chance=_chance(after), better=better, counts=True
    )


def _in_vain(game: Game, move: Move) -> str:
    look = deciding_look(game.book, game.drill.cause, move.name, game.drill.answers)
    ask = f"; to tell them apart: {game.book.checks[look.check].ask}" if look else ""
    return f"that was not it{ask}"


def _suspected(game: Game, entries: int) -> float:
    case = game.drill.case(tuple(game.entries[:entries]))
    try:
        return log_odds(belief_of(game.book, read_quickly(game.book, case)), game.drill.cause)
    except Impossible:
        return math.nan


def _told(share: float) -> str:
    if math.isnan(share):
        return "these answers hardly go together"
    if abs(share) < HARDLY:
        return "told next to nothing about the cause"
    times = math.exp(min(abs(share), 20.0))
    much = f"{times:.1f}" if times < 10 else f"{times:.0f}"
    way = "more" if share > 0 else "less"
    return f"made the cause {much} times {way} likely (odds)"


def _better(game: Game, move: Move) -> str:
    """The step that would have told more for its minutes, known to nobody's eye but the odds."""
    case = game.drill.case(tuple(game.entries[: move.entries]))
    read = read_quickly(game.book, case)
    try:
        reasoned = reason_from(read)
    except Impossible:
        return ""
    step = reasoned.step
    if step.kind == "fix":
        return f"it was time to try: {game.book.causes[step.name].fix.do}" if (
            step.name == game.book.causes[game.drill.cause].fix.id
        ) else ""  # fmt: skip
    if step.kind != "ask" or step.candidate is None or move.name in (
        step.name, step.candidate.check, *game.book.checks[step.name].together_with
    ):  # fmt: skip
        return ""
    mine = value_all(
        game.book, reasoned.network, [game.book.checks[move.name]], read.facts, reasoned.fixes
    ).candidates
    if _rate(step.candidate) < CLEARLY * max((_rate(c) for c in mine), default=0.0):
        return ""
    return f"would have told more: {game.book.checks[step.name].ask}"


def _rate(candidate: Candidate) -> float:
    return candidate.rate


def _chance(odds: float) -> float:
    return 1.0 / (1.0 + math.exp(-max(-50.0, min(50.0, 0.0 if math.isnan(odds) else odds))))


# --- what to take along -----------------------------------------------------------------------


def _missed_most(game: Game) -> str:
    """The check not made that would have spoken most for the cause."""
    made = tuple(e for e in game.entries if e.kind != "tried")
    name = most_telling(game.book, game.drill, made)
    return _proved(game, name) if name else ""


def _pairs(game: Game, others: tuple[str, ...]) -> tuple[SideBySide, ...]:
    book, cause = game.book, game.drill.cause
    found = []
    for other in dict.fromkeys(others):
        if other in book.causes and other != cause:
            pair = side_by_side(book, cause, other, game.drill.answers)
            found += [pair] if pair else []
    return tuple(found[:MOST_PAIRS])


def _next_time(game: Game, idle: int, tool: Played) -> tuple[str, ...]:
    found = []
    if game.turned_unsafe or game.missed:
        found.append("First the safety questions (g), read every answer, and say stop (s).")
    if idle > 1:
        found.append(f"{idle} of your checks told next to nothing about the cause.")
    dressed = next((i for i, m in enumerate(game.moves) if m.name in game.book.checks and
                    "wheel-dressed" in game.book.checks[m.name].changes), None)  # fmt: skip
    if dressed is not None and any("is gone" in m.seen for m in game.moves[dressed:]):
        found.append("Look at the wheel before you dress it: dressing wipes the evidence away.")
    asked = [m for m in game.moves if m.kind == ASK and not m.free]
    dear = [m for m in asked if m.minutes > 10.0]
    if dear and asked.index(dear[0]) < 3:
        found.append("Cheap looks first: history, part, wheel face, sparks; then what takes time.")
    if game.minutes > 2.0 * tool.minutes and game.solved:
        found.append("You took more than twice the tool's minutes.")
    if len([m for m in asked if not guards(game.book, game.book.checks[m.name])]) == 0:
        found.append("You named a cause without one check: a guess that costs a cure when wrong.")
    return tuple(found)
