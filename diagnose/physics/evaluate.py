"""Works out a named calculation from what was written: reads the inputs, carries give-or-take."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from itertools import product

from diagnose.physics.catalogue import (
    Answer,
    Calculation,
    Input,
    WordInput,
    Worked,
    near_names,
)
from diagnose.physics.quantities import Quantity, QuantityError, read_quantity


class InputError(ValueError):
    """The inputs of a calculation cannot be used; the text says which and how to mend it."""


@dataclass(frozen=True)
class Result:
    """A worked-out value in SI with the lowest and highest that the give-or-take allows."""

    given: dict[str, Quantity]
    value: float
    lowest: float
    highest: float
    meaning: str

    @property
    def spread(self) -> bool:
        """Whether any input carried a give-or-take."""
        return self.highest > self.lowest

    @property
    def stops(self) -> bool:
        """Whether the result raises a stop. The other answer clears nothing."""
        return self.meaning.startswith("STOP")


@dataclass(frozen=True)
class WorkedResult:
    """A worked answer with the inputs as understood: quantities, or words as text."""

    given: dict[str, Quantity | str]
    answer: Answer


def evaluate(calculation: Calculation, written: Mapping[str, str]) -> Result:
    """The calculation for inputs as written, `{"depth": "0.01 mm"}`.

    The give-or-take of the inputs is carried by working out every corner of their ranges. Raises
    InputError and OutOfRange.
    """
    _check_names(calculation.id, calculation.inputs, written)
    given = {each.name: _quantity(each, written) for each in calculation.inputs}
    values = {name: quantity.value for name, quantity in given.items()}
    value = calculation.function(**values)
    ends = [*_corners(calculation.function, given), value]
    return Result(given, value, min(ends), max(ends), calculation.meaning(values, value))


def evaluate_worked(worked: Worked, written: Mapping[str, str]) -> WorkedResult:
    """The worked answer for inputs as written. Raises InputError, OutOfRange, ValueError."""
    _check_names(worked.id, worked.inputs, written)
    given: dict[str, Quantity | str] = {
        each.name: _quantity(each, written) if isinstance(each, Input) else _word(each, written)
        for each in worked.inputs
        if each.name in written or not _may_be_left_out(each)
    }
    kinds = {each.name: each for each in worked.inputs}
    handed = {name: _handed(kinds[name], value) for name, value in given.items()}
    return WorkedResult(given, worked.function(**handed))


def _may_be_left_out(wanted: Input | WordInput) -> bool:
    return isinstance(wanted, Input) and wanted.default == ""


def _handed(wanted: Input | WordInput, value: Quantity | str) -> Quantity | float | str:
    if isinstance(value, str) or (isinstance(wanted, Input) and wanted.whole):
        return value
    return value.value


def _corners(function: Callable[..., float], given: Mapping[str, Quantity]) -> list[float]:
    uncertain = [name for name, quantity in given.items() if quantity.uncertainty]
    if not uncertain:
        return []
    values = {name: quantity.value for name, quantity in given.items()}
    ends = product(*((given[name].lowest, given[name].highest) for name in uncertain))
    return [function(**(values | dict(zip(uncertain, corner, strict=True)))) for corner in ends]


def _check_names(
    name: str, inputs: Sequence[Input | WordInput], written: Mapping[str, str]
) -> None:
    known = [each.name for each in inputs]
    for key in written:
        if key not in known:
            near = near_names(key, known)
            hint = f"did you mean {' or '.join(near)}?" if near else f"it takes {', '.join(known)}"
            raise InputError(f"{name} has no input '{key}'; {hint}")
    missing = [each for each in inputs if each.default is None and each.name not in written]
    if missing:
        lines = [
            f"  {each.name}: {each.help}, like {each.name}={_example(each)}" for each in missing
        ]
        raise InputError("\n".join([f"{name} still needs:", *lines]))


def _example(wanted: Input | WordInput) -> str:
    from diagnose.physics.arguments import example_of

    if isinstance(wanted, WordInput):
        return wanted.choices[0] if wanted.choices else wanted.example
    example = example_of(wanted.name, wanted.dimension)
    return f'"{example}"' if " " in example else example


def _quantity(wanted: Input, written: Mapping[str, str]) -> Quantity:
    text = written.get(wanted.name, wanted.default)
    assert text is not None
    try:
        return read_quantity(text, wanted.dimension)
    except QuantityError as error:
        raise InputError(f"{wanted.name} ({wanted.help}): {error}") from None


def _word(wanted: WordInput, written: Mapping[str, str]) -> str:
    word = written.get(wanted.name, wanted.default)
    assert word is not None
    if not wanted.choices or word == wanted.default:
        return word
    found = {choice.casefold(): choice for choice in wanted.choices}.get(word.strip().casefold())
    if found is None:
        near = near_names(word, wanted.choices)
        hint = f"did you mean {' or '.join(near)}?" if near else "it may be"
        rest = "" if near else f" {', '.join(wanted.choices)}"
        raise InputError(f"{wanted.name} ({wanted.help}) cannot be '{word}'; {hint}{rest}")
    return found
