"""`diagnose drill`: practise on whole cases, and the summary for the teacher."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import click

from diagnose.cli.settings import global_options, settings

if TYPE_CHECKING:
    from diagnose.cli.room import Room
    from diagnose.drill.course import Next
    from diagnose.drill.drawn import Drill

HOW = (
    "without a terminal, give what the learner types with --do LINE (may be repeated), "
    "or a line each on standard input"
)


@click.command()
@click.option("--learner", metavar="NAME", help="Who practises; kept in the shop folder.")
@click.option("--seed", type=click.IntRange(0), help="Number of the case: the same again.")
@click.option("--level", type=click.IntRange(1, 4), help="Level, when the course is not followed.")
@click.option("--family", metavar="WORD", help="Only complaints or causes of this family.")
@click.option("--complaint", "-c", metavar="WORDS", help="Only cases with this complaint.")
@click.option("--from-shop", is_flag=True, help="From closed cases of the shop, names taken out.")
@click.option("--do", "todo", multiple=True, metavar="LINE", help="What to type; may be repeated.")
@click.option("--page", "--out", "page", type=click.Path(path_type=Path), help="Write the debrief.")
@click.option("--progress", is_flag=True, help="Show how the learner stands.")
@click.option("--teacher", is_flag=True, help="Show all learners and what they take for what.")
@click.option("--pairs", is_flag=True, help="Show what newcomers swap, side by side.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON (schema 1).")
@global_options
@click.pass_context
def drill(
    context: click.Context,
    learner: str | None,
    seed: int | None,
    level: int | None,
    family: str | None,
    complaint: str | None,
    from_shop: bool,
    todo: tuple[str, ...],
    page: Path | None,
    progress: bool,
    teacher: bool,
    pairs: bool,
    as_json: bool,
) -> None:
    """Practise on whole cases: find the cause, see the hazard.

    The cause is hidden, every check costs its minutes, and every fourth case has a hazard to
    stop for. After it comes the debrief.

    \b
    Example:
      diagnose drill
      diagnose drill --learner anna
      diagnose drill --seed 12 --do g --do "wheel under a glass"
      diagnose drill --teacher
    """
    from diagnose.cli.console import at_a_terminal, say, tell
    from diagnose.cli.room import open_room

    if progress and learner is None:
        raise click.UsageError("say whose progress: --learner NAME --progress")
    room = open_room(settings(context))
    if pairs or teacher or progress:
        tell(_summary(room, learner or "", pairs, teacher, as_json))
        return
    if not todo and not at_a_terminal():
        todo = _typed_lines()
    chosen = _next(room, learner, seed, level, family, complaint, from_shop)
    drawn = _drawn(room, chosen)
    if chosen.why:
        say(f"({chosen.why})")
    tell_of(room, drawn, learner or "", todo, page, as_json)


def tell_of(
    room: Room, drawn: Drill, learner: str, todo: tuple[str, ...], page: Path | None, as_json: bool
) -> None:
    """Play a drill, keep it, and print its debrief."""
    from diagnose.cli.console import say, tell, typed
    from diagnose.cli.drilling import keep_done, play
    from diagnose.drill.debrief import debrief
    from diagnose.view.drill_json import debrief_json
    from diagnose.view.drill_text import debrief_text

    lines = iter(todo)

    def read() -> str:
        if not todo:
            return typed()
        line = next(lines, None)
        if line is None:
            raise EOFError
        return line

    game = play(room, drawn, learner, read, say)
    say("\nWorking out the debrief ...\n")
    view = debrief(game, learner)
    if learner:
        keep_done(room, game, view, learner)
    if page is not None:
        from diagnose.report.drill_page import write_debrief

        say(f"The page: {write_debrief(view, page).as_posix()}")
    tell(json.dumps(debrief_json(view), indent=2) if as_json else debrief_text(view))


def _typed_lines() -> tuple[str, ...]:
    import sys

    lines = tuple(line.strip() for line in sys.stdin if line.strip())
    if not lines:
        raise click.UsageError(HOW)
    return lines


def _summary(room: Room, learner: str, pairs: bool, teacher: bool, as_json: bool) -> str:
    from diagnose.drill import course
    from diagnose.drill.pairs import PAIRS, pair_view
    from diagnose.drill.progress import everybody, load
    from diagnose.view.drill_json import progress_json, teacher_json
    from diagnose.view.drill_text import pair_text, progress_text, teacher_text

    if pairs:
        return "\n".join(pair_text(pair_view(p)) for p in PAIRS)
    if teacher:
        all_ = course.teacher(room.book, everybody(room.folder))
        return json.dumps(teacher_json(all_), indent=2) if as_json else teacher_text(all_)
    view = course.progress(room.book, load(room.folder, learner))
    return json.dumps(progress_json(view), indent=2) if as_json else progress_text(view)


def _next(
    room: Room,
    learner: str | None,
    seed: int | None,
    level: int | None,
    family: str | None,
    complaint: str | None,
    from_shop: bool,
) -> Next:
    """The drill asked for. Raises BookError when there is nothing of the kind."""
    import random

    from diagnose.cli.drilling import closed_wish, narrowed
    from diagnose.drill.course import Next, next_drill, seed_for, wish_of
    from diagnose.drill.progress import load

    known = load(room.folder, learner) if learner else None
    free = family is None and complaint is None and not from_shop and seed is None
    if known is not None and free:
        return next_drill(room.book, known, level or 0)
    if seed is None:
        seed = seed_for(known) if known else random.SystemRandom().randrange(1_000_000)
    wish = wish_of(room.book, level or 1)
    if from_shop:
        return Next(seed, closed_wish(room, seed, level or 1), "")
    return Next(seed, narrowed(room.book, wish, family, complaint), "")


def _drawn(room: Room, chosen: Next) -> Drill:
    from diagnose.cli.source import fault
    from diagnose.drill.draw import draw_drill

    try:
        return draw_drill(room.book, chosen.seed, chosen.wish)
    except LookupError as error:
        raise fault(str(error.args[0]), "ask for another level, family or complaint") from None
