"""The view of a stop or hold that stands."""

from __future__ import annotations

from diagnose.reasoning.gates import Hazard
from diagnose.reasoning.reason import Read
from diagnose.view.parts import card_refs, source_view
from diagnose.view.result import StopView


def stop_view(hazard: Hazard, read: Read) -> StopView:
    """A stop or hold that stands, with what raised it in words."""
    book, stop = read.book, hazard.stop
    because = []
    for name in hazard.why:
        if name in book.checks:
            because.append(f"{book.checks[name].name}: {_answer_words(read, name, stop.id)}")
        elif name in book.rules:
            because.append(book.rules[name].because)
        else:
            because.append(name)
    return StopView(
        stop.id,
        stop.kind,
        stop.name,
        stop.what_is_wrong,
        stop.do_first,
        stop.cleared_when,
        tuple(dict.fromkeys(because)),
        source_view(book, stop.source),
        card_refs(book, stop.cards),
    )


def _answer_words(read: Read, name: str, stop: str) -> str:
    check, told = read.book.checks[name], read.gathered.told[name]
    chosen = told.value if isinstance(told.value, frozenset) else {told.value}
    raising = [o.say for o in check.options if o.id in chosen and stop in o.raises]
    return "; ".join(raising) or told.text
