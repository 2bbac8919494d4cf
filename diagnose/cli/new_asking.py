"""The plain questions behind `diagnose knowledge new`; each gives what the options would give."""

from __future__ import annotations

from typing import Any

from diagnose.cli.asking import Asker
from diagnose.cli.new_files import Told
from diagnose.cli.room import Room
from diagnose.cli.source import fault

NEEDS = {
    "power-locked-out": "power locked out",
    "wheel-stopped": "wheel stopped",
    "wheel-turning": "wheel turning",
    "magnet-off": "magnet off",
    "part-off-the-chuck": "part off the chuck",
    "guard-open": "guard open",
}
MUST = "A few words are needed here; q stops."


def ask_cause(ask: Asker, room: Room, told: Told) -> dict[str, Any]:
    """Ask for a cause; what a closed case says already is not asked again."""
    from diagnose.book.kinds import ROOMS
    from diagnose.cli.new_files import _from_case

    found: dict[str, Any] = dict(told)
    base = _from_case(room, told["case"]) if told["case"] else None
    found["name"] = ask.words("What is the cause, in a few words?", must=MUST,
                              now=base.name if base else "")  # fmt: skip
    found["room"] = ask.pick("Where does it belong?", {r: r for r in ROOMS}, must=True)
    found["summary"] = ask.words("In one sentence: why does it make the fault?", must=MUST)
    if base is None:
        symptoms = {s.id: s.name for s in room.book.symptoms.values()}
        question = "What does it do to the work? Several with commas."
        found["symptoms"] = ask.picks(question, symptoms, must=True)
    else:
        names = [room.book.symptoms[s].name for s in base.symptoms]
        names += [room.book.findings[s].name for s, _, _ in base.shows]
        ask.say("\nThe case says it shows:\n" + "\n".join(f"   - {n}" for n in names))
    found["through"] = _through(ask, room, base.symptoms if base else found["symptoms"])
    found["how_common"] = ask.pick(
        "How common is it, among complaints of this kind?",
        {word: word for word in room.book.words.how_common},
        must=True,
    )
    found["fix"] = ask.words("The fix, in one line?", must=MUST, now=base.fix if base else "")
    if base is None or base.minutes is None:
        found["minutes"] = ask.minutes("How many minutes does the fix take?")
    found["steps"] = _several(ask, "The steps of the fix, one a line; Enter ends.")
    found["needs"] = ask.picks("How must the machine be for it? Several with commas.", NEEDS)
    found["proof"] = ask.words("What must the next part show?", must=MUST,
                               now=base.proof if base else "")  # fmt: skip
    words = "Is there a sign that only this cause shows: seen, heard, felt or tried? In a few words"
    found["own_sign"] = ask.words(words + " (Enter: none).")
    if found["own_sign"]:
        found["own_question"] = ask.words("The question that finds it, answered yes or no?",
                                          must=MUST)  # fmt: skip
        found["own_help"] = ask.words("In one sentence: how does one look?", must=MUST)
    return found


def _through(ask: Asker, room: Room, symptoms: tuple[str, ...]) -> tuple[str, ...]:
    from diagnose.shop.draft_cause import roads

    names = {name: room.book.mechanisms[name].name for name in roads(room.book, symptoms[0])}
    if not names:
        return ()
    chosen = ask.pick("By which step does it make the fault? Enter: none of these.", names)
    return (chosen,) if chosen else ()


def _several(ask: Asker, question: str) -> tuple[str, ...]:
    lines: list[str] = []
    while True:
        line = ask.words(question if not lines else "The next one?")
        if not line:
            return tuple(lines)
        lines.append(line)


def ask_check(ask: Asker, room: Room, told: Told) -> dict[str, Any]:
    """Ask for a check."""
    from diagnose.shop.draft_check import PLACES

    del room
    found: dict[str, Any] = dict(told)
    found["name"] = ask.words("What sign is looked for, in a few words?", must=MUST)
    found["question"] = ask.words("The question, answered yes or no?", must=MUST)
    found["help_"] = ask.words("In one sentence: how does one find the answer?", must=MUST)
    found["minutes"] = ask.minutes("How many minutes does it take?")
    found["place"] = ask.pick("Where?", {p: p for p in PLACES}, must=True)
    states = {"stopped": "stopped", "turning": "turning", "any": "it does not matter"}
    found["wheel"] = ask.pick("The wheel?", states, must=True)
    return found


