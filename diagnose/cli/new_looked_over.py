"""What a new file of the shop still needs before `diagnose knowledge test` passes it."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from diagnose.cli.room import Room
    from diagnose.shop.draft import Draft


def to_mend(room: Room, draft: Draft) -> list[str]:
    """One line for each place of the written files, `file:line` first, with what to do there.

    The lints of `knowledge test` are run, so that the two never disagree.
    """
    from diagnose.audit.linting import look_over
    from diagnose.book.locate import knowledge_folder
    from diagnose.shop.folders import KNOWLEDGE, own_knowledge
    from diagnose.shop.knowledge import load_with_own

    base = room.folder / KNOWLEDGE
    lines = {}
    for told in draft.to_fill:
        name, number, text = told.split(":", 2)
        lines[name, int(number)] = f"to fill  {base.as_posix()}/{name}:{number}:{text}"
    book, _ = load_with_own(knowledge_folder(), room.folder)
    bases = [knowledge_folder(), *own_knowledge(room.folder)]
    for alarm in look_over(book, bases, dear=False):
        fault = alarm.problem
        name = next((n for n in draft.files if fault.file.endswith(f"/{KNOWLEDGE}/{n}")), "")
        # a place that says it is to fill is told once, in its own words
        if name and (name, fault.line) not in lines:
            mend = f"; {fault.mend}" if fault.mend else ""
            place = f"{base.as_posix()}/{name}:{fault.line}"
            lines[name, fault.line] = f"to mend  {place}: {fault.what}{mend}"
    return [lines[key] for key in sorted(lines)]
