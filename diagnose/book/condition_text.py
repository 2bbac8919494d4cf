"""Conditions as YAML writes them, read against the facts that there are.

`{drive: belt}`, `{drive: [belt, direct]}`, `{spindle-speed: {above: 3000 rpm}}`, `below`,
`between: [a, b]`, `{bar-frequency: {within: 10 %, of: spindle-speed}}`; a list of these, or one
with several facts, means that all must hold.
"""

from __future__ import annotations

from diagnose.book.conditions import Condition, Test
from diagnose.book.fact_names import FactName, FactNames, unknown_fact
from diagnose.book.nodes import Items, Node, Table, Text
from diagnose.book.number_shapes import number
from diagnose.book.numbers import alike, quantity
from diagnose.book.shapes import Reading

EXAMPLE = "write {drive: belt}, {drive: [belt, direct]} or {spindle-speed: {above: 3000 rpm}}"
TESTS = "above, below, between or within ... of"


def read_condition(node: Node | None, facts: FactNames, reading: Reading) -> Condition:
    """The condition; faults are noted and the faulty tests left out."""
    if node is None:
        return Condition()
    tests: list[Test] = []
    for part in node.items if isinstance(node, Items) else [node]:
        if not isinstance(part, Table):
            reading.fault(part, "this is not a condition", EXAMPLE)
            continue
        for key, value in part.rows.values():
            test = _test(key, value, facts, reading)
            if test is not None:
                tests.append(test)
    return Condition(tuple(tests))


def _test(key: Text, value: Node, facts: FactNames, reading: Reading) -> Test | None:
    fact = facts.get(key.value)
    if fact is None:
        unknown_fact(key, key.value, facts, reading)
        return None
    if isinstance(value, Table):
        return _compared(key, value, fact, facts, reading)
    return _among(key, value, fact, reading)


def _among(key: Text, value: Node, fact: FactName, reading: Reading) -> Test | None:
    if not fact.words:
        mend = f"compare it: {TESTS}"
        reading.fault(value, f"{key.value} is a number, not one of some words", mend)
        return None
    words: list[str] = []
    for item in value.items if isinstance(value, Items) else [value]:
        if not isinstance(item, Text):
            reading.fault(item, "one of the answers should stand here", EXAMPLE)
        elif item.value not in fact.words:
            what = f"{key.value} is never '{item.value}'"
            reading.not_among(item, item.value, fact.words, what)
        else:
            words.append(item.value)
    return Test(key.value, "is", tuple(words)) if words else None


def _compared(
    key: Text, value: Table, fact: FactName, facts: FactNames, reading: Reading
) -> Test | None:
    name, how = key.value, set(value.rows)
    if fact.words or not fact.dimension:
        mend = f"it can be: {', '.join(fact.words)}" if fact.words else "name a reading"
        reading.fault(value, f"{name} is not a number and cannot be compared", mend)
        return None
    if how == {"within", "of"}:
        return _within(name, value, fact, facts, reading)
    if len(how) != 1 or not how <= {"above", "below", "between"}:
        reading.fault(value, f"a number is compared by one of: {TESTS}", EXAMPLE)
        return None
    return _limits(name, how.pop(), value, fact, reading)


def _limits(name: str, how: str, value: Table, fact: FactName, reading: Reading) -> Test | None:
    node = value.rows[how][1]
    if how != "between":
        limit = quantity(node, fact.dimension, reading)
        if limit is None:
            return None
        return Test(name, how, low=limit) if how == "above" else Test(name, how, high=limit)
    if not isinstance(node, Items) or len(node.items) != 2:
        reading.fault(node, "between needs two numbers", "write {between: [10 mm, 20 mm]}")
        return None
    low, high = (quantity(item, fact.dimension, reading) for item in node.items)
    if low is None or high is None:
        return None
    if low >= high:
        reading.fault(node, "between goes from the lower number to the higher", "swap them")
        return None
    return Test(name, how, low=low, high=high)


def _within(
    name: str, value: Table, fact: FactName, facts: FactNames, reading: Reading
) -> Test | None:
    share_node, other_node = value.rows["within"][1], value.rows["of"][1]
    share = number(share_node.value) if isinstance(share_node, Text) else None
    if share is None or not 0.0 < share < 1.0:
        reading.fault(share_node, "within needs a share between 0 and 100 %", "write 10 %")
        return None
    if not isinstance(other_node, Text) or other_node.value not in facts:
        word = other_node.value if isinstance(other_node, Text) else ""
        unknown_fact(_as_text(other_node), word, facts, reading)
        return None
    other = facts[other_node.value]
    if not alike(fact.dimension, other.dimension):
        mine, theirs = fact.dimension or "no number", other.dimension or "no number"
        what = f"{name} is {mine}, {other_node.value} is {theirs}: they cannot be compared"
        reading.fault(other_node, what)
        return None
    return Test(name, "within", low=share, other=other_node.value)


def _as_text(node: Node) -> Text:
    return node if isinstance(node, Text) else Text(node.page, node.line, node.column, "")
