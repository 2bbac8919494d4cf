"""A shop's own entry in place of a shipped one: only when it says so, and why."""

from __future__ import annotations

from collections.abc import Container, Mapping, Sequence
from dataclasses import dataclass, field

from diagnose.book.near import nearest
from diagnose.book.nodes import Node
from diagnose.book.records import Field, Record
from diagnose.book.shapes import Reading, Schema, plain

Records = dict[str, list[Record]]
SAY_WHY = "say why yours counts here: overrides: our chuck is older than any in the books"


@dataclass(frozen=True)
class Why:
    """The reason in words; a bare yes is no reason."""

    def read(self, node: Node, reading: Reading) -> str | None:
        words = plain(node, reading, "the reason")
        if words is not None and words.lower() in ("yes", "no", "true", "false", "y", "n"):
            reading.fault(node, f"'{words}' gives no reason", SAY_WHY)
            return None
        return words

    def schema(self) -> Schema:
        return {"type": "string", "minLength": 4}


OVERRIDES = Field(
    "overrides", Why(), help="a shop's own file: why this entry stands in place of the shipped one"
)


@dataclass(frozen=True)
class Merged:
    """All records together; which ids are a shop's own, and which override a shipped one."""

    records: Records
    own: Mapping[str, int] = field(default_factory=dict)  # id -> number of the folder it is from
    reasons: Mapping[str, str] = field(default_factory=dict)


def merge(shelves: Sequence[Records], reading: Reading) -> Merged:
    """The records of several folders, the first one the shipped; later ones may override.

    An entry of a later folder whose id is taken and that does not say why is a fault and is
    left out; one that overrides nothing is a fault.
    """
    together: Records = {kind: list(some) for kind, some in shelves[0].items()}
    own: dict[str, int] = {}
    reasons: dict[str, str] = {}
    for some in together.values():
        for record in (r for r in some if "overrides" in r.nodes):
            what = "this is the shipped knowledge itself; there is nothing to override"
            reading.fault(record.at("overrides"), what, "take 'overrides:' out")
    stops = {r.text("id") for r in shelves[0]["stop"]}
    for number, shelf in enumerate(shelves[1:], start=1):
        for record in shelf["check"]:
            _clears_only_its_own(record, stops, reading)
        taken = {r.text("id"): (kind, r) for kind, some in together.items() for r in some}
        for kind, some in shelf.items():
            for record in some:
                if _placed(record, kind, taken, together, reading):
                    own[record.text("id")] = number
                    if "overrides" in record:
                        reasons[record.text("id")] = record.text("overrides")
    return Merged(together, own, reasons)


def _placed(
    record: Record,
    kind: str,
    taken: Mapping[str, tuple[str, Record]],
    together: Records,
    reading: Reading,
) -> bool:
    name = record.text("id")
    there = taken.get(name)
    if there is None:
        if "overrides" in record:
            what = f"there is no {kind} '{name}' to override"
            mend = "take 'overrides:' out, or give the id of the entry meant"
            near = nearest(name, [own for own, (k, _) in taken.items() if k == kind])
            reading.fault(record.at("overrides"), what, mend, near)
        together[kind].append(record)
        return True
    other, old = there
    place = f"{old.node.page.name}:{old.node.line}"
    if other != kind:
        what = f"the id '{name}' is already given to a {other} ({place})"
        reading.fault(record.at("id"), what, "ids are unique over all kinds: choose another")
        return False
    if "overrides" not in record:
        if "overrides" not in record.nodes:
            what = f"'{name}' is in the knowledge already ({place})"
            reading.fault(record.at("id"), what, f"choose another id, or {SAY_WHY}")
        return False
    if _guards(kind, old):
        what = f"'{name}' guards against a hazard: nothing stands in its place"
        mend = "write one of your own beside it, with another id"
        reading.fault(record.at("overrides"), what, mend)
        return False
    together[kind] = [r for r in together[kind] if r is not old] + [record]
    return True


def _guards(kind: str, old: Record) -> bool:
    """True for a stop, a caution, and a question that raises or clears a stop."""
    asks = any(option.texts("raises") or option.texts("clears") for option in old.groups("options"))
    return kind in ("stop", "caution") or old.flag("gate") or asks


def _clears_only_its_own(record: Record, stops: Container[str], reading: Reading) -> None:
    for option in record.groups("options"):
        for name in option.texts("clears"):
            if name in stops:
                what = f"'{name}' is a shipped stop: only its shipped question clears it"
                mend = "take it out of 'clears:'; raising it is always possible"
                reading.fault(option.at("clears"), what, mend)
