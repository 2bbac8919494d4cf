"""What the marking of a wheel answers by itself: its grain, grit, grade and structure."""

from __future__ import annotations

import re

from diagnose.physics.marking import Marking, MarkingError, read_marking

# check -> (highest value of the answer, answer), the lowest first
GRITS = ((36, "coarse-36-or-less"), (60, "middle-46-to-60"), (2000, "fine-70-or-more"))
GRADES = (("G", "g-or-softer"), ("J", "h-to-j"), ("M", "k-to-m"), ("Z", "n-or-harder"))
STRUCTURES = ((5, "five-or-less"), (8, "six-to-eight"), (99, "nine-or-more"))
SIZE = re.compile(r"\b(\d{2,3}(?:\.\d+)?)\s*[x×]\s*(\d{1,2}(?:\.\d+)?)\s*[x×]\s*\d")  # mm
ABRASIVES = {"A": "alumina", "C": "silicon-carbide"}


def marking_in(text: str) -> Marking:
    """The marking at the head of a line that may go on with sizes and speeds.

    Raises MarkingError.
    """
    return read_marking(re.split(r"[,;]", text, maxsplit=1)[0])


def facts_of(text: str) -> dict[str, str]:
    """Answers by check that a marking gives, with the sizes and speeds that stand after it.

    What cannot be read is left out.
    """
    facts = _written_out(text)
    try:
        marking = marking_in(text)
    except MarkingError:
        return facts
    facts |= {
        "wheel-abrasive": ABRASIVES[marking.base],
        "wheel-grit": next(answer for most, answer in GRITS if marking.grit <= most),
        "wheel-grade": next(answer for most, answer in GRADES if marking.grade <= most),
    }
    if marking.structure is not None:
        facts["wheel-structure"] = next(a for most, a in STRUCTURES if marking.structure <= most)
    return facts


def _written_out(text: str) -> dict[str, str]:
    """Sizes and speeds as they stand: `178 x 13 x 31.75`, `3600 rpm`, `35 m/s`."""
    facts: dict[str, str] = {}
    size = SIZE.search(text)
    if size:
        facts |= {"wheel-diameter": f"{size[1]} mm", "wheel-width": f"{size[2]} mm"}
    for check, unit in (("marked-turning-speed", "rpm"), ("marked-rim-speed", "m/s")):
        found = re.search(rf"(\d+(?:\.\d+)?)\s*{unit}", text)
        if found:
            facts[check] = f"{found[1]} {unit}"
    return facts