def ask_rule(ask: Asker, room: Room, told: Told) -> dict[str, Any]:
    """Ask for a rule: one fact that holds, one thing that follows."""
    found: dict[str, Any] = dict(told)
    found["name"] = ask.words("What is the rule about, in a few words?", must=MUST)
    found["when"] = (_fact(ask, room),)
    kinds = {"note": "something to tell the person", "finding": "a finding", "stop": "a stop"}
    kind = ask.pick("What follows?", kinds, must=True)
    if kind == "note":
        found["note"] = ask.words("Tell the person what?", must=MUST)
    elif kind == "stop":
        names = {s.id: s.name for s in room.book.stops.values()}
        found["stop"] = ask.pick("Which stop?", names, must=True)
    else:
        names = {f.id: f.name for f in room.book.findings.values() if f.id not in
                 room.book.symptoms}  # fmt: skip
        finding = room.book.findings[ask.pick("Which finding?", names, must=True)]
        values = {v.id: v.name for v in finding.values}
        found["finding"] = f"{finding.id}={ask.pick('Which value?', values, must=True)}"
    found["because"] = ask.words("Why does it follow?", must=MUST)
    return found


def _fact(ask: Asker, room: Room) -> str:
    from diagnose.book.near import nearest

    checks = room.book.checks
    name = ask.words(
        "Which check sets it off? Its id (diagnose explain WORDS finds it).", must=MUST
    )
    while name not in checks:
        near = nearest("-".join(name.lower().split()), checks)
        hint = f"Did you mean {near}?" if near else "diagnose explain names them."
        name = ask.words(f"There is no check '{name}'. {hint}", must=MUST)
    check = checks[name]
    if check.kind == "number":
        sides = {">": "above a number", "<": "below a number"}
        side = ask.pick("When the answer is", sides, must=True)
        return f"{name}{side}{ask.words(f'Which number, for example {check.example}?', must=MUST)}"
    if check.kind == "file":
        raise fault(f"{name} is a file of readings", "take a check with answers or a number")
    return f"{name}={ask.pick('Which answer?', {o.id: o.say for o in check.options}, must=True)}"


def ask_stop(ask: Asker, room: Room, told: Told) -> dict[str, Any]:
    """Ask for a stop."""
    found: dict[str, Any] = dict(told)
    found["name"] = ask.words("What is the hazard, in a few words?", must=MUST)
    kinds = {"stop": "the machine: nothing may turn", "hold": "the part: it is put aside"}
    found["hold"] = ask.pick("What does it stop?", kinds, must=True) == "hold"
    found["danger"] = ask.words("What can happen?", must=MUST)
    found["do_first"] = _several(ask, "What to do first, one step a line; Enter ends.")
    found["cleared_when"] = ask.words("What must be so before work goes on?", must=MUST)
    found["question"] = ask.words("The question that asks about it, before anything turns?")
    tags = sorted({t for c in room.book.checks.values() for t in c.changes} |
                  {t for c in room.book.causes.values() for t in c.fix.changes})  # fmt: skip
    if tags:
        question = "After what must it be asked again? Several with commas; Enter: nothing."
        found["renewed_by"] = ask.picks(question, {t: t.replace("-", " ") for t in tags})
    return found


def ask_symptom(ask: Asker, room: Room, told: Told) -> dict[str, Any]:
    """Ask for a symptom."""
    found: dict[str, Any] = dict(told)
    found["name"] = ask.words("What is wrong with the work, in a few words?", must=MUST)
    families = {s.family: s.family.replace("-", " ") for s in room.book.symptoms.values()}
    found["family"] = ask.pick("Which family is it of? Enter: one of its own.", families)
    found["looks_like"] = ask.words("What does the eye see on the work?", must=MUST)
    found["in_words"] = _several(ask, "What do people call it? One a line; Enter ends.")
    names = {c.id: c.ask for c in room.book.checks.values() if c.place in ("history", "part")}
    question = "What does an old hand ask first? Several with commas."
    found["first_questions"] = ask.picks(question, names, must=True)
    found["part"] = ask.words("What is to be done with the part in hand?", must=MUST)
    return found
