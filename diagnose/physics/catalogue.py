"""Every calculation of the trade by name: for `diagnose calc` and for the rules of the knowledge.

A physics module lists its calculations in a tuple `CALCULATIONS`, and answers that are more than
one number in a tuple `WORKED`; this module finds both by id. Numbers go in and come out in SI
base units of their dimension (see `units.py`): a length in metres, a speed in metres per second,
a turning speed in revolutions per second.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from types import ModuleType
from typing import Any


@dataclass(frozen=True)
class Input:
    """One number a calculation needs.

    `name` is the keyword of the function; `dimension` a name from `units.DIMENSIONS`;
    `default` is text as a machinist writes it, None when the value must be given, or "" when a
    worked answer does without it. `whole` hands a worked answer the Quantity with its
    give-or-take, not the bare number.
    """

    name: str
    dimension: str
    help: str
    default: str | None = None
    whole: bool = False


@dataclass(frozen=True)
class Calculation:
    """A named formula: what goes in, what comes out, where it comes from and where it ends.

    `function` takes the inputs as keywords (floats, SI) and returns a float (SI) of dimension
    `gives`. `meaning` turns inputs and result into one plain sentence about the work.
    """

    id: str
    name: str
    inputs: tuple[Input, ...]
    gives: str
    function: Callable[..., float]
    formula: str
    meaning: Callable[[dict[str, float], float], str]
    source: str
    standing: str  # confirmed | from memory | common practice | derived
    limits: str


@dataclass(frozen=True)
class WordInput:
    """A word, a wheel marking or a file name that a worked answer needs.

    `choices` are the words it may be; empty means any text, written like `example`.
    """

    name: str
    help: str
    choices: tuple[str, ...] = ()
    default: str | None = None
    example: str = ""


@dataclass(frozen=True)
class Line:
    """One line of a worked answer: words, or a number in SI of `dimension`, or both ends of one.

    `plus_minus` bounds the number 19 times in 20 (SI).
    """

    label: str
    text: str = ""
    value: float | None = None
    highest: float | None = None
    dimension: str = ""
    plus_minus: float | None = None


@dataclass(frozen=True)
class Answer:
    """What a worked answer says: its lines, and one plain sentence about the work."""

    lines: tuple[Line, ...]
    meaning: str


@dataclass(frozen=True)
class Worked:
    """A named answer of several lines: a wheel marking explained, two ways to set a cut.

    `function` takes the inputs as keywords (floats in SI, words as text) and returns an Answer;
    a number that may be left out is not handed over when it was. It raises OutOfRange, or
    ValueError with a plain message.
    """

    id: str
    name: str
    inputs: tuple[Input | WordInput, ...]
    function: Callable[..., Answer]
    formula: str
    source: str
    standing: str
    limits: str


def calculation(name: str) -> Calculation:
    """The calculation of this id. Raises KeyError, whose text offers the nearest names."""
    found = _calculations().get(name)
    if found is None:
        raise KeyError(_no_such(name, _calculations()))
    return found


def worked(name: str) -> Worked:
    """The worked answer of this id. Raises KeyError, whose text offers the nearest names."""
    found = _worked().get(name)
    if found is None:
        raise KeyError(_no_such(name, _worked()))
    return found


def calculations() -> tuple[Calculation, ...]:
    """Every calculation, by id."""
    return tuple(_calculations()[name] for name in sorted(_calculations()))


def worked_answers() -> tuple[Worked, ...]:
    """Every worked answer, by id."""
    return tuple(_worked()[name] for name in sorted(_worked()))


def near_names(name: str, known: Iterable[str], limit: int = 3) -> list[str]:
    """Known names most like `name`, best first: by spelling, else by a word they share."""
    from difflib import get_close_matches

    choices = list(known)
    name = name.casefold()
    close = get_close_matches(name, choices, n=limit, cutoff=0.6)
    if close:
        return close
    words = set(name.replace("_", "-").split("-")) - {""}
    part = [c for c in choices if len(name) > 2 and name in c]
    if part:
        return part[:limit]
    shared = [c for c in choices if words & set(c.replace("_", "-").split("-"))]
    return shared[:limit]


def _no_such(name: str, known: Iterable[str]) -> str:
    near = near_names(name, known)
    hint = f"; did you mean {' or '.join(near)}?" if near else ""
    return f"there is no calculation '{name}'{hint}"


@cache
def _calculations() -> dict[str, Calculation]:
    return {each.id: each for each in _listed("CALCULATIONS")}


@cache
def _worked() -> dict[str, Worked]:
    return {each.id: each for each in _listed("WORKED")}


def _listed(tuple_name: str) -> list[Any]:
    found = [each for module in _modules() for each in getattr(module, tuple_name, ())]
    names = [each.id for each in found]
    twice = {name for name in names if names.count(name) > 1}
    if twice:
        raise ValueError(f"two calculations share a name: {', '.join(sorted(twice))}")
    return found


def _modules() -> Iterator[ModuleType]:
    from importlib import import_module
    from pkgutil import iter_modules

    import diagnose.physics as package

    for each in sorted(iter_modules(package.__path__), key=lambda found: found.name):
        yield import_module(f"{package.__name__}.{each.name}")
