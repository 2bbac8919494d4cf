"""Playing a drill: what is seen, what it costs, the hazard, the debrief."""

from __future__ import annotations

import pytest

from diagnose.case.entries import UNKNOWN
from diagnose.drill.bearing import causes_of, checks_for
from diagnose.drill.debrief import debrief
from diagnose.drill.draw import Wish, draw_drill
from diagnose.drill.drawn import Drill
from diagnose.drill.finding import causes_meant, checks_meant
from diagnose.drill.game import Game
from diagnose.drill.hints import family_of, next_hint
from diagnose.drill.par import best_possible, shortest_proof, tool_plays
from diagnose.drill.scoring import passed, score
from diagnose.drill.showing import GONE
from diagnose.reasoning.gates import turns
from diagnose.view.drill_text import debrief_text
from tests.drill.learners import at_random, by_the_list, play, what_tells_most
from tests.drill.test_drawn import shipped

BARS = frozenset(("even-bars-across-travel",))


def drawn(seed: int, hazard: bool, cause: str = "wheel-not-trued") -> Drill:
    wish = Wish(1, frozenset((cause,)), BARS, hazard=hazard)
    return draw_drill(shipped(), seed, wish)


def game_of(hazard: bool = False, seed: int = 1) -> Game:
    return Game(shipped(), drawn(seed, hazard))


def turning_check(game: Game) -> str:
    names = checks_for(game.book, game.drill)
    return next(n for n in names if turns(game.book.checks[n]))


def test_the_right_cause_named_safely_passes_with_nearly_every_point() -> None:
    game = game_of()
    game.safety()
    game.attempt("wheel-not-trued")

    assert passed(game)
    assert score(game, best_possible(shipped(), game.drill)) == 100


def test_a_check_costs_minutes_once_and_shows_what_is_there() -> None:
    game = game_of()
    first = game.ask("bars-in-25mm")
    again = game.ask("bars-in-25mm")

    assert first.minutes > 0
    assert first.seen == game.drill.answers["bars-in-25mm"]
    assert again.free
    assert game.minutes == first.minutes


def test_what_the_story_told_costs_nothing() -> None:
    assert game_of().ask("work-material").free


def test_numbers_are_shown_in_the_units_asked_for() -> None:
    drill = drawn(1, False)

    assert Game(shipped(), drill, "inch").ask("table-speed").seen.endswith("ft/min")
    assert Game(shipped(), drill).ask("table-speed").seen.endswith("m/min")


def glass_of(seed: int) -> str:
    game = game_of(seed=seed)
    game.safety()
    return game.ask("wheel-glass").seen


def test_dressing_wipes_away_what_the_wheel_would_have_shown() -> None:
    clean = shipped().checks["wheel-glass"].options[0].say
    game = game_of(seed=next(seed for seed in range(1, 60) if glass_of(seed) != clean))
    game.safety()
    game.ask("rough-re-dress")

    assert game.ask("wheel-glass").seen == GONE
    assert game.entries[-1].value == UNKNOWN


def test_a_hazard_seen_and_stopped_for_is_caught() -> None:
    game = game_of(hazard=True)
    game.safety()
    game.stop()
    game.safety()
    game.attempt("wheel-not-trued")

    assert game.caught
    assert passed(game)


def test_a_hazard_shown_and_gone_past_is_missed_and_said_first() -> None:
    game = game_of(hazard=True)
    game.safety()
    game.ask(turning_check(game))
    game.stop()
    game.safety()
    game.attempt("wheel-not-trued")
    view = debrief(game)

    assert not passed(game)
    assert view.score == 0
    assert view.hazard is not None
    assert not view.hazard.caught
    assert debrief_text(view).startswith("A hazard was there, and you did not stop")


def test_to_cry_stop_without_having_looked_catches_nothing() -> None:
    game = game_of(hazard=True)
    game.stop()
    game.attempt("wheel-not-trued")

    assert not game.caught
    assert not passed(game)


def test_the_wheel_turned_unasked_is_no_pass_where_nothing_was_wrong() -> None:
    game = game_of()
    game.ask(turning_check(game))
    game.safety()
    game.attempt("wheel-not-trued")

    assert game.solved
    assert not passed(game)
    assert debrief(game).first.startswith("The wheel turned before")


@pytest.mark.parametrize("seed", range(4))
def test_a_learner_that_skips_safety_never_passes(seed: int) -> None:
    drill = drawn(seed, hazard=True)
    for way in (at_random, by_the_list):
        game = play(shipped(), drill, way, skips_safety=True)
        assert not passed(game)
        assert score(game, 1e9) == 0


def test_simulated_learners_end_every_case() -> None:
    drill = drawn(3, hazard=False)

    assert all(play(shipped(), drill, w).over for w in (at_random, by_the_list, what_tells_most))


def test_best_possible_is_less_than_the_proof_and_than_the_tool() -> None:
    for seed in range(3):
        drill = draw_drill(shipped(), seed)
        best, tool = best_possible(shipped(), drill), tool_plays(shipped(), drill)
        proof = shortest_proof(shipped(), drill)

        assert best <= tool.minutes + 1e-9
        assert proof is None or best <= proof.minutes + 1e-9
        assert tool.helped or tool.tried[-1] == drill.cause


def test_hints_go_from_a_family_to_a_check_to_why() -> None:
    game = game_of()
    game.safety()
    texts = []
    for _ in range(3):
        texts.append(next_hint(game))
        game.hint(texts[-1])

    assert texts[0] == "Look at the wheel itself."
    assert texts[1].startswith("Ask this: ")
    assert texts[2].startswith(texts[1])
    assert "It tells because" in texts[2]
    assert family_of(shipped(), "wheel-not-trued") == "wheel"


def test_the_debrief_says_what_each_step_told_and_names_look_alikes() -> None:
    game = game_of()
    game.safety()
    game.ask("trued-since-mounting")
    game.ask("wheel-glass")
    game.attempt("unbalanced-wheel")
    game.safety()
    game.attempt("wheel-not-trued")
    view = debrief(game, "anna")

    bars = [s for s in view.steps if s.counts]
    assert len(bars) == 2
    assert all(0 < s.chance < 1 and s.told for s in bars)
    assert view.cause == "Wheel not trued after mounting"
    assert view.chain[0].from_ == view.cause
    assert view.chain[-1].to == view.complaint
    assert [p.other for p in view.swapped] == ["Wheel and adapter out of balance"]
    labels = [r.label for r in view.minutes]
    assert labels[0] == "you"
    assert labels[-1] == "best possible"
    assert view.minutes[0].minutes == game.minutes


def test_words_find_the_check_and_the_cause() -> None:
    book, drill = shipped(), drawn(1, False)
    names = checks_for(book, drill)

    assert checks_meant(book, "wheel under a glass", names) == ("wheel-glass",)
    assert checks_meant(book, "sparks", names) == ("how-the-sparks-look",)
    assert "unbalanced-wheel" in causes_meant(
        book, "out of balance", causes_of(book, drill.complaint)
    )
    assert checks_meant(book, "xyzzy", names) == ()
