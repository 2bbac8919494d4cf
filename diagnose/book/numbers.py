"""Numbers with units in the knowledge, and the named formulas its rules use."""

from __future__ import annotations

from typing import TYPE_CHECKING

from diagnose.book.near import nearest
from diagnose.book.nodes import Node
from diagnose.book.shapes import Reading, plain

UNCERTAIN = "?"  # dimension of a number whose own entry is at fault

if TYPE_CHECKING:
    from diagnose.physics.catalogue import Calculation


def quantity(node: Node, dimension: str, reading: Reading) -> float | None:
    """A number with its unit in SI of the dimension, or None with a fault."""
    text = plain(node, reading, "a number with its unit")
    if text is None or dimension == UNCERTAIN:
        return None
    from diagnose.physics.quantities import QuantityError, read_quantity

    try:
        return read_quantity(text, dimension).value
    except QuantityError as error:
        reading.fault(node, str(error))
        return None


def dimensions() -> tuple[str, ...]:
    """Names of the dimensions a number check may have."""
    from diagnose.physics.units import DIMENSIONS

    return tuple(DIMENSIONS)


def alike(one: str, other: str) -> bool:
    """True when numbers of the two dimensions may stand for each other: turns and cycles."""
    from diagnose.physics.units import comparable

    return UNCERTAIN in (one, other) or (bool(one) and bool(other) and comparable(one, other))


def formula(name: str) -> Calculation | None:
    """The calculation of this id, or None."""
    from diagnose.physics.catalogue import calculation

    try:
        return calculation(name)
    except KeyError:
        return None


def dimension_of(name: str) -> str:
    """Dimension of what a calculation gives; UNCERTAIN when there is none of this id."""
    found = formula(name) if name else None
    return found.gives if found else UNCERTAIN


def unknown_formula(node: Node, name: str, reading: Reading) -> None:
    """Note that there is no such calculation."""
    from diagnose.physics.catalogue import calculations

    near = nearest(name, [c.id for c in calculations()])
    mend = "" if near else "diagnose calc --list shows them"
    reading.fault(node, f"there is no calculation '{name}'", mend, near)
