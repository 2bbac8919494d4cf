"""What the marking of a wheel answers by itself: its grain, grit, grade and structure."""

from __future__ import annotations

import re

from diagnose.physics.marking import Marking, MarkingError, read_marking

# check -> (highest value of the answer, answer), the lowest first
GRITS = ((36, "coarse-36-or-less"), (60, "middle-46-to-60"), (2000, "fine-70-or-more"))
GRADES = (("G", "g-or-softer"), ("J", "h-to-j"), ("M", "k-to-m"), ("Z", "n-or-harder"))
STRUCTURES = ((5, "five-or-less"), (8, "six-to-eight"), (99, "nine-or-more"))
ABRASIVES = {"A": "alumina", "C": "silicon-carbide"}


def marking_in(text: str) -> Marking:
    """The marking at the head of a line that may go on with sizes and speeds.

    Raises MarkingError.
    """
    return read_marking(re.split(r"[,;]", text, maxsplit=1)[0])


def facts_of(text: str) -> dict[str, str]:
    """Answers by check that a marking gives; empty when it cannot be read."""
    try:
        marking = marking_in(text)
    except MarkingError:
        return {}
    facts = {
        "wheel-abrasive": ABRASIVES[marking.base],
        "wheel-grit": next(answer for most, answer in GRITS if marking.grit <= most),
        "wheel-grade": next(answer for most, answer in GRADES if marking.grade <= most),
    }
    if marking.structure is not None:
        facts["wheel-structure"] = next(a for most, a in STRUCTURES if marking.structure <= most)
    return facts
