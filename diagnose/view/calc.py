"""How a calculation is shown: as text for the machinist and as JSON for other programs."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from textwrap import fill
from typing import Any

from diagnose.physics.catalogue import (
    Calculation,
    Line,
    WordInput,
    Worked,
    calculations,
    worked_answers,
)
from diagnose.physics.dimensions import DIMENSIONS
from diagnose.physics.evaluate import Result, WorkedResult
from diagnose.physics.quantities import Quantity
from diagnose.physics.units import show

WIDTH = 78
Named = Calculation | Worked


def as_text(what: Calculation, result: Result, system: str) -> str:
    """Inputs, formula in words, result with its spread, meaning, source and limits."""
    shown = show(result.value, what.gives, system)
    if result.spread:
        low, high = (show(end, what.gives, system) for end in (result.lowest, result.highest))
        shown += f"  (from {low} to {high} with the give-or-take)"
    return _page(what, result.given, [f"{what.name}: {shown}"], result.meaning, system)


def worked_as_text(what: Worked, result: WorkedResult, system: str) -> str:
    """The same for a worked answer of several lines."""
    lines = [f"{line.label}: {_line_text(line, system)}" for line in result.answer.lines]
    return _page(what, result.given, lines, result.answer.meaning, system)


def as_json(what: Calculation, result: Result) -> str:
    """The calculation as JSON, numbers in SI."""
    number = {
        "value": result.value,
        "lowest": result.lowest,
        "highest": result.highest,
        **_kind(what.gives),
        "shown": show(result.value, what.gives),
    }
    return _dumped(what, result.given, {"result": number, "meaning": result.meaning})


def worked_as_json(what: Worked, result: WorkedResult) -> str:
    """The worked answer as JSON, numbers in SI."""
    lines = [_line_json(line) for line in result.answer.lines]
    return _dumped(what, result.given, {"lines": lines, "meaning": result.answer.meaning})


def list_as_text() -> str:
    """Every calculation: its id, what it gives, and the inputs it takes."""
    parts = []
    for each in _all():
        keys = [i.name if i.default is None else f"[{i.name}]" for i in each.inputs]
        parts.append(f"{each.id}: {each.name}\n" + _wrapped(" ".join(keys)))
    return "\n".join(parts)


def list_as_json() -> str:
    """Every calculation as JSON."""
    listed = [
        {
            "id": each.id,
            "name": each.name,
            "gives": each.gives if isinstance(each, Calculation) else "lines",
            "inputs": [_input_json(i) for i in each.inputs],
            "source": each.source,
            "standing": each.standing,
        }
        for each in _all()
    ]
    return json.dumps({"schema": 1, "calculations": listed}, indent=2, ensure_ascii=True)


def _all() -> list[Named]:
    return sorted([*calculations(), *worked_answers()], key=lambda each: each.id)


def _page(
    what: Named,
    given: Mapping[str, Quantity | str],
    lines: Iterable[str],
    meaning: str,
    system: str,
) -> str:
    return "\n".join(
        [
            *(f"  {name} = {_given_text(value, system)}" for name, value in given.items()),
            _wrapped(f"formula: {what.formula}"),
            "",
            *(_wrapped(line, "") for line in lines),
            "",
            _wrapped(meaning, ""),
            "",
            _wrapped(f"source: {what.source} ({what.standing})"),
            _wrapped(f"limits: {what.limits}"),
        ]
    )


def _wrapped(text: str, margin: str = "  ") -> str:
    return fill(text, WIDTH, initial_indent=margin, subsequent_indent=margin + "  ")


def _given_text(value: Quantity | str, system: str) -> str:
    if isinstance(value, str):
        return value or "-"
    shown = show(value.value, value.dimension, system)
    if value.uncertainty:
        low, high = (show(end, value.dimension, system) for end in (value.lowest, value.highest))
        shown += f"  (from {low} to {high})"
    return shown


def _line_text(line: Line, system: str) -> str:
    if line.value is None:
        return line.text
    shown = show(line.value, line.dimension, system)
    if line.highest is not None:
        shown += f" to {show(line.highest, line.dimension, system)}"
    if line.plus_minus is not None:
        shown += f" +- {show(line.plus_minus, line.dimension, system)}"
    return f"{shown} {line.text}".strip()


def _dumped(what: Named, given: Mapping[str, Quantity | str], more: Mapping[str, Any]) -> str:
    facts = {
        "schema": 1,
        "id": what.id,
        "name": what.name,
        "inputs": {name: _given_json(value) for name, value in given.items()},
        "formula": what.formula,
        **more,
        "source": what.source,
        "standing": what.standing,
        "limits": what.limits,
    }
    return json.dumps(facts, indent=2, ensure_ascii=True, allow_nan=False)


def _kind(dimension: str) -> dict[str, str]:
    return {"dimension": dimension, "unit": DIMENSIONS[dimension].si}


def _given_json(value: Quantity | str) -> Any:
    if isinstance(value, str):
        return value
    number = {"value": value.value, "uncertainty": value.uncertainty}
    return {"text": value.text, **number, **_kind(value.dimension)}


def _line_json(line: Line) -> dict[str, Any]:
    facts: dict[str, Any] = {"label": line.label}
    if line.value is not None:
        facts |= {"value": line.value, **_kind(line.dimension)}
    if line.highest is not None:
        facts["highest"] = line.highest
    if line.plus_minus is not None:
        facts["plus_minus"] = line.plus_minus
    if line.text:
        facts["text"] = line.text
    return facts


def _input_json(wanted: Any) -> dict[str, Any]:
    facts = {"name": wanted.name, "help": wanted.help, "default": wanted.default}
    if isinstance(wanted, WordInput):
        return facts | {"choices": list(wanted.choices)}
    return facts | _kind(wanted.dimension)
