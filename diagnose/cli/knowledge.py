"""`diagnose knowledge`: look after the knowledge files."""

from __future__ import annotations

from pathlib import Path

import click

from diagnose.cli.console import say, tell
from diagnose.cli.exits import WRONG, leave
from diagnose.cli.knowledge_audit import audit, compare
from diagnose.cli.knowledge_files import FOLDER, folders, load, refuse
from diagnose.cli.knowledge_new import new
from diagnose.cli.knowledge_packs import pack, take
from diagnose.cli.settings import global_options, settings


@click.group()
@global_options
def knowledge() -> None:
    """Test and describe the knowledge files."""


knowledge.add_command(audit)
knowledge.add_command(compare)
knowledge.add_command(new)
knowledge.add_command(pack)
knowledge.add_command(take)


@knowledge.command()
@FOLDER
@click.option("--no-examples", is_flag=True, help="Read the files only; no lint, no example.")
@click.option("--thorough", is_flag=True, help="Also the lints that take long (as audit does).")
@global_options
@click.pass_context
def test(context: click.Context, folder: Path | None, no_examples: bool, thorough: bool) -> None:
    """Name every fault of the files, then run every example.

    What a lint found is explained by: diagnose explain lint:ID

    \b
    Example:
      diagnose knowledge test
      diagnose knowledge test --folder my-knowledge
    """
    from diagnose.shop.cards import load_shop

    book = load(context, folder)
    cards = load_shop(settings(context).shop, book).problems if folder is None else ()
    if cards:
        refuse(cards)
    if no_examples:
        tell(f"No fault found in the files of knowledge {book.version}.")
        return
    from diagnose.audit.examples import run_examples
    from diagnose.audit.linting import look_over

    alarms = look_over(book, folders(context, folder), dear=thorough)
    for alarm in alarms:
        tell(alarm.render())
    failures = list(run_examples(book))
    for failure in failures:
        tell(str(failure))
    total = sum(len(cause.examples) for cause in book.causes.values())
    if alarms:
        say("1 fault found." if len(alarms) == 1 else f"{len(alarms)} faults found.")
    if failures:
        say(f"{len(failures)} of {total} examples do not come out as written.")
    if alarms or failures:
        leave(WRONG)
    tell(f"No fault found; {total} of {total} examples come out as written ({book.version}).")


@knowledge.command()
@FOLDER
@click.option("--out", type=click.Path(path_type=Path), help="Where to; FOLDER/schema if left out.")
def schema(folder: Path | None, out: Path | None) -> None:
    """Write a JSON Schema of each kind of file, for editors that complete words.

    \b
    Example:
      diagnose knowledge schema
    """
    from diagnose.book.locate import knowledge_folder
    from diagnose.book.problems import BookError
    from diagnose.cli.schemas import put_schemas

    base = folder or knowledge_folder()
    try:
        paths = put_schemas(out or base / "schema", base)
    except BookError as error:
        refuse(error.problems)
    for path in paths:
        tell(path.as_posix())


@knowledge.command()
@FOLDER
@global_options
@click.pass_context
def stats(context: click.Context, folder: Path | None) -> None:
    """Count what the knowledge holds, how sure its sources are, what acts in each complaint.

    \b
    Example:
      diagnose knowledge stats
    """
    from diagnose.audit.acting import LEAST, MOST, acting
    from diagnose.book.counts import by_kind, by_standing

    book = load(context, folder)
    lines = [f"Knowledge {book.version}"]
    lines += [f"  {number:5d}  {name}" for name, number in by_kind(book).items()]
    for what, standings in by_standing(book).items():
        lines.append(f"{what}, by the standing of their source:")
        lines += [f"  {number:5d}  {standing}" for standing, number in standings.items()]
    lines.append(f"Causes acting in each complaint alone ({LEAST} to {MOST} is sane):")
    for one in acting(book).values():
        most = ", ".join(f"{cause} {chance:.2f}" for cause, chance in one.most)
        remark = "" if one.sane else "  (too many)" if one.expected > MOST else "  (too few)"
        lines.append(f"  {one.expected:5.2f}  {one.symptom}{remark}: {most}")
    tell("\n".join(lines))


@knowledge.command()
@FOLDER
@global_options
@click.pass_context
def version(context: click.Context, folder: Path | None) -> None:
    """Print the short name of the knowledge's content: the same files, the same name.

    \b
    Example:
      diagnose knowledge version
    """
    tell(load(context, folder).version)
