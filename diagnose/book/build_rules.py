"""Rules and stops from their records."""

from __future__ import annotations

import re

from diagnose.book.conditions import Condition
from diagnose.book.fact_names import unknown_fact
from diagnose.book.frozen import FrozenMap
from diagnose.book.grid_checks import claim
from diagnose.book.model import YES, Conclusion, Rule, Stop, WorkOut
from diagnose.book.near import nearest
from diagnose.book.nodes import Node, Text
from diagnose.book.numbers import alike, formula, quantity, unknown_formula
from diagnose.book.records import Record
from diagnose.book.shelf import Shelf

LITERAL = re.compile(r"[-+.]?\d")
WHAT_FOLLOWS = ("finding", "stop", "note", "caution")


def rule(record: Record, shelf: Shelf) -> Rule:
    """A rule, its formula and conclusions checked."""
    work = record.group("work_out")
    when = shelf.condition(record, "when")
    then = tuple(_conclusion(r, shelf, when) for r in record.groups("then"))
    if work is None and not then and not {"work_out", "then"} & set(record.nodes):
        mend = "write 'then:' with what follows, or 'work_out:' with a number to work out"
        shelf.reading.fault(record.node, "nothing follows from this rule", mend)
    return Rule(
        record.text("id"),
        record.text("name"),
        when,
        then,
        record.text("because"),
        record.text("source"),
        _work_out(work, shelf) if work else None,
        record.node.where,
    )


def _conclusion(record: Record, shelf: Shelf, when: Condition) -> Conclusion:
    said = [name for name in WHAT_FOLLOWS if name in record]
    if len(said) != 1 and not any(n in record.nodes and n not in record for n in WHAT_FOLLOWS):
        mend = "write one of finding, stop, note, caution; a second one is an item of its own"
        shelf.reading.fault(record.node, "a conclusion is exactly one thing", mend)
    value = ""
    if "finding" in record:
        value = record.text("is") or YES
        if "is" in record or record.text("finding") in shelf.findings:
            shelf.value_of(record.text("finding"), value, record.at("is"))
    elif "is" in record:
        shelf.reading.fault(record.at("is"), "'is:' belongs to a finding", "take it out")
    made = Conclusion(
        shelf.condition(record, "if"),
        record.text("finding"),
        value,
        record.text("stop"),
        record.text("note"),
        record.text("caution"),
        record.text("shows"),
    )
    _rests_on_a_grid(made, when, record, shelf)
    return made


def _rests_on_a_grid(made: Conclusion, when: Condition, record: Record, shelf: Shelf) -> None:
    facts = [shelf.facts[f] for f in (*when.facts, *made.condition.facts) if f in shelf.facts]
    grids = [f.cannot_show for f in facts if f.cannot_show is not None]
    if grids and made.finding:
        refused = {name: why for some in grids for name, why in some}
        claim(made.shows, refused, record.node, shelf.reading)
    elif made.shows and not grids:
        what = "'shows:' belongs to a conclusion from the numbers of a grid"
        shelf.reading.fault(record.at("shows"), what, "take it out")


def _work_out(record: Record, shelf: Shelf) -> WorkOut:
    name, gives = record.text("with"), record.text("gives")
    inputs = record.by_name("from")
    found = formula(name) if name else None
    if name and found is None:
        unknown_formula(record.at("with"), name, shelf.reading)
    elif found is not None:
        wanted = {i.name: i for i in found.inputs}
        for input_name, node in inputs.items():
            if input_name in wanted:
                _input(node, wanted[input_name].dimension, shelf)
            else:
                what = f"{name} has no input '{input_name}'"
                mend = f"its inputs are: {', '.join(wanted)}"
                shelf.reading.fault(node, what, mend, nearest(input_name, wanted))
        given = {nearest(name, wanted) for name in inputs}
        missing = [i.name for i in found.inputs if i.default is None and i.name not in given]
        if missing:
            what = f"{name} needs {', '.join(missing)} as well"
            shelf.reading.fault(record.at("from"), what, "say which fact goes there")
    _result(record, gives, found.gives if found else "", shelf)
    return WorkOut(name, FrozenMap({k: _as_written(v) for k, v in inputs.items()}), gives)


def _as_written(node: Node) -> str:
    return node.value.strip() if isinstance(node, Text) else ""


def _input(node: Node, dimension: str, shelf: Shelf) -> None:
    word = _as_written(node)
    if not isinstance(node, Text) or LITERAL.match(word):
        quantity(node, dimension, shelf.reading)
        return
    fact = shelf.facts.get(word)
    if fact is None:
        unknown_fact(node, word, shelf.facts, shelf.reading)
    elif not alike(fact.dimension, dimension):
        what = f"{word} is {fact.dimension or 'no number'}; a {dimension} is needed here"
        shelf.reading.fault(node, what)


def _result(record: Record, gives: str, dimension: str, shelf: Shelf) -> None:
    if gives in shelf.findings or gives in {name for name, _ in shelf.named("check")}:
        what = f"'{gives}' is already the id of a check or finding ({shelf.facts[gives].place})"
        shelf.reading.fault(record.at("gives"), what, "give the number a name of its own")
    elif gives and dimension and shelf.facts[gives].dimension != dimension:
        other = shelf.facts[gives]
        what = f"'{gives}' is {dimension} here and {other.dimension} at {other.place}"
        shelf.reading.fault(record.at("gives"), what, "give one of the two another name")


def stop(record: Record, shelf: Shelf) -> Stop:
    """A stop or hold; the check that asks for it must be able to raise and to clear it."""
    _asked(record, shelf)
    return Stop(
        id=record.text("id"),
        name=record.text("name"),
        kind=record.text("kind"),
        what_is_wrong=record.text("what_is_wrong"),
        do_first=record.texts("do_first"),
        cleared_when=record.text("cleared_when"),
        asked_by=record.text("asked_by"),
        source=record.text("source"),
        applies_when=shelf.condition(record, "applies_when"),
        renewed_by=record.texts("renewed_by"),
        cards=record.texts("cards"),
        sources=record.texts("sources"),
        replaces=record.texts("replaces"),
        where=record.node.where,
    )


def _asked(record: Record, shelf: Shelf) -> None:
    check, name = shelf.checks.get(record.text("asked_by")), record.text("id")
    if check is None:
        return
    for verb, done in (
        ("raises", any(name in o.raises for o in check.options)),
        ("clears", any(name in o.clears for o in check.options)),
    ):
        if not done:
            what = f"no answer of {check.id} {verb} {name}"
            mend = f"write '{verb}: [{name}]' at the answer that does"
            shelf.reading.fault(record.at("asked_by"), what, mend)
    if "wheel-turning" in check.needs:
        what = f"{check.id} needs the wheel turning: too late to ask about a danger"
        shelf.reading.fault(record.at("asked_by"), what, "ask with the wheel stopped")
