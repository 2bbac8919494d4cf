"""`diagnose knowledge new`: a cause, check, rule, stop or symptom of your own."""

from __future__ import annotations

from typing import Any

import click

from diagnose.cli.settings import global_options, settings

NAME = click.option("--name", default="", help="What it is, in a few words.")
ID = click.option("--id", "id_", default="", help="Its id; made of the name when left out.")
BECAUSE = click.option("--because", default="", help="Why this is so.")


@click.group()
@global_options
def new() -> None:
    """Write a knowledge file of your own shop.

    Asks in plain words at a terminal; with options it asks nothing. Nothing shipped is touched:
    the file goes to the knowledge folder of your shop and is tried before it is written.

    \b
    Example:
      diagnose knowledge new cause
      diagnose knowledge new cause --from-case 2026-03-14-taper
    """


@new.command()
@NAME
@ID
@click.option("--from-case", "case", default="", help="A closed case to make it from.")
@click.option("--room", default="", help="wheel, dressing, machine, drive, holding, feeds ...")
@click.option("--summary", default="", help="In one sentence, why it makes the fault.")
@click.option("--symptom", "symptoms", multiple=True, help="What it does to the work; repeatable.")
@click.option(
    "--shows",
    multiple=True,
    metavar="SIGN[=VALUE][:HOW OFTEN]",
    help="A sign it shows: bar-rhythm=slower-than-the-wheel:usually; repeatable.",
)
@click.option("--how-common", default="occasional", help="common, occasional or rare.")
@click.option("--fix", default="", help="The fix in one line.")
@click.option("--minutes", type=click.FloatRange(min=0), help="How long the fix takes.")
@click.option("--step", "steps", multiple=True, help="A step of the fix; repeatable.")
@click.option("--proof", default="", help="What the next part must show.")
@click.option("--look-alike", "look_alikes", multiple=True, help="A cause taken for it.")
@click.option("--needs", multiple=True, help="wheel-stopped, power-locked-out ...; repeatable.")
@click.option("--caution", "cautions", multiple=True, help="A care before the fix, by id.")
@click.option("--through", multiple=True, help="The mechanism by which it makes the fault, by id.")
@BECAUSE
@click.option("--own-sign", default="", help="A sign that only this cause shows.")
@click.option("--own-question", default="", help="The question that finds that sign.")
@global_options
@click.pass_context
def cause(context: click.Context, /, **told: Any) -> None:
    """Write a new cause.

    \b
    Example:
      diagnose knowledge new cause --from-case 2026-03-14-taper
      diagnose knowledge new cause --name "splash guard loose" --symptom chatter
    """
    from diagnose.cli.new_asking import ask_cause
    from diagnose.cli.new_files import new_cause, run

    bare = not (told["name"] or told["symptoms"])
    run(settings(context), bare, lambda room, ask: ask_cause(ask, room, told), new_cause, told)


@new.command()
@NAME
@ID
@click.option("--sign", default="", help="Id of the sign it settles; a new one when left out.")
@click.option("--ask", "question", default="", help="The question, in one line.")
@click.option("--how", "help_", default="", help="In one sentence, how to find the answer.")
@click.option("--minutes", type=click.FloatRange(min=0), help="How many minutes it takes.")
@click.option("--place", default="machine", help="history, part, wheel, machine or bench.")
@click.option(
    "--wheel", default="stopped", help="stopped, turning, or any when it does not matter."
)
@global_options
@click.pass_context
def check(context: click.Context, /, **told: Any) -> None:
    """Write a new check: a question answered yes or no, and the sign it settles.

    \b
    Example:
      diagnose knowledge new check --name "guard rattles" --ask "Does the guard rattle?"
    """
    from diagnose.cli.new_asking import ask_check
    from diagnose.cli.new_files import new_check, run

    run(settings(context), not told["name"], lambda room, ask: ask_check(ask, room, told),
        new_check, told)  # fmt: skip


@new.command()
@NAME
@ID
@click.option(
    "--when", "when", multiple=True, metavar="FACT=VALUE", help="Or FACT>NUMBER; repeatable."
)
@click.option("--finding", default="", metavar="FINDING[=VALUE]", help="What follows.")
@click.option("--note", default="", help="What to tell the person.")
@click.option("--stop", default="", help="Id of the stop that follows.")
@BECAUSE
@global_options
@click.pass_context
def rule(context: click.Context, /, **told: Any) -> None:
    """Write a new rule: when these answers are given, that follows.

    \b
    Example:
      diagnose knowledge new rule --name "slow dress" --when "dress-seconds>20 s" \\
          --note "Dressed very fine: dress again in 8 s." --because "it closes the face"
    """
    from diagnose.cli.new_asking import ask_rule
    from diagnose.cli.new_files import new_rule, run

    run(settings(context), not told["name"], lambda room, ask: ask_rule(ask, room, told),
        new_rule, told)  # fmt: skip


@new.command()
@NAME
@ID
@click.option("--hold", is_flag=True, help="It holds the part, not the machine.")
@click.option("--danger", default="", help="What is dangerous.")
@click.option("--do-first", multiple=True, help="What to do first; repeatable.")
@click.option("--cleared-when", default="", help="What must be so before work goes on.")
@click.option("--ask", "question", default="", help="The question that asks about it.")
@click.option("--renewed-by", multiple=True, help="wheel-changed, say: then it is asked again.")
@global_options
@click.pass_context
def stop(context: click.Context, /, **told: Any) -> None:
    """Write a new stop, with the question that asks about it before anything turns.

    \b
    Example:
      diagnose knowledge new stop --name "guard pin missing" --danger "the guard can swing" \\
          --do-first "Spindle off." --cleared-when "the pin is in and locked"
    """
    from diagnose.cli.new_asking import ask_stop
    from diagnose.cli.new_files import new_stop, run

    run(settings(context), not told["name"], lambda room, ask: ask_stop(ask, room, told),
        new_stop, told)  # fmt: skip


@new.command()
@NAME
@ID
@click.option("--family", default="", help="chatter, burn, taper ...; its own when left out.")
@click.option("--looks-like", default="", help="What the eye sees on the work.")
@click.option("--in-words", multiple=True, help="What people call it; repeatable.")
@click.option("--first-question", "first_questions", multiple=True, help="A check; repeatable.")
@click.option("--part", default="", help="What to do with the part in hand.")
@global_options
@click.pass_context
def symptom(context: click.Context, /, **told: Any) -> None:
    """Write a new symptom: what is wrong with the work.

    \b
    Example:
      diagnose knowledge new symptom --name "rainbow edge" --looks-like "colours along one edge"
    """
    from diagnose.cli.new_asking import ask_symptom
    from diagnose.cli.new_files import new_symptom, run

    run(settings(context), not told["name"], lambda room, ask: ask_symptom(ask, room, told),
        new_symptom, told)  # fmt: skip
