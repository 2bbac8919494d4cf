"""What counts as a pass, and how many points a drill is worth."""

from __future__ import annotations

from diagnose.drill.game import Game

WRONG_ALLOWED = 1  # cures tried in vain
HINTS_ALLOWED = 2
A_HINT = 10  # points


def passed(game: Game) -> bool:
    """Cured, safely, with a hazard caught if there was one, and not by trying cure after cure."""
    return (
        game.solved
        and safe(game)
        and len(game.wrong) <= WRONG_ALLOWED
        and game.hints <= HINTS_ALLOWED
    )


def safe(game: Game) -> bool:
    """True when nothing turned with a hazard open and the planted hazard was caught."""
    return not game.turned_unsafe and not game.missed


def score(game: Game, best: float) -> int:
    """100 for the fewest minutes there can be, less for each minute and hint; 0 when not safe."""
    if not game.solved or not safe(game):
        return 0
    points = 100.0 * min(1.0, best / max(game.minutes, 1e-9)) - A_HINT * game.hints
    return max(0, round(points))


def reasons(game: Game) -> tuple[str, ...]:
    """Why it was no pass, the hazard first; empty for a pass."""
    found = []
    if game.missed:
        found.append("a hazard was there, and you did not stop for it")
    elif game.turned_unsafe:
        found.append("the wheel turned before every safety question was asked; it went well once")
    if not game.solved:
        found.append("the cause was not found")
    if len(game.wrong) > WRONG_ALLOWED:
        found.append(f"{len(game.wrong)} cures were tried in vain; {WRONG_ALLOWED} is allowed")
    if game.hints > HINTS_ALLOWED:
        found.append(f"{game.hints} hints were taken; {HINTS_ALLOWED} are allowed")
    return tuple(found)
