"""From what was told of a new entry to its files: checked, tried, written, and what comes next."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING, Any

import click

from diagnose.cli.asking import Asker, ask_through
from diagnose.cli.console import at_a_terminal, say, tell
from diagnose.cli.exits import DONE, leave
from diagnose.cli.new_looked_over import to_mend
from diagnose.cli.room import Room, open_room
from diagnose.cli.schemas import put_schemas
from diagnose.cli.settings import Settings
from diagnose.cli.source import fault

if TYPE_CHECKING:
    from diagnose.book.model import Book
    from diagnose.shop.draft import Draft
    from diagnose.shop.draft_cause import NewCause

Told = Mapping[str, Any]


def run(
    where: Settings,
    bare: bool,
    ask: Callable[[Room, Asker], Told],
    make: Callable[[Room, Told], Draft],
    told: Told,
) -> None:
    """Ask when nothing was told and a person is there; else take the options. Raises BookError."""
    room = open_room(where)

    def asked(asker: Asker) -> int:
        write(room, make(room, ask(room, asker)), told)
        return DONE

    if bare and at_a_terminal():
        leave(ask_through(asked))
    write(room, make(room, told), told)


def write(room: Room, draft: Draft, told: Told) -> None:
    """Try the draft beside everything else, write it, and say what to do next."""
    from diagnose.book.locate import knowledge_folder
    from diagnose.shop.draft import put, tried

    book = tried(knowledge_folder(), room.folder, draft)
    for path in put(room.folder, draft):
        tell(path.as_posix())
    schemas = room.folder / "knowledge" / "schema"
    if not schemas.is_dir():
        put_schemas(schemas)
    left = to_mend(room, draft)
    for line in left:
        say(line)
    if draft.id in book.causes:
        _road(book, draft.id)
        _examples(book, draft.id)
    for line in _to_link(book, draft):
        say(line)
    if told.get("case"):
        say(f"In the case, cured_by: [{draft.id}] in place of something_new: lets it count for it.")
    first = "fill what is named above, then" if left else "look it over, then"
    say(f"Next: open it in an editor, {first} {_test(room)}")


def _test(room: Room) -> str:
    return f'diagnose --shop "{room.folder.as_posix()}" knowledge test'


def _to_link(book: Book, draft: Draft) -> list[str]:
    """What the causes must say, so that a new sign or symptom counts."""
    shown = {link.finding for cause in book.causes.values() for link in cause.shows}
    check = book.checks.get(draft.id)
    names = [draft.id] if draft.id in book.symptoms else list(check.settles) if check else []
    return [
        f"to fill  shows: in the causes that make it: {{finding: {n}, how_often: usually, ...}}"
        for n in names
        if n not in shown
    ]


def _road(book: Book, name: str) -> None:
    from diagnose.book.near import listed
    from diagnose.shop.draft_cause import roads

    cause = book.causes[name]
    symptoms = [link.finding for link in cause.shows if link.finding in book.symptoms]
    if symptoms and not cause.leads_through:
        say("under leads_through: stands the mechanism by which it makes the fault, for example")
        say(f"         {listed(roads(book, symptoms[0]), 6)}")


def _examples(book: Book, name: str) -> None:
    from diagnose.audit.examples import failures_of

    cause = book.causes[name]
    failures = list(failures_of(book, cause))
    passed = len(cause.examples) - len(failures)
    say(f"{passed} of {len(cause.examples)} examples come out as written.")
    for failure in failures:
        place = f"line {failure.where.line}: " if failure.where else ""
        say(f"  {place}'{failure.title}' {failure.said}")
    if failures:
        say("  Give it more answers, or a sign that only this cause shows (--own-sign).")


def _needed(told: Told, *names: str) -> None:
    missing = [n for n in names if not told[n]]
    if missing:
        options = ", ".join(f"--{n.replace('_', '-')}" for n in missing)
        raise click.UsageError(f"say it with {options}, or run it at a terminal and be asked")


def _known(words: Sequence[str], known: Mapping[str, Any], what: str) -> tuple[str, ...]:
    from diagnose.book.near import listed, nearest

    for word in words:
        if word not in known:
            near = nearest(word, known)
            raise fault(f"there is no {what} '{word}'", "" if near else listed(known, 30), near)
    return tuple(words)


def _id(told: Told) -> str:
    from diagnose.book.shapes import ID, ID_MEND

    own: str = told["id_"]
    if own and not ID.match(own):
        raise fault(f"'{own}' cannot be an id", ID_MEND)
    return own


def new_cause(room: Room, told: Told) -> Draft:
    """The draft of a cause. Raises BookError, click.UsageError."""
    from dataclasses import replace

    from diagnose.book.kinds import ROOMS
    from diagnose.shop.draft_cause import NewCause, cause_draft

    book = room.book
    base = _from_case(room, told["case"]) if told["case"] else NewCause("", because="")
    name = told["name"] or base.name
    symptoms = _known(told["symptoms"], book.symptoms, "symptom") or base.symptoms
    if not name or not symptoms:
        _needed({"name": name, "symptom": symptoms}, "name", "symptom")
    in_room = told["room"] or "machine"
    if in_room not in ROOMS:
        raise fault(
            f"there is no room '{in_room}' for causes", f"the rooms are: {', '.join(ROOMS)}"
        )
    shows = tuple(_show(text, book) for text in told["shows"])
    new = replace(
        base,
        id=_id(told),
        name=name,
        room=in_room,
        summary=told["summary"],
        symptoms=symptoms,
        shows=(*(s for s in base.shows if s[0] not in {n for n, _, _ in shows}), *shows),
        how_common=told["how_common"],
        fix=told["fix"] or base.fix,
        minutes=told["minutes"] if told["minutes"] is not None else base.minutes,
        steps=told["steps"],
        proof=told["proof"] or base.proof,
        look_alikes=_known(told["look_alikes"], book.causes, "cause"),
        cautions=_known(told["cautions"], book.cautions, "caution"),
        needs=tuple(told["needs"]),
        through=_known(told["through"], book.mechanisms, "mechanism"),
        because=told["because"] or base.because,
        own=_own_sign(told),
    )
    return cause_draft(new, book)


def _own_sign(told: Told) -> Any:
    from diagnose.shop.draft_check import OwnSign

    words = told["own_sign"]
    return OwnSign(words, told["own_question"], told.get("own_help", "")) if words else None


def _from_case(room: Room, name: str) -> NewCause:
    from diagnose.case.files import load_case
    from diagnose.cli.closing import find_case
    from diagnose.shop.draft_cause import from_case

    path = find_case(room.folder, name, closed=True)
    if path is None:
        raise fault("a new cause is made from a case of the shop", "name its file")
    case = load_case(path, room.book)
    if case.closed is None:
        raise fault(f"{name} is not closed yet", f"diagnose close {name}")
    return from_case(case, room.book)


def _show(text: str, book: Book) -> tuple[str, str, str]:
    sign, _, often = text.partition(":")
    name, _, value = sign.partition("=")
    (known,) = _known((name.strip(),), book.findings, "sign")
    return known, value.strip() or "yes", often.strip()


def new_check(room: Room, told: Told) -> Draft:
    """The draft of a check. Raises BookError, click.UsageError."""
    from diagnose.shop.draft import ids_of
    from diagnose.shop.draft_check import PLACES, OwnSign, check_draft

    _needed(told, "name")
    if told["place"] not in PLACES:
        raise fault(f"there is no place '{told['place']}'", f"it can be: {', '.join(PLACES)}")
    wheels = {"stopped": "stopped", "turning": "turning", "any": ""}
    _known((told["wheel"],), wheels, "state of the wheel")
    if told["sign"]:
        _known((told["sign"],), room.book.findings, "sign")
    turning = told["wheel"] == "turning" and "stand-aside-at-start" in room.book.cautions
    sign = OwnSign(
        told["name"],
        told["question"],
        told["help_"],
        told["minutes"] or 2.0,
        told["place"],
        wheels[told["wheel"]],
        ("stand-aside-at-start",) if turning else (),
        told["sign"],
        _id(told),
    )
    return check_draft(sign, room.book, ids_of(room.book))


def new_rule(room: Room, told: Told) -> Draft:
    """The draft of a rule. Raises BookError, click.UsageError."""
    from diagnose.shop.draft import ids_of
    from diagnose.shop.draft_others import NewRule, rule_draft

    _needed(told, "name", "when")
    then: dict[str, str] = {}
    if told["finding"]:
        name, _, value = told["finding"].partition("=")
        then = {"finding": name.strip()} | ({"is": value.strip()} if value else {})
    for name in ("note", "stop"):
        if told[name]:
            then[name] = told[name]
    if len([n for n in ("finding", "note", "stop") if n in then]) != 1:
        raise click.UsageError("one thing follows: --finding, --note or --stop")
    when = dict(_condition(text) for text in told["when"])
    new = NewRule(told["name"], when, then, told["because"], _id(told))
    return rule_draft(new, ids_of(room.book))


def _condition(text: str) -> tuple[str, Any]:
    for sign, word in ((">", "above"), ("<", "below")):
        name, found, value = text.partition(sign)
        if found:
            return name.strip(), {word: value.strip()}
    name, found, value = text.partition("=")
    if not found:
        raise fault(f"'{text}' is no condition", "write FACT=VALUE, FACT>NUMBER or FACT<NUMBER")
    return name.strip(), value.strip()


def new_stop(room: Room, told: Told) -> Draft:
    """The draft of a stop. Raises click.UsageError: no word of a stop is left to fill later."""
    from diagnose.shop.draft import ids_of
    from diagnose.shop.draft_others import NewStop, stop_draft

    _needed(told, "name", "danger", "do_first", "cleared_when")
    new = NewStop(
        told["name"],
        "hold" if told["hold"] else "stop",
        told["danger"],
        tuple(told["do_first"]),
        told["cleared_when"],
        told["question"],
        tuple(told["renewed_by"]),
        _id(told),
    )
    return stop_draft(new, ids_of(room.book))


def new_symptom(room: Room, told: Told) -> Draft:
    """The draft of a symptom. Raises BookError, click.UsageError."""
    from diagnose.shop.draft import ids_of
    from diagnose.shop.draft_others import NewSymptom, symptom_draft

    _needed(told, "name")
    new = NewSymptom(
        told["name"],
        told["family"],
        told["looks_like"],
        tuple(told["in_words"]),
        _known(told["first_questions"], room.book.checks, "check"),
        told["part"],
        _id(told),
    )
    return symptom_draft(new, room.book, ids_of(room.book))
