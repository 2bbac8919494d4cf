"""Tables of surface roughness: grades N1 to N12, cut-off and evaluation length. Lengths in metres.

Sources: N grades as in ISO 1302:1992 (confirmed, published tables); cut-offs by ISO 4288:1996
(first two rows confirmed, the rest from memory; ISO 21920-3:2021 keeps the lengths).
"""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.physics.catalogue import Calculation, Input
from diagnose.physics.errors import OutOfRange, within

MICRO = 1e-6
GRADES: tuple[tuple[int, float], ...] = (
    (1, 0.025 * MICRO),
    (2, 0.05 * MICRO),
    (3, 0.1 * MICRO),
    (4, 0.2 * MICRO),
    (5, 0.4 * MICRO),
    (6, 0.8 * MICRO),
    (7, 1.6 * MICRO),
    (8, 3.2 * MICRO),
    (9, 6.3 * MICRO),
    (10, 12.5 * MICRO),
    (11, 25.0 * MICRO),
    (12, 50.0 * MICRO),
)


@dataclass(frozen=True)
class CutOff:
    """One row of the cut-off table (m): roughness up to `ra`, `rz`; lengths to measure with."""

    ra: float
    rz: float
    cut_off: float
    evaluation_length: float


CUT_OFFS: tuple[CutOff, ...] = (
    CutOff(0.02e-6, 0.1e-6, 0.08e-3, 0.4e-3),
    CutOff(0.1e-6, 0.5e-6, 0.25e-3, 1.25e-3),
    CutOff(2e-6, 10e-6, 0.8e-3, 4e-3),
    CutOff(10e-6, 50e-6, 2.5e-3, 12.5e-3),
    CutOff(80e-6, 200e-6, 8e-3, 40e-3),
)
_JUST = 1.0 + 1e-9  # a limit written in another unit still counts as met


def grade(ra: float) -> int:
    """The finest grade N whose limit this Ra (m) meets: 7.4 µm is N10, not N9.

    Raises OutOfRange above N12 (50 µm).
    """
    within("ra", ra, "roughness", 0.0, GRADES[-1][1] * _JUST)
    return next(number for number, limit in GRADES if ra <= limit * _JUST)


def grade_limit(number: float) -> float:
    """The largest Ra (m) of a grade N1 to N12. Raises OutOfRange; a grade is a whole number.

    Source: ISO 1302:1992 (confirmed, published tables).
    """
    within("number", number, "count", 1.0, 12.0)
    for each, limit in GRADES:
        if each == number:
            return limit
    raise OutOfRange("number", number, "count", float(int(number)), float(int(number) + 1))


def cut_off_row(ra: float) -> CutOff:
    """The row of the cut-off table for this Ra (m), profile without a regular period.

    Raises OutOfRange above 80 µm.
    """
    within("ra", ra, "roughness", 0.0, CUT_OFFS[-1].ra * _JUST)
    return next(row for row in CUT_OFFS if ra <= row.ra * _JUST)


def cut_off(ra: float) -> float:
    """Cut-off (m) to measure this Ra (m) with.

    Source: ISO 4288:1996 (first two rows confirmed, the rest from memory). Raises OutOfRange.
    """
    return cut_off_row(ra).cut_off


def evaluation_length(ra: float) -> float:
    """Evaluation length (m), five cut-offs, to measure this Ra (m) with. Raises OutOfRange."""
    return cut_off_row(ra).evaluation_length


def depth_ratio(rz: float, ra: float) -> float:
    """Rz over Ra (both m). Raises OutOfRange: Rz is never less than Ra.

    Source: definition.
    """
    within("ra", ra, "roughness", 1e-10, 1e-3)
    return within("rz", rz, "roughness", ra, 1e-2) / ra


def what_the_ratio_says(ratio: float) -> str:
    """One plain sentence about Rz over Ra. From memory: ground faces lie at 5 to 8."""
    if ratio > 10.0:
        return "Single deep scratches stand out: look for dirt in the coolant or loose grit."
    if ratio > 8.0:
        return "A little above the usual 5 to 8 of ground faces: look for a scratch in the trace."
    if ratio >= 5.0:
        return "The usual 5 to 8 of an even ground face."
    return "Low for a ground face: waves or feed lines rule the profile, not grains."


_RA = Input("ra", "roughness", "Roughness Ra, measured across the lay.")


def _of_grade(_inputs: dict[str, float], result: float) -> str:
    limit = grade_limit(result) * 1e6
    return f"It meets N{result:.0f} (Ra {limit:g} µm or better)."


def grade_number(ra: float) -> float:
    """The grade N of `ra` (m) as a float, for the rules.

    Source: ISO 1302:1992 (confirmed, published tables). Raises OutOfRange.
    """
    return float(grade(ra))


CALCULATIONS = (
    Calculation(
        "roughness-grade",
        "grade N of a roughness",
        (_RA,),
        "count",
        grade_number,
        "finest grade whose limit is not below Ra",
        _of_grade,
        "ISO 1302:1992, published N-grade tables",
        "confirmed",
        "Ra only; newer drawings state Ra or Rz itself.",
    ),
    Calculation(
        "grade-limit",
        "roughness a grade N allows",
        (Input("number", "count", "Grade number, 1 to 12."),),
        "roughness",
        grade_limit,
        "table",
        lambda inputs, result: f"N{inputs['number']:.0f} asks for Ra {result * 1e6:g} µm or less.",
        "ISO 1302:1992, published N-grade tables",
        "confirmed",
        "Ra only.",
    ),
    Calculation(
        "cut-off",
        "cut-off to measure a roughness with",
        (_RA,),
        "length",
        cut_off,
        "table",
        lambda _inputs, result: (
            f"Measure over {5e3 * result:g} mm (five cut-offs) and half a cut-off before and after."
        ),
        "ISO 4288:1996",
        "from memory",
        "For profiles without a regular period. Measure across the lay.",
    ),
    Calculation(
        "depth-ratio",
        "Rz over Ra",
        (Input("rz", "roughness", "Roughness depth Rz."), _RA),
        "ratio",
        depth_ratio,
        "Rz / Ra",
        lambda _inputs, result: what_the_ratio_says(result),
        "common values for ground faces",
        "from memory",
        "There is no exact relation between Ra and Rz.",
    ),
)
